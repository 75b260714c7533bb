import io
import json
from types import SimpleNamespace

import html5lib
import pytest
from bs4 import BeautifulSoup

from fieldid.guides.load import load
from fieldid.web.app import create_app
from fieldid.web.judging import named
from make import PLOVER

READ = {"rings": "green-ivory", "pad": 6.1, "stamp": "A017"}


@pytest.fixture(scope="module")
def app():
    return create_app(guides=[load(PLOVER)], testing=True)


@pytest.fixture
def client(app):
    return app.test_client()


def find(**changes):
    """The JSON of a find, with some keys changed."""
    items = [{"member": "4", "readings": READ, "gone": []}]
    return json.dumps({"format": 1, "guide": "plover", "items": items} | changes)


def page(answer):
    return BeautifulSoup(answer.text, "html.parser")


def sent(client, text="", *, file=None, name="find.json"):
    """The answer to a form that was opened first, as people do."""
    token = page(client.get("/judge")).find("input", {"name": "csrf_token"})["value"]
    form = {"csrf_token": token, "text": text}
    if file is not None:
        form["file"] = (io.BytesIO(file), name)
    answer = client.post("/judge", data=form, content_type="multipart/form-data")
    # A large form is kept in a file, which the test client leaves open.
    answer.request.environ["wsgi.input"].close()
    return answer


def problems(answer):
    """The sentences of the error summary, each by the field that it links to."""
    return {a["href"]: a.text for a in page(answer).select(".problems a")}


def test_page_offers_a_form(client):
    found = page(client.get("/judge"))

    assert found.h1.text == "Judge a find"
    assert found.form["method"] == "post"
    assert [each["for"] for each in found.find_all("label")] == ["file", "text"]
    assert not found.select(".problems")


def test_good_find_is_judged(client):
    answer = sent(client, find())
    found = page(answer)

    assert answer.status_code == 200
    assert " ".join(found.h1.text.split()) == "1951 virtually certain, over 99 %"
    assert found.title.text.startswith("1951: virtually certain, over 99 %")
    years = [row.th.text for row in found.select(".bars tbody tr")]
    assert years == ["1951", "1952", "1953", "1954", "1955", "none of these"]
    assert found.select_one(".bars__row--leading th").text == "1951"
    parts = [each.text for each in found.select("dt")]
    assert parts == ["Head", "Shaft", "Collar"]


def test_bars_are_as_long_as_likely(client):
    rows = page(sent(client, find())).select(".bars tbody tr")
    widths = [float(row.rect["width"]) for row in rows]

    assert abs(sum(widths) - 100) < 0.5
    assert max(widths) == widths[0]
    percents = [row.td.text for row in rows]
    assert percents == ["over 99\u00a0%", *["under 1\u00a0%"] * 5]


def test_file_is_judged_as_text_is(client):
    text = page(sent(client, find()))
    file = page(sent(client, file=find().encode("utf-8-sig")))

    assert file.article == text.article


def test_verdict_says_what_it_rests_on(client):
    claim = {"model_year": 1954, "cites": ["rings"]}
    items = [{"readings": {"rings": "none", "pad": 4.1}, "gone": ["shaft"]}]
    verdict = page(sent(client, find(items=items, claim=claim))).article
    found = " ".join(verdict.text.split())

    for words in (
        "Invented for demonstration",
        "Cannot tell yet: 1951 leads with 18 %",
        "then 1954, 13 %",
        "Built between November 1950 and September 1955",
        "Shaft gone",
        "evidence against 1954",
        "Taken alone, the rings would prove next to nothing",
        "With the shaft gone, nothing there can speak for a year any more. Ask: “Do",
        "There are no rings. Ask: “Was the collar ever replaced?”",
        "Pad thickness (4.1 mm): evidence against 1951 barely worth a mention",
        "Stamp: tells 1951 from 1953",
        "Have the joint checked before hitting a ball.",
        "not an authentication or an appraisal",
        "What is known here is of 1 February 2026.",
    ):
        assert words in found


