"""Packed guides with one mistake each: what is changed in the plover's, for Python and
the phone. A change is a path with the new value, or without one to drop what is there.
"""

from typing import Any

RINGS, PAD, STAMP, BAND, SERIAL, PATENT, MARK = (("clues", i, "kind") for i in range(7))
OPTION = (*RINGS, "options", 0)
SEEN = (*OPTION, "seen", 0)
FIELD = (*STAMP, "fields", 0)
LETTERS = (*BAND, "fields", 0)
LAYOUT = (*MARK, "layouts", 0)
FLAG = ("flags", 0, "when", 0)
DRAWN = (*OPTION, "picture")
DEEP: Any = ["g", [], []]
for _ in range(20):
    DEEP = ["g", [], [DEEP]]
LONG = "long " * 900
NODE = (*DRAWN, 2, 0)
SPAN = {
    **{"years": None, "since": None, "until": None, "fade": 0, "share": 1},
    **{"members": [], "excluded": []},
}
SIZE = {"years": [1952, 1953], "mean": 6, "sd": 1, "members": [], "excluded": []}
PART = {
    **{"id": "p", "name": "p", "replaced": 0, "follows": None, "share": 0},
    **{"whole_set": 0},
}

FIELD_OF_ONE = {
    **{"name": "n", "means": "plain", "width": 1, "alphabet": "ab", "odd": 0},
    **{"codes": [], "weeks": ""},
}
CLUE = {
    **{"id": "c", "part": "head", "name": "n", "ask": "a", "where": "", "why": ""},
    **{"photo": "", "seconds": 1, "unreadable": 0, "seen_from": "hand", "needs": ""},
    **{"misread": 0, "spot": "head", "picture": None, "source": "", "popular": False},
    "kind": {
        **{"name": "number", "means": "made", "lag": 0},
        **{"first": [[1951, 1]], "last": 9},
    },
}


def windows(months: int) -> list[dict[str, Any]]:
    """A hundred and twenty model years, each built for so long."""
    return [
        {
            **{"year": year, "opens": 12 * year, "closes": 12 * year + months - 1},
            **{"volume": 1, "note": ""},
        }
        for year in range(1951, 2071)
    ]


