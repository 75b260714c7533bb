"""A message to the seller: the questions that are open and the photos still missing.

Polite and neutral: it asks, and says nothing of what an answer may mean.
"""

from collections.abc import Sequence
from dataclasses import dataclass, replace

from fieldid.engine.find import Find, Item, Next, Verdict
from fieldid.engine.gain import WORTHWHILE
from fieldid.engine.judge import judge
from fieldid.engine.members import several, whose
from fieldid.engine.prepare import Tables
from fieldid.engine.saying import is_read
from fieldid.engine.special import round9
from fieldid.engine.words import called, listed

MOST_PHOTOS = 5
SHORT = 320
"""Characters of a short message."""
LONG_NAME = 80
"""What is called by more characters is not named in a short message."""
ANYTHING = "What can you tell me about where it comes from?"


@dataclass(frozen=True, slots=True)
class Message:
    """What to send, as a letter and as a text message."""

    long: str
    short: str


@dataclass(frozen=True, slots=True)
class Photo:
    """A photo to ask for: what it is to show, in the guide's words and in few."""

    show: str
    brief: str


def message(tables: Tables, find: Find, verdict: Verdict) -> Message:
    """What to ask the seller after the verdict on a find."""
    asks = list(dict.fromkeys(flag.ask for flag in verdict.flags if flag.ask))
    wanted = photos(tables, find)
    if not asks and not wanted:
        asks = [ANYTHING]
    about = _about(tables, find.items)
    return Message(
        _long(about, asks, wanted, _unseen(tables, find.items)),
        _short(about, asks, wanted),
    )


def photos(tables: Tables, find: Find) -> list[Photo]:
    """The photos that would tell most, the best first: of each clue that has a photo
    and was not read, or could not be told from what there is.
    """
    items = tuple(
        replace(item, readings=tuple(r for r in item.readings if r[1] is not None))
        for item in find.items
    )
    bare = replace(find, items=items)
    groups: dict[str, list[Next]] = {}
    for each in judge(tables, bare, photos=True).next:
        if round9(each.bits) >= WORTHWHILE:
            photo = tables.guide.clues[tables.places[each.clue]].photo
            groups.setdefault(photo, []).append(each)
    best = sorted(
        groups.items(), key=lambda group: -max(round9(each.bits) for each in group[1])
    )
    return [_photo(tables, items, *group) for group in best[:MOST_PHOTOS]]


def _photo(
    tables: Tables, items: Sequence[Item], photo: str, nexts: Sequence[Next]
) -> Photo:
    """One photo for all that it is to show."""
    clues = dict.fromkeys(tables.places[each.clue] for each in nexts)
    brief = listed([f"the {tables.guide.clues[k].name}" for k in sorted(clues)])
    wanted = [each.member for each in nexts]
    members = [str(item.member) for item in items if item.member in wanted]
    if len(items) == 1:
        return Photo(photo, brief)
    owner = whose(tables.guide, items, members)
    return Photo(f"{photo} ({owner})", f"{brief} of {owner}")


def _about(tables: Tables, items: Sequence[Item]) -> str:
    """What is for sale."""
    if len(items) == 1 and items[0].member is not None:
        return f"your {called(tables.guide, items[0].member)}"
    return f"your {tables.guide.kind}"


def _unseen(tables: Tables, items: Sequence[Item]) -> str:
    """The members of which nothing was seen yet, if others were seen."""
    unseen = [str(item.member) for item in items if not is_read([item])]
    return several(tables.guide, unseen) if len(unseen) < len(items) else ""


def _long(about: str, asks: Sequence[str], wanted: Sequence[Photo], unseen: str) -> str:
    paragraphs = ["Hello,", f"I am interested in {about}."]
    if asks:
        paragraphs.append("May I ask you something?")
        paragraphs.append(_listing(asks))
    if wanted:
        more = " The first would help most." if len(wanted) > 1 else ""
        paragraphs.append(f"Could you send me photos that show this?{more}")
        paragraphs.append(_listing([photo.show for photo in wanted]))
    if unseen:
        paragraphs.append(f"May I also see {unseen}?")
    paragraphs.append("Thank you very much, and kind regards")
    return "\n\n".join(paragraphs) + "\n"


def _short(about: str, asks: Sequence[str], wanted: Sequence[Photo]) -> str:
    """As many questions and photos as fit, one of each in turn, photos first."""
    named = about if len(about) <= LONG_NAME else "what you offer"
    shown: list[str] = []
    asked: list[str] = []
    briefs = [photo.brief for photo in wanted]
    for turn in range(max(len(asks), len(briefs))):
        for own, told in ((shown, briefs), (asked, asks)):
            own.extend(told[turn : turn + 1])
            if len(_text(named, asked, shown)) > SHORT:
                own.pop()
    return _text(named, asked, shown)


def _text(about: str, asked: Sequence[str], shown: Sequence[str]) -> str:
    """A text message with these questions and photos."""
    sentences = [f"Hello, I am interested in {about}.", *asked]
    if shown:
        what = "a photo" if len(shown) == 1 else "photos"
        sentences.append(f"Could you send me {what} of {listed(shown)}?")
    return " ".join([*sentences, "Thank you!"])


def _listing(lines: Sequence[str]) -> str:
    return "\n".join(f"- {line}" for line in lines)