def test_flag_without_a_question_asks_nothing(client):
    items = [{"readings": {"pad": 4.1}}]
    tags = page(sent(client, find(items=items))).find_all("li", class_="tag")

    assert tags[-1].text.strip() == "Worn thin."


def test_none_of_these_has_no_year(client):
    readings = {"rings": "none", "pad": 11.9, "stamp": "L999", "band": "Tb"}
    found = page(sent(client, find(items=[{"readings": readings}])))

    assert found.h1.text.strip().startswith("Looks like none of these: ")
    assert not found.select(".answer-year__figure, .bars__row--leading")


@pytest.mark.parametrize("reading", [{"pad": 6.5}, {"rings": "none"}])
def test_no_row_leads_where_years_are_level(client, reading):
    found = page(sent(client, find(items=[{"readings": reading}])))

    assert "level" in found.h1.text or " or " in found.h1.text
    assert not found.select(".bars__row--leading")
    assert "Runner-up" not in found.text


def test_nothing_left_to_look_at_is_said(client):
    found = page(sent(client, find())).select_one('[aria-labelledby="next"]')

    assert "Nothing left to look at would change this." in found.text


def test_nothing_sent_is_said(client):
    answer = sent(client, "  \n")

    assert answer.status_code == 400
    assert problems(answer) == {
        "#text": "Nothing came: choose a file or paste its text."
    }


def test_file_and_text_are_too_much(client):
    answer = sent(client, find(), file=find().encode())

    assert problems(answer) == {
        "#text": "Both are filled in: keep the file or the text."
    }


def test_junk_is_said_at_its_field(client):
    (field, sentence), *others = problems(sent(client, "rings: green")).items()
    assert not others
    assert field == "#text"
    assert sentence.startswith("The text:1: is not JSON: expecting value (column 1)")

    (field, sentence), *others = problems(
        sent(client, file=b"\x89PNG\r\n", name="photo.png")
    ).items()
    assert not others
    assert field == "#file"
    assert sentence.startswith("photo.png: has a byte that is not UTF-8: 0x89")


def test_problem_is_tied_to_its_field(client):
    found = page(sent(client, "junk"))
    field = found.find(id="text")

    assert field["aria-invalid"] == "true"
    described = [found.find(id=id).text for id in field["aria-describedby"].split()]
    assert described[1].startswith("The text:1: is not JSON")
    assert found.title.text.startswith("Problem: ")
    assert found.select_one(".problems").has_attr("autofocus")
    assert found.find(id="file")["aria-invalid"] == "false"


def test_what_was_pasted_is_still_there(client):
    text = find(guide="plovre")

    assert page(sent(client, text)).textarea.text.strip() == text


def test_unknown_guide_is_named(client):
    answer = sent(client, find(guide="plovre"))

    assert answer.status_code == 400
    assert problems(answer) == {
        "#text": "The text: guide: 'plovre' is no guide that is here; "
        "would be right: 'plover'."
    }


def test_several_finds_are_refused_kindly(client):
    several = (f"{find()}\n{find()}\n", f"[{find()}, {find()}]")
    for text in several:
        assert problems(sent(client, text)) == {
            "#text": "These are several finds, and this page judges one at a time. "
            "The command “fieldid judge” takes any number of them, one a line."
        }


def test_set_is_judged_member_by_member(client):
    items = [
        {"member": "3", "readings": READ},
        {"member": "4", "readings": READ, "gone": ["shaft"]},
        {"member": "W", "readings": {"stamp": "L321"}},
    ]
    found = page(sent(client, find(items=items))).article
    members = found.select('[aria-labelledby="members"] dt')
    text = " ".join(found.text.split())

    assert [each.text for each in members] == ["3 iron", "4", "Wedge"]
    assert len(found.select(".facts__row--stray")) == 1
    for words in (
        "Sold as 3 to 5: the 5 is missing; the wedge came beside.",
        "The wedge is probably a stray",
        "On the whole set",
        "The weight of each member",
        "The 3 iron: very strong evidence for 1951",
        "Do you still have the shaft of the 4?",
    ):
        assert words in text
    assert not found.select('[aria-labelledby="parts"]')


