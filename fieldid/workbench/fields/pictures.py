"""Fields that show what they offer: one of several drawings, or a shape and what is
particular about it. Both are radio buttons, so that they work without scripts.

A picture is one text to the rest of the workbench, as `shape = collar` with a line for
each particular; here it is taken apart into fields and put together again.
"""

from collections.abc import Callable, Iterator, Mapping, Sequence
from dataclasses import dataclass
from inspect import signature
from typing import Any

from markupsafe import Markup

# The library does not say its types.
from wtforms import RadioField, StringField  # type: ignore[import-untyped]

from fieldid import draw
from fieldid.draw.params import Check, Number, OneOf, checks, needed
from fieldid.engine.words import capital
from fieldid.workbench.fields.drawn import by_group, changed, pictured
from fieldid.workbench.fields.kinds import PICTURE, MisreadError, plain
from fieldid.workbench.fields.shapes import words

SHAPE = "shape"
UNKNOWN = "“{}” (not known)"
_RAW = "= "
"""Before what stands in the file in place of a picture and is none at all."""
Drawn = Callable[[str], Markup | None]


@dataclass(frozen=True, slots=True)
class Tile:
    """One drawing to choose."""

    value: str
    words: str
    picture: Markup | None
    is_chosen: bool


@dataclass(frozen=True, slots=True)
class Particular:
    """What can be said of a shape: by tiles, or typed."""

    name: str
    label: str
    hint: str
    now: str
    mode: str
    tiles: tuple[Tile, ...]


class DrawnField(RadioField):  # type: ignore[misc]  # for the same reason
    """One of several, each with its drawing."""

    def __init__(self, label: str, *, drawn: Drawn, **words: Any) -> None:
        super().__init__(label, validate_choice=False, **words)
        self.drawn = drawn

    @property
    def tiles(self) -> tuple[Tile, ...]:
        """What there is to choose from."""
        return tuple(
            Tile(each.value, each.label, self.drawn(each.value), each.selected)
            for each in self.iter_choices()
        )


class PictureField(StringField):  # type: ignore[misc]  # for the same reason
    """A shape, and what is particular about it."""

    def process(self, formdata: Any, *args: Any, **words: Any) -> None:
        """Puts the sent fields together to one text."""
        super().process(formdata, *args, **words)
        shape = f"{self.name}.{SHAPE}"
        if formdata and shape in formdata and self.name not in formdata:
            sent = {key: plain(formdata[key]) for key in formdata}
            self.data = self._together(sent[shape], sent)

    @property
    def shape(self) -> str:
        """The shape that is chosen, known or not."""
        return self._lines(self.data).get(SHAPE, "")

    @property
    def picture(self) -> Markup | None:
        """The picture as it is drawn now."""
        return pictured(self.shape, self._values())

    @property
    def tiles(self) -> tuple[Tile, ...]:
        """No picture, and what stands in the file and is no shape."""
        shape = self.shape
        found = [Tile("", "no picture", None, not self.data)]
        if self.data and not shape:
            found.append(
                Tile(f"{_RAW}{self.data}", UNKNOWN.format(self.data), None, True)
            )
        elif self.data and shape not in draw.SHAPES:
            found.append(Tile(shape, UNKNOWN.format(shape), None, True))
        return tuple(found)

    @property
    def groups(self) -> tuple[tuple[str, tuple[Tile, ...]], ...]:
        """Each shape, below what it is for."""
        shape = self.shape
        return tuple(
            (words, tuple(Tile(name, name, svg, name == shape) for name, svg in each))
            for words, each in by_group()
        )

    @property
    def particulars(self) -> tuple[Particular, ...]:
        """What can be said of the shape, and what is said that nobody knows."""
        shape, said = self.shape, self._lines(self.data)
        if shape not in draw.SHAPES:
            return ()
        known = checks(draw.SHAPES[shape])
        odd = [key for key in said if key != SHAPE and key not in known]
        return (
            *(self._particular(shape, key, check) for key, check in known.items()),
            *(self._odd(shape, key, said[key]) for key in odd),
        )

    def _particular(self, shape: str, key: str, check: Check) -> Particular:
        said = self._lines(self.data)
        now = said.get(key, _default(shape, key))
        tiles: tuple[Tile, ...] = ()
        hint = capital(words(check)) + "."
        if isinstance(check, OneOf):
            tiles, hint = tuple(self._by_word(shape, key, now, check.words)), ""
        mode = "decimal" if isinstance(check, Number) else "text"
        label = capital(key.replace("_", " "))
        if key in needed(draw.SHAPES[shape]):
            label += " (needed)"
        return Particular(self._name(shape, key), label, hint, now, mode, tiles)

    def _by_word(
        self, shape: str, key: str, now: str, known: Sequence[str]
    ) -> Iterator[Tile]:
        if now and now not in known:
            yield Tile(now, UNKNOWN.format(now), None, True)
        values = self._values()
        for word in known:
            picture = changed(shape, values, key, word)
            yield Tile(word, word, picture, word == now)

    def _odd(self, shape: str, key: str, now: str) -> Particular:
        hint = "The shape has no such thing. Empty the field to take it out."
        return Particular(self._name(shape, key), f"“{key}”", hint, now, "text", ())

    def _name(self, shape: str, key: str) -> str:
        """The field of a particular; each shape has its own, so that what was said of
        one is never taken for another's.
        """
        return f"{self.name}.{shape}.{key}"

    def _together(self, shape: str, sent: Mapping[str, str]) -> str:
        """The text; as it stands in the file if it says the same."""
        text = str(self.default or "")
        was = self._lines(text)
        if shape in ("", f"{_RAW}{text}"):
            return text if shape else ""
        own = was if was.get(SHAPE) == shape else {SHAPE: shape}
        known = checks(draw.SHAPES[shape]) if shape in draw.SHAPES else {}
        keys = dict.fromkeys((*own, *known))
        said = {key: sent.get(self._name(shape, key), own.get(key, "")) for key in keys}
        made = {
            key: value
            for key, value in {**said, SHAPE: shape}.items()
            if value and (key in own or value != _default(shape, key))
        }
        # An empty list says nothing either, and stays.
        if made == {key: value for key, value in was.items() if value}:
            return text
        return "\n".join(f"{key} = {value}" for key, value in made.items())

    def _values(self) -> Mapping[str, object]:
        """What is particular, as the drawing takes it."""
        try:
            read = PICTURE.read(self.data or "")
        except MisreadError:
            return {}
        return {key: value for key, value in read.items() if key != SHAPE}

    @staticmethod
    def _lines(text: str | None) -> dict[str, str]:
        """Key and value of each line; what is no line belongs to the one before."""
        found: dict[str, str] = {}
        key = ""
        for line in (text or "").splitlines():
            name, equals, value = line.partition(" = ")
            if equals:
                key, found[name] = name, value
            elif key:
                found[key] += f"\n{line}"
        return found


def _default(shape: str, key: str) -> str:
    """What a particular is where nothing is said."""
    if shape not in draw.SHAPES or key == SHAPE:
        return ""
    parameter = signature(draw.SHAPES[shape]).parameters.get(key)
    value = "" if parameter is None else parameter.default
    return value if isinstance(value, str) else ""
