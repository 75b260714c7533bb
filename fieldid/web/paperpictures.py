"""The pictures of a page without scripts, each once, however often it is shown."""

import re
from collections.abc import Iterable, Sequence
from dataclasses import dataclass

from markupsafe import Markup

from fieldid import draw
from fieldid.engine.guide import Choice, Clue

Key = tuple[str, ...]
"""A clue and its option, or `SCENE` and the places that are lit."""
SCENE = ""
"""Stands for the object in place of a clue."""
_OF_SYMBOLS = ("viewBox", "stroke-width")
_PAINT = re.compile(r"url\(#swatch-(\w+)\)")


@dataclass(frozen=True, slots=True)
class Pictures:
    """Drawings as symbols with the colours that they are painted with, and how to show
    one.
    """

    symbols: Markup
    swatches: Markup
    places: dict[Key, tuple[str, str]]

    def show(self, clue: Clue, option: str) -> Markup:
        """The option's picture, by its symbol."""
        return self._shown(clue.id, option)

    def where(self, *spots: str) -> Markup:
        """The guide's object with these places lit."""
        return self._shown(SCENE, *spots)

    def _shown(self, *key: str) -> Markup:
        name, box = self.places[key]
        use = ("use", (("href", f"#{name}"),), ())
        shown = (("class", "drawing"), ("viewBox", box), ("aria-hidden", "true"))
        return Markup(draw.svg(("svg", shown, (use,))))


def pictures(
    clues: Iterable[Clue], *, scene: str = "", lit: Iterable[Sequence[str]] = ()
) -> Pictures:
    """The pictures of all options of the clues, which may come more than once, and the
    named scene with each of these choices of places lit.
    """
    drawn = {key: draw.node(each) for key, each in _drawn(clues).items()}
    scenes = {(SCENE, *spots): draw.scene(scene, lit=spots) for spots in lit}
    return _symbols(drawn | scenes)


def _symbols(drawn: dict[Key, draw.Node]) -> Pictures:
    symbols = []
    places = {}
    common, slim = draw.shared(drawn)
    for place, (key, drawing) in enumerate(slim.items(), start=1):
        name = f"p{place}"
        _, attributes, children = drawing
        kept = {key: value for key, value in attributes if key in _OF_SYMBOLS}
        symbol = (("id", name), *kept.items())
        symbols.append(draw.svg(("symbol", symbol, children)))
        places[key] = (name, kept["viewBox"])
    defined = f"<defs>{''.join(map(draw.svg, common))}</defs>" if common else ""
    told = defined + "".join(symbols)
    painted = draw.swatches(set(_PAINT.findall(told)))
    return Pictures(Markup(told), Markup(draw.svg(painted)), places)


def _drawn(clues: Iterable[Clue]) -> dict[Key, draw.Picture]:
    found: dict[Key, draw.Picture] = {}
    for clue in clues:
        if isinstance(clue.kind, Choice):
            for option in clue.kind.options:
                if option.picture:
                    found[clue.id, option.id] = option.picture
    return found
