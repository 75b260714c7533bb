"""What can go wrong for a user, as sentences; each class knows its exit code."""

from collections.abc import Iterable, Mapping
from dataclasses import dataclass, field
from difflib import get_close_matches


@dataclass(frozen=True, slots=True, order=True)
class Problem:
    """One mistake in a file: where it is, what is wrong, what would be right; and the
    code of its refusal with the words in it, for who says it otherwise.

    >>> print(Problem("a.toml", 3, "part[1].id", "'shaft' is used twice", "another id"))
    a.toml:3: part[1].id: 'shaft' is used twice; would be right: another id
    """

    file: str
    line: int
    key: str
    wrong: str
    right: str
    code: str = field(default="", compare=False, repr=False)
    words: Mapping[str, object] = field(default_factory=dict, compare=False, repr=False)

    def __str__(self) -> str:
        place = f"{self.file}:{self.line}" if self.line else self.file
        what = f"{self.key}: {self.wrong}" if self.key else self.wrong
        return f"{place}: {what}; would be right: {self.right}"


class FieldidError(Exception):
    """A mistake that its user can mend; the message is the whole story."""

    exit_code = 1


class GuideError(FieldidError):
    """A guide with problems, all of them."""

    def __init__(self, problems: Iterable[Problem]) -> None:
        self.problems = tuple(sorted(problems))
        super().__init__("\n".join(map(str, self.problems)))


class CensusError(GuideError):
    """A census with problems, all of them."""


class FindError(FieldidError):
    """A find that cannot be judged; one sentence."""


class BuildError(FieldidError):
    """A bundle that would not work on a phone."""


class InboxError(FieldidError):
    """What cannot be taken into the inbox, or cannot be done there; one sentence."""


class WriteError(FieldidError):
    """A file that could not be written; what was there before still is."""


class ChangedError(FieldidError):
    """A file that is no longer what it was when it was opened."""


class TakenError(FieldidError):
    """A file that would be new and is there already."""


class UsageError(FieldidError):
    """A command that was called wrongly."""

    exit_code = 2


def nearest(word: str, known: Iterable[str]) -> str:
    """What to write instead of `word`: the nearest known name, or all of them.

    >>> nearest("gripp", ["shaft", "grip"])
    "'grip'"
    >>> nearest("toe", ["sole-width", "toe-outline"])
    "'toe-outline'"
    >>> nearest("wheel", ["shaft", "grip"])
    "one of 'shaft', 'grip'"
    """
    names = list(known)
    halves = [name for name in names if word in name.split("-")]
    close = [*halves, *get_close_matches(word, names, n=1, cutoff=0.6)]
    if close:
        return repr(close[0])
    return "one of " + ", ".join(map(repr, names)) if names else "nothing here"
