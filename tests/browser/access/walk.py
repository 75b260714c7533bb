"""The walk through all states, with every check held against each on the way."""

import re
from collections.abc import Iterable, Sequence
from dataclasses import dataclass, field

from playwright.sync_api import Browser, BrowserContext, Page

from access.checks import HIGH, LOOKS, LOW, NARROW, WIDE, Look, barriers
from access.hosting import Site
from access.scripts import script
from access.states import State
from access.tabbing import tabbed

EARS = script("ears")
PATIENCE = 20_000
SCREENS = "(all) => all.map((each) => each.dataset.screen)"
KINDS = script("kinds")
LIVE = "'<!doctype html>' + document.documentElement.outerHTML"


@dataclass
class Walked:
    """What a walk has met: by state, and what the browser said on the way."""

    found: dict[str, list[str]] = field(default_factory=dict)
    shown: dict[str, list[str]] = field(default_factory=dict)
    pages: dict[str, str] = field(default_factory=dict)
    pieces: set[str] = field(default_factory=set)
    said: list[str] = field(default_factory=list)
    kinds: set[str] = field(default_factory=set)


def phone(browser: Browser) -> BrowserContext:
    """A phone that has never seen the app."""
    size = {"width": WIDE, "height": HIGH}
    context = browser.new_context(viewport=size, has_touch=True)
    context.set_default_timeout(PATIENCE)
    return context


def opened(context: BrowserContext, said: list[str]) -> Page:
    """A page that is listened to from its start: errors and refusals go to `said`."""
    page = context.new_page()
    page.add_init_script(EARS)
    page.on("console", lambda line: line.type == "error" and said.append(line.text))
    page.on("pageerror", lambda error: said.append(str(error)))
    return page


def walk(context: BrowserContext, site: Site, states: Iterable[State]) -> Walked:
    """One way through the states, each of them checked."""
    walked = Walked()
    page = opened(context, walked.said)
    for state in states:
        state.way(page, site)
        name = str(state)
        walked.shown[name] = page.locator("[data-screen]:visible").evaluate_all(SCREENS)
        walked.pieces |= {*page.evaluate("[...window.pieces ?? []]")}
        walked.pages[name] = page.evaluate(LIVE)
        walked.found[name] = held(page, walked)
    page.close()
    return walked


def held(page: Page, walked: Walked) -> list[str]:
    """The barriers of a state. Other looks than the plain one are looked at where
    something is drawn that none before has shown, since they change colours and sizes.
    """
    kinds = {*page.evaluate(KINDS)}
    looks = LOOKS if kinds - walked.kinds else LOOKS[:1]
    walked.kinds |= kinds
    return barred(page, looks)


def barred(page: Page, looks: Sequence[Look]) -> list[str]:
    """The barriers in these looks, and those of the Tab key in the smallest window."""
    found = barriers(page, tuple(looks))
    page.set_viewport_size({"width": NARROW, "height": LOW})
    found += [f"by keys: {each}" for each in tabbed(page)]
    page.set_viewport_size({"width": WIDE, "height": HIGH})
    return [re.sub(r"\s+", " ", each) for each in found]
