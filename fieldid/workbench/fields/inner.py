"""What the tables that lie in a clue ask for: answers, stretches of a code, layouts."""

from fieldid.workbench.fields.entries import (
    MEMBERS,
    NEW_ID,
    PICTURE_HINT,
    SOURCE,
    WEIGHTS,
    Entry,
    Rows,
    Table,
    how_often,
    offered,
)
from fieldid.workbench.fields.kinds import (
    ALPHABET,
    COUNT,
    LIST,
    PICK,
    PICTURE,
    SHARE,
    TEXTS,
    YEARS,
)

SPANS = Rows(
    "seen",
    "When it was made",
    "A line for each time. A line left empty is taken out; without any line it never "
    f"left the works, and shows only on replaced parts. {WEIGHTS}",
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
        Entry("picture", "Picture", PICTURE_HINT, PICTURE),
        SOURCE,
        Entry("id", "Short name", NEW_ID),
    ),
    (SPANS,),
)


FIELD = Table(
    "Stretch",
    "One stretch of a code, and what it stands for.",
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
        how_often("odd", "How often the works broke its rule"),
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
    "Layout",
    "One way in which the code was laid out, stretch by stretch.",
    (Entry("years", "In use", "Years, as 1943-1949. Left empty: always.", YEARS),),
    lists=("field",),
)
