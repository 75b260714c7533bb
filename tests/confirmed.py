"""Small guides with specimens for the tests of the census."""

from fieldid.census.specimens import Census, Specimen
from fieldid.engine.find import Item
from make import choice, guide, model_year, option, part, span

YEARS = (1951, 1952, 1953)


def rings(**rest):
    """A guide of three years whose rings change in 1952, and whose cap stays."""
    rest.setdefault("parts", (part("head", 0.02), part("collar", 0.3)))
    return guide(
        choice(
            "rings",
            option("green", span((1951, 1952), share=0.6)),
            option("navy", span((1952, 1953), share=0.3), like=("green",)),
            option("none", span(share=0.1)),
            part="collar",
        ),
        choice(
            "cap",
            option("plain", span((1951, 1951), share=0.9)),
            option("star", span((1952, 1953), share=0.9)),
        ),
        years=tuple(model_year(year) for year in YEARS),
        **rest,
    )


def specimen(year=None, *, member=None, gone=(), name=None, line=0, **readings):
    """A specimen of a year, of years with probabilities, or of none that is known."""
    years = year if isinstance(year, dict) else {} if year is None else {year: 1.0}
    item = Item(tuple(readings.items()), tuple(gone), member)
    name = name or f"{years}-{readings}"
    return Specimen(name, tuple(years.items()), "receipt", "", item, line)


def census(*specimens):
    """A census of the guide that is called plain."""
    return Census("plain", specimens, "plain.census.csv")


MIXED = census(
    *(specimen(1951, rings="green", cap="plain") for _ in range(4)),
    specimen(1951, rings="none", cap="plain"),
    *(specimen(1952, rings="navy", cap="star") for _ in range(5)),
    specimen(1952, rings="green", cap="star"),
    specimen(1952, rings="none"),
    specimen({1951: 0.7, 1952: 0.3}, rings="green", cap="star"),
    specimen({1952: 0.5, 1953: 0.5}, rings="navy"),
    specimen(rings="navy", cap="plain"),
    specimen(rings=None, cap="star"),
    specimen(1953, cap="star", gone=("collar",)),
    specimen(1953, rings="none", cap="star"),
)
