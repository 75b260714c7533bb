"""What each table of a guide asks for in a form: its fields with their words.

The forms and their pages are drawn from this. What may stand in a field is said by the
guide's schema alone.
"""

from fieldid.workbench.fields.clue import CLUE
from fieldid.workbench.fields.entries import (
    CLUES,
    DRAWINGS,
    NEW_ID,
    PARTS,
    YES,
    Entry,
    Rows,
    Table,
    how_often,
    object_drawn,
    offered,
)
from fieldid.workbench.fields.inner import FIELD, LAYOUT, OPTION
from fieldid.workbench.fields.kinds import (
    AMOUNT,
    AREA,
    COUNT,
    DAY,
    DRAWN,
    LIST,
    MONEY,
    NUMBERS,
    OFF,
    OFFS,
    PICK,
    SHARE,
    SHARES,
    TEXTS,
    TRUTH,
    TWO,
    YEAR,
    YEARS,
)
from fieldid.workbench.fields.new import NEW_LAYOUT

GUIDE = Table(
    "The guide itself",
    "What the line is, for somebody who does not know it.",
    (
        Entry("title", "Title", "What the line is called on the screen."),
        Entry("maker", "Maker", "Who made it; may be left empty."),
        Entry("kind", "Kind of object", "As: golf irons."),
        Entry(
            "fiction",
            "Invented?",
            "The screens say so of an invented line. Left open: no.",
            TRUTH,
            YES,
        ),
        Entry("about", "About it", "A paragraph for a newcomer.", AREA),
        Entry("source", "Source", "Where the knowledge comes from.", AREA),
        Entry("updated", "Date of the knowledge", "As 2026-03-31.", DAY),
        Entry(
            "drawing",
            "Drawing",
            "The whole object, as the app shows it.",
            DRAWN,
            DRAWINGS,
            object_drawn,
            is_needed=True,
        ),
        Entry(
            "verdict",
            "It answers with",
            "Left open: a model year.",
            PICK,
            offered(("year", "a model year"), ("range", "a range of years")),
        ),
        Entry(
            "anything",
            "Is it about any object?",
            "The start page then leads to it whoever does not know what the object is. "
            "Left open: no.",
            TRUTH,
            YES,
        ),
        Entry(
            "include",
            "Clues of other guides",
            "Short names of guides beside this one, with commas.",
            LIST,
        ),
        Entry("id", "Short name", "The name of the file without .toml."),
        Entry("format", "Format", "1, as long as there is no other.", COUNT),
    ),
    lists=("model", "model_year", "part", "clue", "set", "flag", "caution", "prices"),
)

MODEL = Table(
    "Figures for the whole guide",
    "Most guides can leave these as they are.",
    (
        Entry(
            "floor",
            "Left for the unseen",
            "The share of what nobody has seen yet. Left empty: 0.01.",
            SHARE,
        ),
        Entry("misread", "How often a reading is wrong", "Left empty: 0.02.", SHARE),
        Entry(
            "outside",
            "How often it is none of these",
            "Another line, a year that is missing here, a copy. Left empty: 0.02.",
            SHARE,
        ),
    ),
)

MODEL_YEAR = Table(
    "Model year",
    "A catalogue year, and when its objects were built.",
    (
        Entry("year", "Model year", "The catalogue year, as 1952.", YEAR),
        Entry(
            "years",
            "Or a run of plain years",
            "The first and the last, as 1840-2030, in place of one year.",
            YEARS,
        ),
        Entry(
            "built",
            "Built",
            "The first and the last month, as 1951-09 to 1952-10. "
            "Left empty: January to December.",
            TWO,
        ),
        Entry(
            "volume",
            "How much was made",
            "Beside the other years, as 0.3 for a strike. Left empty: 1.",
            AMOUNT,
        ),
        Entry("note", "Note", "A sentence about the year.", AREA),
    ),
)

