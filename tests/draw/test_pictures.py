"""What a picture in a guide may be, and what is said when it is something else."""

import pytest

from fieldid.draw import SHAPES, SWATCHES, node, problems, svg
from fieldid.draw.params import Number, OneOf, Several, Stamped, Words, checks, needed

FITTING = {
    OneOf: lambda check: check.words[0],
    Number: lambda check: check.low,
    Stamped: lambda check: "F",
    Words: lambda check: "month",
    Several: lambda check: (fitting(check.each),),
}
UNFIT = {
    OneOf: ("zzz", "'zzz' is not known; use "),
    Number: (True, "True is not a number; use a number from "),
    Stamped: ("a", "'a' is no stamped letter; use "),
    Words: (7, "7 is not text; use text in quotes"),
    Several: ("green", "'green' is not a list; use [ ... ]"),
}
EVERY = [(name, key) for name, shape in SHAPES.items() for key in checks(shape)]


def fitting(check):
    return FITTING[type(check)](check)


def picture(name, **changed):
    """A picture of the shape with every needed parameter, and the changed ones."""
    shape = SHAPES[name]
    needs = {key: fitting(checks(shape)[key]) for key in needed(shape)}
    return name, tuple((needs | changed).items())


@pytest.mark.parametrize("name", SHAPES)
def test_needed_parameters_are_enough(name):
    assert problems(picture(name)) == ()
    assert svg(node(picture(name))).startswith("<svg ")


@pytest.mark.parametrize(("name", "key"), EVERY)
def test_every_parameter_refuses_nonsense(name, key):
    value, says = UNFIT[type(checks(SHAPES[name])[key])]

    (said,) = problems(picture(name, **{key: value}))

    assert said.startswith(f"{key}: {says}")


@pytest.mark.parametrize(("name", "key"), EVERY)
def test_every_fitting_value_draws(name, key):
    check = checks(SHAPES[name])[key]
    values = check.words if isinstance(check, OneOf) else (fitting(check),)

    for value in values:
        drawn = picture(name, **{key: value})
        assert problems(drawn) == ()
        assert node(drawn)[0] == "svg"


@pytest.mark.parametrize(
    ("name", "key"),
    [pair for pair in EVERY if isinstance(checks(SHAPES[pair[0]])[pair[1]], OneOf)],
)
def test_every_word_changes_the_drawing(name, key):
    check = checks(SHAPES[name])[key]
    # Some words show only where there is something written to set.
    helped = {"words": "W&T"} if name in {"label", "backstamp"} else {}
    helped |= {"lines": ("F6", "24")} if name == "hosel" else {}

    drawn = [node(picture(name, **helped | {key: word})) for word in check.words]

    assert len(set(drawn)) == len(check.words)


def test_unknown_shape_names_the_nearest():
    assert problems(("colar", ())) == ("the shape 'colar' is not known; use 'collar'",)


def test_unknown_parameter_names_the_nearest():
    said = problems(("collar", (("ring", ("green",)),)))

    assert said == ("the shape 'collar' has no 'ring'; use 'rings'",)


def test_unknown_colour_names_the_nearest():
    said = problems(("collar", (("rings", ("green", "ivroy")),)))

    assert said == ("rings: 'ivroy' is not known; use 'ivory'",)


def test_missing_parameter_is_named():
    assert problems(("toe", ())) == (
        "the shape 'toe' needs a value; use line_of = ...",
    )


def test_all_problems_come_at_once():
    given = (("ground", "gren"), ("words", "too many letters"), ("colour", "red"))

    assert len(problems(("label", given))) == 3


@pytest.mark.parametrize("mm", [1.9, 26.1, float("nan")])
def test_number_out_of_range_is_refused(mm):
    (said,) = problems(picture("section", mm=mm))

    assert said == f"mm: {mm!r} is out of range; use a number from 2 to 26"


def test_too_many_values_are_refused():
    (said,) = problems(picture("shaft", bands=["red"] * 4))

    assert said == "bands: 4 values; use 0 to 3"


def test_too_long_a_stamp_is_refused():
    (said,) = problems(picture("label", words="DOTTERELS"))

    assert said == "words: 'DOTTERELS' is too long; use 8 letters at most"


def test_too_long_words_are_refused():
    (said,) = problems(picture("stamp", names=["thirteen long"]))

    assert said == "names: 'thirteen long' is too long; use 12 letters at most"


def test_values_of_any_type_are_survived():
    """A guide's author may write anything that TOML can hold."""
    for value in ({"a": 1}, [["red"]], [1], 3.5, None, "", []):
        problems(("collar", (("rings", value), ("pin", value))))


def test_rings_keep_their_order():
    upwards = node(("collar", (("rings", ("green", "ivory")),)))
    downwards = node(("collar", (("rings", ("ivory", "green")),)))

    assert upwards != downwards


def test_rings_stay_on_a_short_collar():
    rings = ("red", "gold", "red", "gold", "red")
    drawn = svg(node(("collar", (("profile", "short"), ("rings", rings)))))

    assert drawn.count("url(#swatch-") == 5
    assert "L31 40H57L" in drawn


def test_measure_is_drawn_to_scale():
    widths = [
        svg(node(("section", (("across", "sole"), ("mm", mm))))) for mm in (10, 20)
    ]

    assert "M46 102H72M" in widths[0]
    assert "M46 102H98M" in widths[1]


@pytest.mark.parametrize(
    ("name", "key", "word", "count"),
    [
        ("insert", "pins", "two", 2),
        ("insert", "pins", "five", 5),
        ("plate", "screws", "three", 3),
        ("plate", "screws", "six", 6),
    ],
)
def test_as_many_are_drawn_as_said(name, key, word, count):
    """These options are told apart by counting."""
    bare, full = node((name, ())), node((name, ((key, word),)))

    assert svg(full).count("drawing__body") - svg(bare).count("drawing__body") == count


def test_lead_plug_is_no_screw():
    drawn = [svg(node(("plate", (("screws", word),)))) for word in ("three", "plug")]

    assert drawn[0].count("drawing__body") == drawn[1].count("drawing__body")
    assert [each.count("drawing__ink") for each in drawn] == [0, 1]


def test_bands_keep_their_order():
    upwards = node(("whipping", (("bands", ("ivory", "green")),)))
    downwards = node(("whipping", (("bands", ("green", "ivory")),)))

    assert upwards != downwards


def test_stain_hides_the_mark():
    """A colour's pattern and a mark on it would be hard to read at once."""
    stained = node(("crown", (("stain", "brown"),)))

    assert node(("crown", (("stain", "brown"), ("mark", "bird")))) == stained


@pytest.mark.parametrize("colour", SWATCHES)
def test_every_swatch_paints(colour):
    assert f'fill="url(#swatch-{colour})"' in svg(node(("cap", (("colour", colour),))))


def test_text_in_a_drawing_is_escaped():
    drawn = svg(node(("stamp", (("fields", ("F",)), ("names", ('<b> & "c"',))))))

    assert "&lt;b&gt; &amp; &quot;c&quot;" in drawn
    assert "<b>" not in drawn
