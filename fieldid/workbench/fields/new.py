"""What is asked first of a clue or a layout that is not there yet."""

from dataclasses import replace

from fieldid.workbench.fields.clue import ASKED, CLUE_KINDS, KNOWN, MARKED, STRETCHES
from fieldid.workbench.fields.entries import WEIGHTS, Entry, Rows, Table
from fieldid.workbench.fields.inner import FIELD, LAYOUT
from fieldid.workbench.fields.kinds import SHARE, YEARS

_BEGUN = (
    *ASKED,
    *(each for each in KNOWN if each.key in ("why", "photo", "seconds", "needs")),
)
"""What is asked of a new clue; the rest can be said once it is there."""


NEW_CHOICE = Table(
    "New choice",
    "Ask first what can be seen; what else there is to say of it comes after.",
    _BEGUN,
    (
        Rows(
            "option",
            "Answers",
            "Two or more. Each can have several times and a picture later on. "
            f"{WEIGHTS}",
            (
                Entry("label", "Answer", "In words."),
                Entry(
                    "seen.0.years", "Model years", "As 1951-1952; empty: all.", YEARS
                ),
                Entry(
                    "seen.0.share",
                    "How often",
                    "As usually; empty: always. Without years and this it never left "
                    "the works.",
                    SHARE,
                ),
            ),
        ),
    ),
)


_FIRST = tuple(
    replace(each, key=f"field.0.{each.key}", label=f"First stretch: {each.label}")
    for each in FIELD.entries
)


NEW_CODE = Table(
    "New code",
    f"{STRETCHES} Say what the first one stands for; the others come after.",
    (*_BEGUN, *MARKED, *_FIRST),
)


NEW_LAYOUT = Table(
    LAYOUT.noun,
    "Say what its first stretch stands for; others come after.",
    (*LAYOUT.entries, *_FIRST),
)


NEW_CLUES = {**CLUE_KINDS, "choice": NEW_CHOICE, "code": NEW_CODE}
