"""The pictures of a page without scripts, each once, however often it is shown."""

from collections.abc import Iterable
from dataclasses import dataclass

from markupsafe import Markup

from fieldid import draw
from fieldid.engine.guide import Choice, Clue


@dataclass(frozen=True, slots=True)
class Pictures:
    """Drawings as symbols, and how to show one."""

    symbols: Markup
    places: dict[tuple[str, str], tuple[str, str]]

    def show(self, clue: Clue, option: str) -> Markup:
        """The option's picture, by its symbol."""
        return self._shown(clue.id, option)

    def where(self, spot: str) -> Markup:
        """The guide's object with this place lit."""
        return self._shown(SCENE, spot)

    def _shown(self, *key: str) -> Markup:
        name, box = self.places[key[0], key[1]]
        use = ("use", (("href", f"#{name}"),), ())
        shown = (("class", "drawing"), ("viewBox", box), ("aria-hidden", "true"))
        return Markup(draw.svg(("svg", shown, (use,))))


def pictures(clues: Iterable[Clue], *, scene: str = "") -> Pictures:
    """The pictures of all options of the clues, which may come more than once, and the
    named scene for each of the places that they are at.
    """
    told = tuple(clues)
    drawn = {key: draw.node(each) for key, each in _drawn(told).items()}
    if scene:
        spots = [clue.spot for clue in told if clue.spot]
        drawn |= {(SCENE, spot): draw.scene(scene, lit=(spot,)) for spot in spots}
    return _symbols(drawn)


def _symbols(drawn: dict[tuple[str, str], draw.Node]) -> Pictures:
    symbols = []
    places = {}
    for place, (key, drawing) in enumerate(drawn.items(), start=1):
        name = f"p{place}"
        _, attributes, children = drawing
        kept = {key: value for key, value in attributes if key in _OF_SYMBOLS}
        symbol = (("id", name), *kept.items())
        symbols.append(draw.svg(("symbol", symbol, children)))
        places[key] = (name, kept["viewBox"])
    return Pictures(Markup("".join(symbols)), places)


def _drawn(clues: Iterable[Clue]) -> dict[tuple[str, str], draw.Picture]:
    found: dict[tuple[str, str], draw.Picture] = {}
    for clue in clues:
        if isinstance(clue.kind, Choice):
            for option in clue.kind.options:
                if option.picture:
                    found[clue.id, option.id] = option.picture
    return found


SCENE = ""
"""Stands for the object in place of a clue."""
_OF_SYMBOLS = ("viewBox", "stroke-width")
