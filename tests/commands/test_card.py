from bs4 import BeautifulSoup

from fieldid.cli import main


def test_card_is_one_file_that_needs_nothing(tmp_path, capsys):
    out = tmp_path / "card.html"

    assert main(["card", "oxmere-grebe", "--out", str(out)]) == 0
    page = BeautifulSoup(out.read_text(), "html.parser")
    assert not page.find_all(["script", "link", "img"])
    assert all(use["href"].startswith("#") for use in page.find_all("use"))
    policy = page.find("meta", {"http-equiv": "Content-Security-Policy"})["content"]
    assert policy == "default-src 'none'; style-src 'unsafe-inline'"
    assert "url(" not in page.style.text
    assert str(out) in capsys.readouterr().out


def test_folder_that_is_not_there_is_told(tmp_path, capsys):
    out = tmp_path / "nowhere" / "card.html"

    assert main(["card", "oxmere-grebe", "--out", str(out)]) == 1
    assert f"{out}: cannot be written" in capsys.readouterr().err


def test_unknown_guide_is_told(tmp_path, capsys):
    assert main(["card", "nonsense", "--out", str(tmp_path / "card.html")]) == 2
    assert "there is no guide 'nonsense'" in capsys.readouterr().err
