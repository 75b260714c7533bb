"""From a picture with example letters to the same of one object: its own number, and
its code worn where another clue is there to read it.
"""

from fieldid.draw.letters import WORN
from fieldid.draw.params import CODE, NUMBER, checks, examples
from fieldid.draw.pictures import SHAPES, Picture


def owned(picture: Picture, *, number: str | None, worn: bool) -> Picture:
    """The picture with that number, if it is known, and with its code worn or not.

    >>> owned(("numeral", (("style", "boxed"),)), number="4", worn=True)
    ('numeral', (('style', 'boxed'), ('figure', '4')))
    >>> owned(("hosel", (("lines", ("F6", "24")),)), number="4", worn=True)
    ('hosel', (('lines', ('##', '##')),))
    """
    shape, parameters = picture
    given = dict(parameters)
    for name, what in examples(SHAPES[shape]).items():
        if what == NUMBER and number is not None:
            fits = not checks(SHAPES[shape])[name].wrong(number)
            given[name] = number if fits else WORN
        elif what == CODE and worn and name in given:
            given[name] = _worn(given[name])
    return shape, tuple(given.items())


def _worn(value: object) -> object:
    """Every letter worn, in its place."""
    if isinstance(value, str):
        return "".join(WORN if letter != " " else " " for letter in value)
    assert isinstance(value, tuple)
    return tuple(map(_worn, value))
