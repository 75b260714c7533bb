"""What a clue of each kind asks for in a form."""

from fieldid.workbench.fields.entries import (
    MEMBERS,
    NEW_ID,
    PARTS,
    PICTURE_HINT,
    SOURCE,
    YES,
    Entry,
    Rows,
    Table,
    how_often,
    offered,
    spot_drawn,
    spots,
)
from fieldid.workbench.fields.kinds import (
    AMOUNT,
    AREA,
    COUNT,
    DRAWN,
    NUMBERS,
    PICK,
    PICTURE,
    SHARES,
    TRUTH,
    TWO,
    YEARS,
)

GOLF_CLUBS = ("iron", "unmarked-iron", "wood")
"""The drawings of what has a swing weight."""
MEANS = offered(
    ("made", "when the object was made"),
    ("not-before", "a date that it was made after"),
)


KINDS = (
    ("choice", "a choice: one answer of several"),
    ("measure", "a measure: a length, a weight"),
    ("code", "a code: letters and digits that stand for something"),
    ("number", "a number: a serial, a patent"),
)


ASKED = (
    Entry("ask", "Question", "As it stands on the screen.", AREA),
    Entry("name", "Name", "A short noun for sentences. Left empty: the short name."),
    Entry("part", "Part", "The part that it sits on.", PICK, PARTS),
    Entry(
        "spot",
        "Place on the drawing",
        "What is lit. Left open: the place with the part’s short name, or the whole "
        "object.",
        DRAWN,
        spots,
        spot_drawn,
    ),
    Entry("where", "Where to look", "", AREA),
)


KNOWN = (
    Entry("why", "Why", "What it tells and what it does not.", AREA),
    Entry("photo", "Photo", "What to ask a seller to photograph.", AREA),
    Entry("seconds", "Seconds", "How long a look takes. Left empty: 10.", AMOUNT),
    how_often("unreadable", "How often it cannot be told", empty="never"),
    how_often("misread", "How often it is misread", empty="as in the whole guide"),
    Entry(
        "seen_from",
        "Seen from",
        "Left open: only in the hand.",
        PICK,
        offered(("hand", "the hand"), ("away", "a step away")),
    ),
    Entry("needs", "Needs", "A tool, or the seller’s leave."),
    Entry(
        "popular", "Often cited?", "Whether people cite it. Left open: no.", TRUTH, YES
    ),
    Entry("picture", "Picture beside the question", PICTURE_HINT, PICTURE),
    SOURCE,
    Entry("id", "Short name", NEW_ID),
    Entry("kind", "Kind of clue", "", PICK, offered(*KINDS)),
)


MARKED = (
    Entry("means", "It tells", "Left open: when it was made.", PICK, MEANS),
    Entry(
        "lag",
        "Years in use",
        "On average, of a mark that was made before the object; else empty.",
        AMOUNT,
    ),
)


CHOICE = Table(
    "Choice",
    "One answer of several.",
    (
        *ASKED,
        Entry(
            "replacement",
            "What a replaced part shows",
            "A line each: the answer = a share, as none = usually.",
            SHARES,
        ),
        *KNOWN,
    ),
    lists=("option",),
)


MEASURE = Table(
    "Measure",
    "A size that is measured.",
    (
        *ASKED,
        Entry("unit", "Unit", "As mm."),
        Entry(
            "range",
            "What can be read",
            "The smallest and the largest number, as 3 to 12.",
            TWO,
        ),
        Entry(
            "wear",
            "Wear",
            "How much use has taken off on average. Left empty: nothing.",
            AMOUNT,
        ),
        Entry(
            "helper",
            "Calculation that helps",
            "",
            PICK,
            offered(("swing-weight", "swing weight of a golf club")),
            suits=lambda data: data.get("drawing") in GOLF_CLUBS,
        ),
        *KNOWN,
    ),
    (
        Rows(
            "size",
            "Sizes as made",
            "For a year and a member there is one. A line left empty is taken out.",
            (
                Entry("years", "Model years", "As 1951-1952.", YEARS),
                Entry("mean", "Usual size", "When new.", AMOUNT),
                Entry("sd", "Give or take", "Two of three lie within it.", AMOUNT),
                *MEMBERS,
            ),
        ),
    ),
)


STRETCHES = (
    "A code is read in stretches from left to right, as a letter for the month and "
    "then two digits for the year."
)


CODE = Table(
    "Code",
    f"Letters and digits that stand for something. {STRETCHES}",
    (*ASKED, *MARKED, *KNOWN),
    lists=("field", "layout"),
)


NUMBER = Table(
    "Number",
    "A number that rose from year to year.",
    (
        *ASKED,
        *MARKED,
        Entry(
            "first",
            "First number of each year",
            "A line each: 1951 = 1. A year that is left out gave no number.",
            NUMBERS,
        ),
        Entry("last", "Last number of all", "", COUNT),
        *KNOWN,
    ),
)


CLUE = Table(
    "Clue",
    "Its kind is not known: choose one, save, and go on.",
    (*ASKED, *KNOWN),
)


CLUE_KINDS = {"choice": CHOICE, "measure": MEASURE, "code": CODE, "number": NUMBER}