FORM = (
    ("a title that is blank", [((("title",)), " \t")]),
    ("a title that is a number", [(("title",), 5)]),
    ("a title that is nothing", [(("title",), None)]),
    ("a title that is half a character", [(("title",), "a\ud800")]),
    ("a title that is too long", [(("title",), LONG)]),
    ("a guide without a title", [(("title",),)]),
    ("a key that no guide has", [(("titel",), "x")]),
    ("a key from which all objects come", [(("__proto__",), {"x": 1})]),
    ("an id with capitals", [(("id",), "Plover")]),
    ("an id that climbs out of its folder", [(("id",), "../../etc")]),
    ("a day that no calendar has", [(("updated",), "2026-02-30")]),
    ("a day in words", [(("updated",), "yesterday")]),
    ("a verdict of another kind", [(("verdict",), "month")]),
    ("fiction in words", [(("fiction",), "yes")]),
    ("a floor of nothing", [(("floor",), 0)]),
    ("a share above one", [(("parts", 0, "replaced"), 1.5)]),
    ("a share that is true", [(("parts", 0, "replaced"), True)]),
    ("a share too small to see", [((*SEEN, "share"), -0.00001234)]),
    ("a number far too large", [((*PAD, "sizes", 0, "mean"), 1e300)]),
    ("half a year", [(("years", 0, "year"), 1951.5)]),
    ("years that are text", [((*SEEN, "years"), "1951-1952")]),
    ("years that are three", [((*SEEN, "years"), [1951, 1952, 1953])]),
    ("years that end before they start", [((*SEEN, "years"), [1952, 1951])]),
    ("a list that is a table", [(("clues",), {"0": {}})]),
    ("a table that is a list", [((*OPTION,), [])]),
    ("no years at all", [(("years",), [])]),
    ("one option", [((*RINGS, "options"), [{}])]),
    ("more parts than there may be", [(("parts",), [PART] * 41)]),
    ("a clue of a kind that is not known", [((*RINGS, "name"), "smell")]),
    ("a clue of no kind", [(RINGS, "choice")]),
    ("a member listed twice", [(("members", "all"), ["3", "4", "3"])]),
    ("a share for a member twice", [(("members", "stray_for"), [["3", 0], ["3", 1]])]),
    ("a currency of two letters", [(("prices", "currency"), "EU")]),
    ("a price below nothing", [(("prices", "worth", 0, 1), -1)]),
    ("a width of nothing", [((*FIELD, "width"), 0)]),
)
DRAWINGS = (
    ("a drawing that is text", [(DRAWN, "<svg onload=x>")]),
    ("a drawing that is empty text", [(DRAWN, "")]),
    ("a drawing that is a table", [(DRAWN, {"svg": 1})]),
    ("a drawing that is a group", [(DRAWN, ["g", [], []])]),
    ("a scene with a script", [(("scene", 2, 0), ["script", [], ["x"]])]),
    ("a drawing of another page", [(NODE, ["image", [["href", "x"]], []])]),
    ("a drawing that leads elsewhere", [(NODE, ["a", [["href", "x"]], []])]),
    ("a drawing with words of HTML", [(NODE, ["foreignObject", [], []])]),
    ("a drawing in a drawing", [(NODE, ["svg", [], []])]),
    ("a drawing that listens", [(NODE, ["g", [["onclick", "x"]], []])]),
    ("a drawing with a style", [(NODE, ["g", [["style", "x"]], []])]),
    ("an attribute without a value", [(NODE, ["g", [["class"]], []])]),
    ("an attribute that is text", [(NODE, ["g", ["class"], []])]),
    ("a fill from elsewhere", [(NODE, ["path", [["fill", "url(//x.y/z)"]], []])]),
    ("a class of the page", [(NODE, ["g", [["class", "banner"]], []])]),
    ("a value that is a number", [(NODE, ["g", [["stroke-width", 2]], []])]),
    ("a node of two", [(NODE, ["g", []])]),
    ("a drawing too deep", [(NODE, DEEP)]),
    ("a drawing too large", [((*DRAWN, 2), ["x"] * 900)]),
    ("a drawing's text too long", [(NODE, LONG * 2)]),
)
NAMES = (
    ("a drawing that is not known", [(("drawing",), "spoon")]),
    ("two parts of one id", [(("parts", 1, "id"), "head")]),
    ("a part that follows none that is here", [(("parts", 2, "follows"), "shafft")]),
    ("parts in a circle", [(("parts", 1, "follows"), "collar")]),
    (
        "seven parts in a chain",
        [
            (("parts", 3 + i), {**PART, "id": f"p{i}", "follows": f"p{i + 1}"})
            for i in range(6)
        ]
        + [(("parts", 9), {**PART, "id": "p6"})],
    ),
    ("two clues of one id", [(("clues", 6, "id"), "rings")]),
    ("a clue on no part", [(("clues", 0, "part"), "spool")]),
    ("a spot that is not drawn", [(("clues", 0, "spot"), 'it\'s "there"\n')]),
    ("two options of one id", [((*RINGS, "options", 1, "id"), "none")]),
    ("a replacement that is no option", [((*RINGS, "replacement", 0, 0), "grey")]),
    ("an option like itself", [((*OPTION, "like"), ["green-ivory"])]),
    ("an option like none", [((*OPTION, "like"), ["emerald"])]),
    ("a fade from nothing", [((*OPTION, "seen", 1, "fade"), 3)]),
    (
        "a span that ends before it starts",
        [((*SEEN, "since"), 23429), ((*SEEN, "until"), 23428)],
    ),
    (
        "a span for members and others",
        [((*SEEN, "members"), ["3"]), ((*SEEN, "excluded"), ["4"])],
    ),
    ("a span for a member that is not there", [((*SEEN, "members"), ["9"])]),
    ("members without a set", [(("members",), None)]),
    ("a usual member that is not there", [(("members", "usual"), ["9"])]),
    ("a stray that is not there", [(("members", "stray_for"), [["9", 0.5]])]),
    ("a name for what is not there", [(("members", "names"), [["9", "nine"]])]),
    ("a set in a guide of ranges", [(("verdict",), "range")]),
    (
        "a drawing of its own for no clue",
        [(("own",), [["x", "y", None, ["svg", [], []]]])],
    ),
    (
        "a drawing of its own for no option",
        [(("own",), [["rings", "y", "9", ["svg", [], []]]])],
    ),
)
TABLES = (
    ("a size outside its range", [((*PAD, "sizes", 0, "mean"), 12.25)]),
    ("a range without room", [((*PAD, "low"), 12)]),
    ("two sizes for one year", [((*PAD, "sizes", 3), SIZE)]),
    (
        "a field and a layout",
        [
            (
                (*MARK, "fields"),
                [FIELD_OF_ONE],
            )
        ],
    ),
    ("a code of nothing", [((*STAMP, "fields"), [])]),
    ("two fields of one name", [((*STAMP, "fields", 1, "name"), "month")]),
    ("an alphabet with a blank", [((*FIELD, "alphabet"), "ABCDEFGHJKL M")]),
    ("an alphabet with ?", [((*FIELD, "alphabet"), "ABCDEFGHJKLM?")]),
    ("an alphabet with a letter twice", [((*FIELD, "alphabet"), "ABCDEFGHJKLMA")]),
    ("an alphabet too short for months", [((*FIELD, "alphabet"), "ABC")]),
    ("an alphabet without some digits", [((*STAMP, "fields", 1, "alphabet"), "0123")]),
    ("a month two wide", [((*FIELD, "width"), 2)]),
    ("a day one wide", [((*LAYOUT, "fields", 1, "width"), 1)]),
    ("weeks of a month", [((*FIELD, "weeks"), "iso")]),
    ("weeks that are not counted", [((*MARK, "layouts", 1, "fields", 0, "weeks"), "")]),
    ("a code for a month", [((*FIELD, "codes"), [[1951, "A"]])]),
    ("letters for no years", [((*LETTERS, "codes"), [])]),
    ("a letter that is not in the alphabet", [((*LETTERS, "codes", 0, 1), "Z")]),
    ("a letter that is two", [((*LETTERS, "codes", 0, 1), "PQ")]),
    ("a letter outside its layout", [((*LAYOUT, "fields", 0, "codes", 0, 0), 1950)]),
    (
        "a model year on a mark that means not-before",
        [((*LAYOUT, "fields", 0, "means"), "model-year")],
    ),
    ("a mark without a lag", [((*PATENT, "lag"), 0)]),
    ("a lag beside the making", [((*SERIAL, "lag"), 3)]),
    ("numbers that fall", [((*SERIAL, "first", 2, 1), 400)]),
    ("a last number below the first", [((*SERIAL, "last"), 7999)]),
    ("years of numbers that fall", [((*PATENT, "first", 1, 0), 1930)]),
    ("a model year twice", [(("years", 1, "year"), 1951)]),
    ("model years that fall", [(("years", 1, "year"), 1950)]),
    ("a window of eleven years", [(("years", 0, "closes"), 23408 + 120)]),
    (
        "a window far from its year",
        [(("years", 0, "opens"), 23444), (("years", 0, "closes"), 23450)],
    ),
    ("a window that ends before it starts", [(("years", 0, "closes"), 23407)]),
    ("a price for no model year", [(("prices", "worth", 0, 0), 1960)]),
    ("a set's price for no model year", [(("prices", "set", "worth", 0, 0), 1960)]),
    ("a price for no part", [(("prices", "parts", 0, "part"), "sole")]),
)
FLAGS = (
    (
        "a flag that waits for nothing",
        [((*FLAG, "clue"), None), ((*FLAG, "among"), [])],
    ),
    ("a flag for a clue alone", [((*FLAG, "among"), [])]),
    ("a flag for a reading alone", [((*FLAG, "clue"), None)]),
    ("a flag for a part alone", [((*FLAG, "part"), "head")]),
    (
        "a flag for no part",
        [((*FLAG, "part"), "sole"), ((*FLAG, "replaced_over"), 0.5)],
    ),
    ("a flag for no clue", [((*FLAG, "clue"), "smell")]),
    ("a flag for no option", [((*FLAG, "among"), ["pink"])]),
    ("a flag for a size of a choice", [((*FLAG, "over"), 5)]),
    ("a flag for an option of a size", [(("flags", 2, "when", 0, "among"), ["a"])]),
    ("a flag beyond the range", [(("flags", 2, "when", 0, "over"), 2.5)]),
    (
        "a flag beyond the numbers",
        [((*FLAG, "clue"), "serial"), ((*FLAG, "among"), []), ((*FLAG, "over"), 9001)],
    ),
    ("a flag for a code too short", [(("flags", 1, "when", 0, "among"), ["X"])]),
    (
        "a flag for a code of strange letters",
        [(("flags", 1, "when", 0, "among"), ["X?2!"])],
    ),
)
HEAVY = (
    ("more months than a phone bears", [(("years",), windows(101))]),
    (
        "more steps than a phone bears",
        [
            (("years",), windows(100)),
            *((("clues", 7 + i), {**CLUE, "id": f"c{i}"}) for i in range(10)),
        ],
    ),
    (
        "more parts of whole sets than a phone bears",
        [
            (("parts", 3 + i), {**PART, "id": f"p{i}", "whole_set": 0.1})
            for i in range(11)
        ],
    ),
)
NONE = (("the guide as it is", []),)

CASES: tuple[tuple[str, Any], ...] = (
    *NONE,
    *FORM,
    *DRAWINGS,
    *NAMES,
    *TABLES,
    *FLAGS,
    *HEAVY,
)