def test_set_with_a_member_twice_is_refused(client):
    items = [{"member": "3"}, {"member": "3"}]

    told = problems(sent(client, find(items=items)))["#text"]

    assert "items[2].member: '3' is the member of items[1] too" in told


def test_three_megabytes_are_refused(client):
    for given in ({"file": b" " * 3_000_000}, {"text": " " * 3_000_000}):
        answer = sent(client, **given)

        assert answer.status_code == 413
        assert problems(answer)["#text"].startswith("This is larger than 2 MB")


def test_a_megabyte_and_a_half_reaches_the_finds(client):
    """The limit of a text field is no smaller than that of a file."""
    assert "is larger than 1000000 bytes" in problems(
        sent(client, "1" * 1_500_000)
    ).get("#text", "")


def test_form_without_token_is_refused(client):
    answer = client.post("/judge", data={"text": find()})

    assert answer.status_code == 400
    assert problems(answer) == {
        "#text": "This form was not sent from this page, or the server has started "
        "anew since. Nothing was judged: send it once more from here."
    }
    assert page(answer).textarea.text.strip() == find()


def test_refused_form_can_be_sent_again(client):
    refused = page(client.post("/judge", data={"text": find()}))
    fields = refused.form.find_all(["input", "textarea"])
    form = {each["name"]: each.get("value", each.text.strip()) for each in fields}

    assert client.post("/judge", data=form | {"file": ""}).status_code == 200


def test_token_of_another_session_is_refused(app, client):
    other = page(app.test_client().get("/judge")).find(id="csrf_token")["value"]
    client.get("/judge")
    answer = client.post("/judge", data={"csrf_token": other, "text": find()})

    assert answer.status_code == 400


HOSTILE = '"><script>alert(1)</script><img src=x onerror=alert(1)>'


@pytest.mark.parametrize(
    "given",
    [
        {"text": HOSTILE},
        {"text": find(guide=HOSTILE)},
        {"text": find(items=[{"readings": {HOSTILE: HOSTILE}}])},
        {"text": "</textarea>" + HOSTILE},
        {"file": b"{", "name": HOSTILE},
        {"text": find(guide="\ud800")},
        {"text": "\x00"},
    ],
)
def test_hostile_text_is_only_text(client, given):
    answer = sent(client, **given)
    found = page(answer)

    assert answer.status_code == 400
    assert len(found.find_all("script")) == 1
    assert found.script["src"] == "v/dev/phone/early.js"
    assert not found.find_all("img")
    assert problems(answer)


SET = find(
    items=[
        {"member": "3", "readings": READ},
        {"member": "W", "readings": {"stamp": "L321"}, "gone": ["shaft"]},
    ],
    claim={"model_year": 1953, "cites": ["rings", "band"]},
)


@pytest.mark.parametrize("text", ["", "junk", find(), SET])
def test_page_is_sound_html(client, text):
    html5lib.HTMLParser(strict=True).parse(sent(client, text).text)


def test_ids_are_unique_and_links_land(client):
    for text in ("", find(), SET):
        found = page(sent(client, text))
        ids = [each["id"] for each in found.find_all(id=True)]

        assert sorted(set(ids)) == sorted(ids)
        named = [a["href"][1:] for a in found.select('a[href^="#"]')]
        named += [label["for"] for label in found.find_all("label")]
        for key in ("aria-labelledby", "aria-describedby"):
            for each in found.find_all(attrs={key: True}):
                named += each[key].split()
        assert set(named) <= set(ids)


def test_page_brings_no_style_or_script_of_its_own(client):
    found = page(sent(client, find()))

    assert not found.find_all(style=True)
    assert not found.find_all("style")
    assert all(not each.text.strip() for each in found.find_all("script"))


def test_two_years_that_lead_alike_are_one_answer():
    def said(say, leading):
        return named(SimpleNamespace(say=say, leading=leading))

    assert said("1956 or 1957: 49 % each", 1957) == "1956 or 1957"
    assert said("leaning to 1956 or 1957: 38 % each", 1956) == "1956 or 1957"
    assert said("leaning to 1956: likely, 71 %", 1956) == "1956"
