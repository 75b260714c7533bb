"""What a clue of each kind asks for in a form, and the tables that lie in it."""

from dataclasses import replace

from fieldid.workbench.entries import (
    MEMBERS,
    NEW_ID,
    PARTS,
    PHOTO_HINT,
    SHARE_HINT,
    SOURCE,
    YES,
    Entry,
    Rows,
    Table,
    offered,
    spots,
)
from fieldid.workbench.kinds import (
    ALPHABET,
    AMOUNT,
    AREA,
    COUNT,
    LIST,
    NUMBERS,
    PICK,
    PICTURE,
    SHARE,
    SHARES,
    TEXTS,
    TRUTH,
    TWO,
    YEARS,
)

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


_ASKED = (
    Entry("ask", "Question", "As it stands on the screen.", AREA),
    Entry("name", "Name", "A short noun for sentences. Left empty: the short name."),
    Entry("part", "Part", "The part that it sits on.", PICK, PARTS),
    Entry(
        "spot",
        "Place on the drawing",
        "What is lit. Left open: the place with the part’s short name, or the whole "
        "object.",
        PICK,
        spots,
    ),
    Entry("where", "Where to look", "", AREA),
)


_KNOWN = (
    Entry("why", "Why", "What it tells and what it does not.", AREA),
    Entry("photo", "Photo", "What to ask a seller to photograph.", AREA),
    Entry("seconds", "Seconds", "How long a look takes. Left empty: 10.", AMOUNT),
    Entry(
        "unreadable",
        "How often it cannot be told",
        f"{SHARE_HINT} Left empty: never.",
        SHARE,
    ),
    Entry(
        "misread",
        "How often it is misread",
        f"{SHARE_HINT} Left empty: as in the whole guide.",
        SHARE,
    ),
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
    Entry("picture", "Picture beside the question", PHOTO_HINT, PICTURE),
    SOURCE,
    Entry("id", "Short name", NEW_ID),
    Entry("kind", "Kind of clue", "", PICK, offered(*KINDS)),
)


_MARKED = (
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
        *_ASKED,
        Entry(
            "replacement",
            "What a replaced part shows",
            "A line each: the answer = a share, as none = usually.",
            SHARES,
        ),
        *_KNOWN,
    ),
    lists=("option",),
)


MEASURE = Table(
    "Measure",
    "A size that is measured.",
    (
        *_ASKED,
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
        ),
        *_KNOWN,
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


CODE = Table(
    "Code",
    "Letters and digits, field by field from left to right.",
    (*_ASKED, *_MARKED, *_KNOWN),
    lists=("field", "layout"),
)


NUMBER = Table(
    "Number",
    "A number that rose from year to year.",
    (
        *_ASKED,
        *_MARKED,
        Entry(
            "first",
            "First number of each year",
            "A line each: 1951 = 1. A year that is left out gave no number.",
            NUMBERS,
        ),
        Entry("last", "Last number of all", "", COUNT),
        *_KNOWN,
    ),
)


CLUE = Table(
    "Clue",
    "Its kind is not known: choose one, save, and go on.",
    (*_ASKED, *_KNOWN),
)


SPANS = Rows(
    "seen",
    "When it was made",
    "A line for each time. A line left empty is taken out; without any line it never "
    "left the works, and shows only on replaced parts.",
    (
        Entry("years", "Model years", "As 1951-1952; empty: all.", YEARS),
        Entry("from", "From month", "As 1951-09."),
        Entry("to", "To month", "As 1952-06."),
        Entry("fade", "Months of both", "Old and new side by side.", COUNT),
        Entry("share", "How often", "As usually; empty: always.", SHARE),
        *MEMBERS,
    ),
)


OPTION = Table(
    "Answer",
    "One answer to the question, and when it was made.",
    (
        Entry("label", "Answer", "In words, as on the screen."),
        Entry(
            "like",
            "Easily taken for",
            "Other answers, with commas.",
            LIST,
        ),
        Entry("picture", "Picture", PHOTO_HINT, PICTURE),
        SOURCE,
        Entry("id", "Short name", NEW_ID),
    ),
    (SPANS,),
)


FIELD = Table(
    "Field of a code",
    "One stretch of the code, and what it stands for.",
    (
        Entry("name", "Name", "What this stretch is called."),
        Entry(
            "kind",
            "It stands for",
            "",
            PICK,
            offered(
                ("month", "the month of building"),
                ("year", "the last digits of the year of building"),
                ("year-letter", "the year of building, by a table"),
                ("model-year", "the model year, by a table"),
                ("week", "the week of the year"),
                ("day", "the day of the month"),
                ("plain", "nothing about the date"),
            ),
        ),
        Entry("width", "Characters", "How many it has.", COUNT),
        Entry(
            "alphabet",
            "Alphabet",
            "All characters that may stand there; of months the twelve in order first.",
            ALPHABET,
        ),
        Entry("odd", "How often the works broke its rule", SHARE_HINT, SHARE),
        Entry(
            "codes",
            "Table",
            "What stands for which year, a line each: 1951 = 17.",
            TEXTS,
        ),
        Entry(
            "weeks",
            "Weeks are counted",
            "Only of a week.",
            PICK,
            offered(("iso", "from Monday (ISO 8601)"), ("sunday", "from Sunday")),
        ),
    ),
)


LAYOUT = Table(
    "Layout of a code",
    "One way in which the code was laid out.",
    (Entry("years", "In use", "Years, as 1943-1949. Left empty: always.", YEARS),),
    lists=("field",),
)


NEW_CHOICE = Table(
    "New choice",
    "Ask first what can be seen; what else there is to say of it comes after.",
    (
        *(each for each in _ASKED if each.key != "name"),
        Entry("seconds", "Seconds", "How long a look takes. Left empty: 10.", AMOUNT),
    ),
    (
        Rows(
            "option",
            "Answers",
            "Two or more. Each can have several times and a picture later on.",
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
    "Ask for the code and say what its first stretch stands for; others come after.",
    (*(each for each in _ASKED if each.key != "name"), *_MARKED, *_FIRST),
)


NEW_LAYOUT = Table(
    LAYOUT.noun,
    "Say what its first stretch stands for; others come after.",
    (*LAYOUT.entries, *_FIRST),
)


CLUE_KINDS = {"choice": CHOICE, "measure": MEASURE, "code": CODE, "number": NUMBER}


NEW_CLUES = {**CLUE_KINDS, "choice": NEW_CHOICE, "code": NEW_CODE}
