import json
import re
import shutil
from dataclasses import replace

import pytest
from bs4 import BeautifulSoup

from bundles import guide
from fieldid.build.onefile import ENTRY, STAND_INS, one_file, packed, policy
from fieldid.build.precache import integrity
from fieldid.errors import BuildError
from fieldid.guides.pack import dump
from fieldid.paths import STATIC, TEMPLATES
from fieldid.web.script import alone

TAKEN = re.compile(r"const \{ ([^}]*) \} = (\$\w+);")


@pytest.fixture(scope="module")
def made() -> str:
    return one_file([guide()]).decode()


@pytest.fixture(scope="module")
def page(made) -> BeautifulSoup:
    return BeautifulSoup(made, "html.parser")


def test_policy_names_what_stands_there(page):
    """One script and one style, each by the hash of its very text."""
    meta = page.find("meta", {"http-equiv": "Content-Security-Policy"})["content"]
    [script] = page.find_all("script", {"type": False})
    [style] = page.find_all("style")

    assert f"script-src '{integrity(script.string.encode())}'" in meta
    assert f"style-src '{integrity(style.string.encode())}'" in meta
    assert "default-src 'none'" in meta
    assert "unsafe" not in meta


def test_policy_stands_before_all_that_it_governs(page):
    heads = [tag.name for tag in page.head.find_all(True)]

    assert heads[:2] == ["meta", "meta"]
    assert page.head.find_all("meta")[1]["http-equiv"] == "Content-Security-Policy"


def test_page_reaches_for_nothing(page):
    """No file beside it, no address, no attribute that would run or style something."""
    for tag in page.find_all(True):
        assert not {"src", "srcset", "action", "style"} & {*tag.attrs}, tag
        assert not [name for name in tag.attrs if name.startswith("on")], tag
        assert tag.get("href", "#").startswith(("#", "data:")) or not tag["href"], tag


def test_script_asks_for_nothing():
    script = alone(STATIC, ENTRY, STAND_INS)

    for way in ("fetch(", "import(", "import.meta", "localStorage", "indexedDB"):
        assert way not in re.sub(r"/\*.*?\*/", "", script, flags=re.DOTALL), way
    assert not re.search(r"^\s*(import|export) ", script, re.MULTILINE)


def test_script_is_strict_as_modules_are(page):
    [script] = page.find_all("script", {"type": False})

    assert script.string.startswith('"use strict";')


def test_stand_in_gives_what_is_taken_from_it():
    """A name that is missing would be found only when somebody taps."""
    script = alone(STATIC, ENTRY, STAND_INS)
    checked = 0
    for names, whole in TAKEN.findall(script):
        if whole.startswith("$onefile_"):
            body = script.split(f"const {whole} = ")[1].split("\n})();")[0]
            given = re.findall(r"\w+", body.rsplit("return {", 1)[1])
            for name in names.split(", "):
                assert name.split(":")[0] in given, f"{whole} has no {name}"
                checked += 1
    assert checked >= 8


def test_guide_comes_out_as_it_went_in(page):
    held = page.find("script", {"data-packed": "tarn-corncrake"})

    assert json.loads(held.string) == json.loads(dump(guide()))


def test_guide_cannot_end_its_element():
    """The author of a guide writes what they like."""
    evil = replace(guide(), about="</script><script>alert(1)</script><!-- ")
    page = BeautifulSoup(one_file([evil]), "html.parser")

    assert "<" not in packed(evil)
    assert json.loads(packed(evil))["about"] == evil.about
    assert len(page.find_all("script")) == 2


def test_script_that_would_end_its_element_is_refused(tmp_path):
    static = copied(tmp_path)
    entry = static / ENTRY
    entry.write_text(entry.read_text() + 'const end = "</script>";\nfailed(end);\n')

    with pytest.raises(BuildError, match="would end the element"):
        one_file([guide()], static=static)


def test_module_that_asks_where_it_lies_is_refused(tmp_path):
    static = copied(tmp_path)
    shelf = static / "onefile" / "shelf.js"
    shelf.write_text(shelf.read_text() + "console.log(import.meta.url);\n")

    with pytest.raises(BuildError, match=r"onefile/shelf\.js: .*import\.meta"):
        one_file([guide()], static=static)


def test_link_out_of_the_file_is_refused(tmp_path):
    templates = tmp_path / "templates"
    shutil.copytree(TEMPLATES, templates)
    told = templates / "onefile_told.html"
    told.write_text(told.read_text() + '<a href="guide.html">More</a>\n')

    with pytest.raises(BuildError, match=r"'guide\.html' is not in it"):
        one_file([guide()], templates=templates)


def test_same_guides_give_the_same_bytes(made):
    assert one_file([guide()]).decode() == made


def test_guide_named_twice_is_refused():
    with pytest.raises(BuildError, match="named twice"):
        one_file([guide(), guide()])


def test_page_says_that_nothing_is_kept(page):
    home = page.find(attrs={"data-screen": "home"})

    assert "keeps nothing once it is closed" in home.get_text()
    assert not home.find_all("a", href=re.compile(r"\.html"))
    assert "#practice" not in str(home)


def test_other_text_has_another_hash():
    assert policy("a", "b") != policy("a", "c")
    assert policy("a", "b") != policy("c", "b")


def copied(folder):
    """The folder of scripts and styles, to be changed."""
    return shutil.copytree(STATIC, folder / "static")
