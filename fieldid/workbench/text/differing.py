"""Texts line by line: what was changed on disk meanwhile, and what one's own does."""

from dataclasses import dataclass
from difflib import SequenceMatcher

from fieldid.guides.document import Document
from fieldid.workbench.text.memory import remembered


@dataclass(frozen=True, slots=True)
class Difference:
    """Lines that went out and lines that came in, from a line on of the text that both
    are told beside.
    """

    line: int
    out: tuple[str, ...]
    new: tuple[str, ...]


@dataclass(frozen=True, slots=True)
class Differing:
    """What was changed on disk since a page was opened, and what saving the author's
    own text would change there. `meanwhile` is None where nobody remembers the text
    that the page was opened with, and `own` where there is nothing to save it into.
    """

    meanwhile: tuple[Difference, ...] | None
    own: tuple[Difference, ...] | None


def differing(document: Document, *, tag: str, own: str | None) -> Differing:
    """Both, for a page that was opened with the tag; lines count as in the file now."""
    before = remembered(tag)
    now = document.text
    return Differing(
        differences(before, now, of_new=True) if before else None,
        None if own is None else differences(now, own),
    )


def differences(
    before: str, after: str, *, of_new: bool = False
) -> tuple[Difference, ...]:
    """Each place where the lines differ, counted in `before` or in the new text.

    >>> differences("a\\nb\\nc", "a\\nB\\nc")
    (Difference(line=2, out=('b',), new=('B',)),)
    """
    a, b = before.split("\n"), after.split("\n")
    return tuple(
        Difference((k if of_new else i) + 1, tuple(a[i:j]), tuple(b[k:n]))
        for tag, i, j, k, n in SequenceMatcher(None, a, b, False).get_opcodes()
        if tag != "equal"
    )