PART = Table(
    "Part",
    "What can be replaced by itself.",
    (
        Entry("name", "Name", "As in a sentence: the grip."),
        how_often(
            "replaced",
            "How often replaced",
            "How often it is no longer the first one.",
            empty="0.05",
        ),
        Entry(
            "follows.part",
            "It goes with",
            "The part that takes it along when it is replaced.",
            PICK,
            PARTS,
        ),
        how_often(
            "follows.share",
            "How often it then goes too",
            "Only beside a part that it goes with.",
        ),
        how_often(
            "whole_set", "Replaced on a whole set at once", "How often.", empty="never"
        ),
        Entry("id", "Short name", NEW_ID),
    ),
)


SET = Table(
    "Set",
    "The members that there were, if objects were sold as sets.",
    (
        Entry("members", "Members", "With commas, as 3, 4, 5, W.", LIST),
        Entry("usual", "Sold as", "The members of a usual set, with commas.", LIST),
        how_often(
            "stray",
            "How often one is a stray",
            "It comes from another set.",
            empty="0.04",
        ),
        Entry(
            "stray_for",
            "Where that differs",
            "A line each: the member = a share, as W = half.",
            SHARES,
        ),
        Entry(
            "names",
            "What members are called",
            "In a sentence, a line each: W = wedge.",
            TEXTS,
        ),
    ),
)

FLAG = Table(
    "Red flag",
    "What should make a buyer ask.",
    (
        Entry("say", "What is odd", "In neutral words.", AREA),
        Entry("ask", "Question for the seller", "", AREA),
    ),
    (
        Rows(
            "when",
            "It waits for",
            "All that is filled in must hold. A line left empty is taken out.",
            (
                Entry("clue", "Clue", "That was read.", PICK, CLUES),
                Entry("is", "Reads", "Answers or codes, with commas.", LIST),
                Entry("over", "Above", "Of a size or number.", AMOUNT),
                Entry("under", "Below", "Of a size or number.", AMOUNT),
                Entry("part", "Part", "", PICK, PARTS),
                Entry("replaced_over", "Replaced more often than", "As 0.5.", SHARE),
                Entry("year_in", "Leading year in", "As 1953-1954.", YEARS),
            ),
        ),
    ),
)
CAUTION = Table(
    "Caution",
    "For handling and using such an object.",
    (Entry("say", "Caution", "", AREA),),
)

_OTHER = Entry("other", "Worth of every other", "Left empty: 0.", MONEY)


PRICES = Table(
    "Prices",
    "Figures to begin an offer with. They are never an appraisal.",
    (
        Entry("currency", "Currency", "Its three letters, as EUR."),
        Entry("date", "Day of the prices", "As 2026-01-31.", DAY),
        Entry("source", "Source", "Where they come from.", AREA),
        Entry("worth", "Worth of a model year", "A line each: 1951 = 40.", NUMBERS),
        _OTHER,
        Entry(
            "condition",
            "Condition takes off",
            "A line each: worn = 20 %, or an amount.",
            OFFS,
        ),
        Entry(
            "off",
            "A replaced part takes off",
            "A line each, by the part’s short name: shaft = 40 %.",
            OFFS,
        ),
        Entry(
            "put_right",
            "Putting it right costs",
            "A line each, by the part’s short name: grip = 12.",
            NUMBERS,
        ),
    ),
    lists=("set",),
)
PRICES_SET = Table(
    "Prices of whole sets",
    "What a whole set is worth.",
    (
        Entry("worth", "Worth of a model year", "A line each: 1951 = 300.", NUMBERS),
        _OTHER,
        Entry("missing", "A missing member takes off", "As 15 %.", OFF),
        Entry("stray", "A stray takes off", "As 60 %.", OFF),
    ),
)


TABLES = {
    "": GUIDE,
    "model": MODEL,
    "model_year": MODEL_YEAR,
    "part": PART,
    "clue": CLUE,
    "clue.option": OPTION,
    "clue.field": FIELD,
    "clue.layout": LAYOUT,
    "clue.layout.field": FIELD,
    "set": SET,
    "flag": FLAG,
    "caution": CAUTION,
    "prices": PRICES,
    "prices.set": PRICES_SET,
}
"""Each table by the keys that lead to it."""
ALONE = ("", "model", "set", "prices", "prices.set")
"""Tables of which there is one; of all others there is a list."""
NEW = {**TABLES, "clue.layout": NEW_LAYOUT}
"""What is asked for a table that is not there yet; of a clue its kind says more."""
