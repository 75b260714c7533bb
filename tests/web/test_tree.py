import pytest
from bs4 import BeautifulSoup

from bundles import app, guide
from fieldid.engine import Find, Item, judge, prepare
from fieldid.engine.guide import Code, Measure
from fieldid.web.asking import asks, read, skip
from fieldid.web.growing import QUESTIONS
from fieldid.web.tree import Leaf, Question, tree


@pytest.fixture(scope="module")
def tables():
    return prepare(guide())


def questions(node):
    if isinstance(node, Question):
        yield node
        for answer in node.answers:
            yield from questions(answer.then)


def leaves(node):
    if isinstance(node, Leaf):
        yield node
    else:
        for answer in node.answers:
            yield from leaves(answer.then)


def clue(tables, kind):
    return next(c for c in tables.guide.clues if isinstance(c.kind, kind))


def test_best_clue_is_asked_first(tables):
    verdict = judge(tables, Find(guide().id, (Item(),)))

    assert tree(guide()).ask.clue.id == verdict.next[0].clue


def test_page_is_kept_small():
    numbers = [question.number for question in questions(tree(guide()))]

    assert numbers == list(range(1, len(numbers) + 1))
    assert 1 < len(numbers) <= QUESTIONS


def test_every_question_may_be_left_open():
    for question in questions(tree(guide())):
        assert question.answers[-1].printed is None


def test_who_cannot_tell_is_asked_on():
    assert isinstance(tree(guide()).answers[-1].then, Question)


def test_no_question_is_asked_twice_on_a_walk():
    def walk(node, asked):
        if isinstance(node, Question):
            here = (node.ask.clue.id, node.ask.place)
            assert here not in asked
            for answer in node.answers:
                walk(answer.then, {*asked, here})

    walk(tree(guide()), set())


def test_walk_ends_with_the_engines_verdict(tables):
    """Down the first answers, with the readings that they stand for."""
    node, item = tree(guide()), Item()
    while isinstance(node, Question):
        answer = node.answers[0]
        item = read(item, node.ask, answer.printed.reading)
        node = answer.then
    verdict = judge(tables, Find(guide().id, (item,)))

    assert node.say.lower() == verdict.say.lower()
    assert verdict.runner_up in node.more[0]


def test_every_end_says_what_is_left():
    for leaf in leaves(tree(guide())):
        assert leaf.say[0].isupper() or leaf.say[0].isdigit()
        assert leaf.more[-1].endswith(".")


def test_code_is_asked_field_by_field(tables):
    stamp = next(c for c in guide().clues if c.id == "stamp")
    found = asks(tables, stamp)
    item = Item()
    for ask in found:
        item = read(item, ask, ask.answers[0].reading)

    assert len(found) > 1
    assert "?" not in dict(item.readings)["stamp"]
    assert "character 1 of" in found[0].detail


def test_what_dates_nothing_is_not_asked(tables):
    for each in guide().clues:
        if isinstance(each.kind, Code):
            plain = [f.means for f in each.kind.fields].count("plain")
            assert len(asks(tables, each)) == len(each.kind.fields) - plain


def test_measure_is_asked_in_ranges(tables):
    weight = next(c for c in guide().clues if c.id == "weight")
    (ask,) = asks(tables, weight)

    assert isinstance(weight.kind, Measure)
    assert ask.answers[0].label.startswith("under ")
    assert ask.answers[-1].label.startswith("over ")
    for answer in ask.answers:
        assert weight.kind.low <= answer.reading <= weight.kind.high


def test_open_question_leaves_the_reading_open(tables):
    (ask,) = asks(tables, clue(tables, Measure))

    assert dict(skip(Item(), ask).readings) == {ask.clue.id: None}


def test_page_can_be_walked_without_scripts():
    page = BeautifulSoup(
        app().test_client().get("/tree-tarn-corncrake.html").text, "html.parser"
    )

    assert [each["src"] for each in page.find_all("script")] == ["v/dev/phone/early.js"]
    assert len(page.select("details > summary")) == len(page.select("details"))
    for use in page.find_all("use"):
        assert page.find(id=use["href"][1:]), use
    assert "not an authentication" in page.get_text()
