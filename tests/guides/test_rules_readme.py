"""The page for authors says what the code does.

Run as a program, this writes the page's tables of pictures and refusals anew.
"""

import re

import pytest
from marshmallow import Schema

from fieldid import draw
from fieldid.draw import params
from fieldid.guides import finds, prices, schema
from fieldid.guides.load import loads
from fieldid.guides.refusals import REFUSALS
from fieldid.guides.shares import WORDS
from fieldid.guides.warnings import warnings
from fieldid.paths import RULES
from make import lapwing

PAGE = RULES / "README.md"

SECTIONS = {
    "## The guide itself": schema.GuideSchema,
    "### [model]": schema.ModelSchema,
    "### [[model_year]]": schema.ModelYearSchema,
    "### [[part]]": schema.PartSchema,
    "### follows": schema.FollowsSchema,
    "### [[clue]]": schema.ClueSchema,
    "### A choice: [[clue.option]]": schema.OptionSchema,
    "### A span in seen": schema.SpanSchema,
    "### A size": schema.SizeSchema,
    "### A field: [[clue.field]]": schema.FieldSchema,
    "### A layout: [[clue.layout]]": schema.LayoutSchema,
    "### [set]": schema.SetSchema,
    "### [[flag]]": schema.FlagSchema,
    "### What a flag waits for": schema.WhenSchema,
    "### [[caution]]": schema.CautionSchema,
    "### [prices]": prices.PricesSchema,
    "### [prices.set]": prices.SetPricesSchema,
}


def refusals() -> str:
    """The table of all refusals."""
    rows = [f"| {code} | {w} | {r} |" for code, (w, r) in REFUSALS.items()]
    return "\n".join(("| code | what is wrong | what would be right |", RULE, *rows))


def pictures() -> str:
    """The table of all shapes with their parameters."""
    rows = [
        f"| `{name}` | {parameters(shape)} |" for name, shape in draw.SHAPES.items()
    ]
    return "\n".join(("| shape | what is particular |", "|---|---|", *rows))


def spots() -> str:
    """The spots of each drawing, a line each."""
    return "\n".join(
        f"- `{name}`: {', '.join(places)}." for name, places in draw.SCENES.items()
    )


def parameters(shape: params.Shape) -> str:
    must = params.needed(shape)
    return "; ".join(
        f"{f'**{name}**' if name in must else name}: {allowed(check)}"
        for name, check in params.checks(shape).items()
    )


def allowed(check: params.Check) -> str:
    """What a check lets through, in words."""
    match check:
        case params.OneOf(words):
            return ", ".join(words)
        case params.Number(low, high):
            return f"a number from {low:g} to {high:g}"
        case params.Stamped(most):
            return f"stamped letters, at most {most}"
        case params.Words(most):
            return f"text, at most {most} letters"
        case params.Several(each, most, least):
            return f"a list of {least} to {most}, each of: {allowed(each)}"
    raise AssertionError(check)


def generated() -> dict[str, str]:
    return {
        "spots": f"\n{spots()}\n",
        "pictures": f"\n{pictures()}\n",
        "refusals": f"\n{refusals()}\n",
    }


def marked(name: str) -> re.Pattern[str]:
    """The part of the page between two markers."""
    return re.compile(f"(<!-- {name} -->)(.*?)(<!-- /{name} -->)", re.DOTALL)


def example():
    """The example as a guide."""
    return loads(lapwing().encode(), file="lapwing.toml", stem="lapwing")


def test_example_is_a_guide_without_warnings():
    assert warnings(example()) == ()


def test_example_find_is_read():
    find = PAGE.read_text().split("```json\n")[1].split("```")[0]

    assert finds.load(find, [example()]).claim.cites == ("rings",)


@pytest.mark.parametrize("name", ["spots", "pictures", "refusals"])
def test_generated_part_is_fresh(name):
    """If not: python tests/guides/test_rules_readme.py"""
    assert marked(name).search(PAGE.read_text())[2] == generated()[name]


@pytest.mark.parametrize("heading", SECTIONS)
def test_section_names_every_key(heading):
    section = PAGE.read_text().split(f"\n{heading}\n")[1].split("\n#")[0]

    assert re.findall(r"^\| `(\w+)` \|", section, re.MULTILINE) == keys(
        SECTIONS[heading]
    )


@pytest.mark.parametrize(
    ("kind", "of"),
    [
        ("measure", schema.MeasureSchema),
        ("code", schema.CodeSchema),
        ("number", schema.NumberSchema),
    ],
)
def test_section_of_a_kind_names_its_own_keys(kind, of):
    section = PAGE.read_text().split(f"\n### A {kind}\n")[1].split("\n#")[0]
    own = set(keys(of)) - set(keys(schema.ClueSchema))

    assert set(re.findall(r"^\| `(\w+)` \|", section, re.MULTILINE)) == own


def test_words_stand_with_their_shares():
    [line] = [line for line in PAGE.read_text().splitlines() if "- A word: " in line]
    pairs = [f"{word} {f'{p:.2f}'[1:] if p else '0'}" for word, p in WORDS.items()]

    assert line == f"- A word: {', '.join(pairs)}."


def keys(of: type[Schema]) -> list[str]:
    """The keys of a table as authors write them, in order."""
    return [field.data_key or name for name, field in of().fields.items()]


RULE = "|---|---|---|"

if __name__ == "__main__":
    text = PAGE.read_text()
    for part, body in generated().items():
        text = marked(part).sub(lambda m, body=body: m[1] + body + m[3], text)
    PAGE.write_text(text)
