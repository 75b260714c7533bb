"""A verdict as a person wants to read it in a terminal: plain text, no colours."""

from collections.abc import Iterator, Sequence

from fieldid.engine import Message
from fieldid.engine.find import PartState, Verdict
from fieldid.engine.gain import WORTHWHILE
from fieldid.engine.guide import Guide
from fieldid.engine.range import decades
from fieldid.engine.words import called, capital, percent
from fieldid.web.told import ALWAYS, told_parts

BAR = 30
NEXT = 3


def story(guide: Guide, verdict: Verdict) -> str:
    """The verdict, section by section, with a newline at the end."""
    sections = (
        [guide.title + (" (invented)" if guide.fiction else "")],
        [capital(verdict.say)],
        list(_years(verdict)),
        list(_story(verdict)),
        _titled("Parts", _states(guide, told_parts(verdict))),
        _titled("Members", _members(guide, verdict)),
        _titled("On the whole set", _whole_set(guide, verdict)),
        _titled("The claim", _claim(verdict)),
        _titled("Red flags", _flags(verdict)),
        _titled("What each reading says", (w.say for w in verdict.weights)),
        _titled("What each member says", (m.factor_say for m in verdict.members)),
        _titled("Look at next", _next(verdict)),
        [ALWAYS[0], *guide.cautions],
    )
    return "\n\n".join("\n".join(lines) for lines in sections if lines) + "\n"


def letter(message: Message) -> str:
    """The message to the seller, for a letter and for a text message."""
    return "\n".join(
        [
            "A message to the seller",
            "",
            *_indented(message.long),
            "",
            "The same for a text message",
            "",
            *_indented(message.short),
        ]
    )


def _indented(text: str) -> list[str]:
    return [f"  {line}".rstrip() for line in text.splitlines()]


def _years(verdict: Verdict) -> Iterator[str]:
    """The bar chart: one line a model year, the longest bar for the likeliest; or one
    a decade, where the answer is a range.
    """
    years = [(str(year), p) for year, p in verdict.model_years]
    named = decades(verdict.model_years) if verdict.range else years
    shares = [*named, ("none", verdict.outside)]
    most = max(p for _, p in shares)
    for name, p in shares:
        bar = "#" * round(BAR * p / most)
        yield f"  {name:>5} |{bar:<{BAR}} {percent(p):>10}"


def _story(verdict: Verdict) -> Iterator[str]:
    if verdict.range:
        yield from filter(None, (verdict.range.start_say, verdict.range.stop_say))
    if verdict.runner_up:
        yield f"Runner-up: {verdict.runner_up}."
    if verdict.built_say:
        yield f"{capital(verdict.built_say)}."
    if verdict.set_say:
        yield verdict.set_say


def _titled(title: str, lines: Iterator[str]) -> list[str]:
    found = [f"  {line}" for line in lines]
    return [title, *found] if found else []


def _whole_set(guide: Guide, verdict: Verdict) -> Iterator[str]:
    return _states(guide, verdict.whole_set)


def _states(guide: Guide, states: Sequence[PartState]) -> Iterator[str]:
    names = {part.id: part.name for part in guide.parts}
    width = max(map(len, names.values()))
    for state in states:
        yield f"{names[state.part]:<{width}}  {state.say}"


def _members(guide: Guide, verdict: Verdict) -> Iterator[str]:
    """Each member alone, then what speaks for its being a stray."""
    names = {each.member: called(guide, each.member) for each in verdict.members}
    width = max(map(len, names.values()), default=0)
    for each in verdict.members:
        yield f"{names[each.member]:<{width}}  {each.say}"
        if each.stray_say:
            yield f"{'':<{width}}  {each.stray_say}"


def _claim(verdict: Verdict) -> Iterator[str]:
    if verdict.claim:
        yield verdict.claim.say
        for cited in verdict.claim.cited:
            yield cited.say


def _flags(verdict: Verdict) -> Iterator[str]:
    for flag in verdict.flags:
        yield flag.say
        if flag.ask:
            yield f'  Ask: "{flag.ask}"'


def _next(verdict: Verdict) -> Iterator[str]:
    if verdict.exhausted:
        yield verdict.exhausted
        return
    for advice in verdict.next[:NEXT]:
        if advice.bits >= WORTHWHILE:
            yield f"{advice.what.removeprefix('the ')}: {advice.say}"
