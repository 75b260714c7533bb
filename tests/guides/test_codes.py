"""A typed text against the layouts of a code."""

from fieldid.engine.guide import Code, Field
from fieldid.guides.codes import fold, unfit
from make import layout

SMALL = Field("style", "plain", 1, "abAB")
LARGE = Field("letter", "plain", 1, "ABC")
DIGIT = Field("digit", "plain", 1, "12")
CODE = Code((), layouts=(layout(SMALL), layout(LARGE, DIGIT), layout(DIGIT, LARGE)))


def test_case_is_that_of_the_layouts_of_its_length():
    assert fold("a", CODE) == "a"
    assert fold("a1", CODE) == "A1"


def test_text_fits_any_of_its_layouts():
    assert unfit("A1", CODE) is unfit("1A", CODE) is unfit("??", CODE) is None


def test_text_that_fits_none_is_told_of_the_first():
    assert "not in the alphabet of 'digit'" in unfit("AA", CODE).wrong
    assert unfit("A1A", CODE).right.startswith("1 or 2 characters")
