"""The ways to the states of the app, each from the one before, as a person goes."""

import re

from playwright.sync_api import Locator, Page, expect

import finds as log
import photofiles
import test_guests
import test_offer
import test_practice
import test_sizing
from access.hosting import Site
from camera import Camera
from fieldid.guides import given
from sizingphotos import beside_card
from steps import add_set, go, heading, open_kept, read, start
from test_sets import ODD_ONE, SET_OF_1957

PHOTO = photofiles.camera_photo(6, size=(1200, 900))
BAR = beside_card(15.3, Camera((0.1, -0.08), 190.0, 1200.0))
REPLACED = {
    "toe-outline": "round",
    "collar-rings": "red-ivory-red",
    "shaft-label": "navy-lantern",
}
"""A head of the fifties under a collar of the sixties."""


def on(page: Page, name: str) -> Locator:
    return page.locator(f"[data-screen={name}]")


def first_visit(page: Page, site: Site) -> None:
    open_kept(page, site.url)
    page.get_by_text("About these objects").first.click()
    # Where the browser says so, the app offers to be installed.
    page.evaluate("dispatchEvent(new Event('beforeinstallprompt'))")
    expect(page.locator("[data-install]")).to_be_visible()


def choice(page: Page, site: Site) -> None:
    start(page)


def drawn_choice(page: Page, site: Site) -> None:
    go(page, "#look/collar-rings")
    page.get_by_text("Why this clue now").click()


def photos(page: Page, site: Site) -> None:
    page.get_by_label("I only have photos").check()
    expect(heading(page)).to_contain_text("What does the photo show?")


def code(page: Page, site: Site) -> None:
    page.get_by_label("I only have photos").uncheck()
    go(page, "#look/hosel-code")
    for key in "C7":
        page.locator(".keypad__keys").get_by_text(key, exact=True).click()


def wrong_code(page: Page, site: Site) -> None:
    page.get_by_role("button", name="Take this code").click()
    expect(page.locator(".keypad__wrong")).not_to_be_empty()


def measure(page: Page, site: Site) -> None:
    """What was typed for the code and not taken is told over the page."""
    go(page, "#look/pad")
    page.locator("#size").fill("6.1")
    expect(page.locator(".banner__notice")).to_be_visible()


def wrong_measure(page: Page, site: Site) -> None:
    page.locator(".banner__close").click()
    page.locator("#size").fill("99")
    page.get_by_role("button", name="Take this measure").click()
    expect(page.locator("#size-wrong")).to_be_visible()


def sizing(page: Page, site: Site) -> None:
    go(page, f"#look/{test_sizing.CLUE}")
    page.locator(".banner__close").click()
    page.get_by_role("link", name="Measure it in a photo").click()
    expect(page.get_by_label("What lies beside it")).to_be_visible()


def points_on_photo(page: Page, site: Site) -> None:
    test_sizing.shown(page, BAR.file)


def sized(page: Page, site: Site) -> None:
    # Chosen anew, the photo is brought into sight and its points lie where they began.
    test_sizing.shown(page, BAR.file)
    for place, point in enumerate(test_sizing.points(BAR)):
        test_sizing.drag(page, place, point)
    expect(page.locator(".sizing__size--found")).to_be_visible()


def no_sizing(page: Page, site: Site) -> None:
    go(page, "#sizing/collar-rings")


def asked_from_here(page: Page, site: Site) -> None:
    go(page, "#look")
    page.get_by_label("I can only look from here").check()
    while page.locator("[data-screen=look] label.answer").count():
        before = heading(page).inner_text()
        page.locator("label.answer", has_text="Can’t tell").click()
        expect(page.locator("[data-heading]:visible")).not_to_have_text(before)


def places(page: Page, site: Site) -> None:
    page.get_by_label("I can only look from here").uncheck()
    go(page, "#places")


def claimed(page: Page, site: Site) -> None:
    go(page, "#claim")
    screen = on(page, "claim")
    screen.get_by_label("The seller says it is of").select_option("1957")
    screen.get_by_label("Face scoring").check()


def verdict(page: Page, site: Site) -> None:
    read(page, "toe-outline", "round")
    go(page, "#verdict")
    on(page, "verdict").get_by_text("What does the seller point to?").click()


def flagged(page: Page, site: Site) -> None:
    for clue, option in REPLACED.items():
        read(page, clue, option)
    go(page, "#look/grip-cap")
    page.locator("label.answer", has_text="The grip is gone").click()
    go(page, "#verdict")
    expect(on(page, "verdict")).to_contain_text("Do you still have the grip?")
    for folded in on(page, "verdict").locator("details:not([open]) > summary").all():
        folded.click()


def seller(page: Page, site: Site) -> None:
    go(page, "#seller")


def short_message(page: Page, site: Site) -> None:
    page.get_by_label("Short, for a text message").check()


def offer(page: Page, site: Site) -> None:
    go(page, "#offer")
    expect(test_offer.part(page, "walk")).not_to_be_empty()
    for key, text in {"asked": "28", "hour": "15"}.items():
        test_offer.write(page, key, text)


def wrong_price(page: Page, site: Site) -> None:
    test_offer.write(page, "asked", "dear")
    expect(on(page, "offer").get_by_role("alert").first).to_contain_text("in figures")


def prices(page: Page, site: Site) -> None:
    test_offer.write(page, "asked", "28")
    test_offer.write(page, "worth/1957", "120")


def no_wants(page: Page, site: Site) -> None:
    go(page, "#wants")
    expect(on(page, "wants").locator("#want-most")).to_be_visible()


def wrong_want(page: Page, site: Site) -> None:
    wanting = on(page, "wants")
    wanting.locator("#want-since").select_option("1957")
    wanting.locator("#want-until").select_option("1956")
    wanting.get_by_role("button", name="Keep this want").click()
    expect(wanting.get_by_text("Choose the same year")).to_be_visible()


def wants(page: Page, site: Site) -> None:
    wanting = on(page, "wants")
    wanting.locator("#want-since").select_option("1954")
    wanting.locator("#want-until").select_option("1965")
    wanting.locator("#want-most").fill("25")
    wanting.locator("#want-note").fill("For Tom")
    wanting.get_by_role("button", name="Keep this want").click()
    expect(wanting.locator(".want__say")).to_have_count(1)


def wanted(page: Page, site: Site) -> None:
    go(page, "#verdict")
    expect(on(page, "verdict").locator(".wanted__rows")).to_be_visible()


def no_finds(page: Page, site: Site) -> None:
    go(page, "#finds")
    expect(on(page, "finds")).to_contain_text("No find is kept yet")


def kept(page: Page, site: Site) -> None:
    log.keep(page)


def photographed(page: Page, site: Site) -> None:
    log.add_photos(page, PHOTO)
    expect(log.said(page)).to_have_text("The photo is added.")


def larger(page: Page, site: Site) -> None:
    log.entry(page).locator("[data-act=larger]").click()
    expect(log.entry(page).locator(".larger__close")).to_be_visible()


def refused_field(page: Page, site: Site) -> None:
    log.entry(page).locator(".larger__close").click()
    log.write(page, "Price asked", "forty")
    expect(log.field(page, "Price asked")).to_have_attribute("aria-invalid", "true")


def finds(page: Page, site: Site) -> None:
    log.write(page, "Price asked", "40")
    log.write(page, "Place", "Ellerholm")
    go(page, "#finds")
    expect(log.rows(page)).to_have_count(1)


def exported(page: Page, site: Site) -> None:
    log.finds(page).get_by_role("button", name="File of all finds").click()
    expect(log.finds(page).get_by_role("link", name="Save the file")).to_be_visible()


def refused_file(page: Page, site: Site) -> None:
    log.choose_file(page, "finds.json", b"no finds")
    expect(log.into(page)).not_to_be_empty()


def file_opened(page: Page, site: Site) -> None:
    with page.expect_download() as downloading:
        log.finds(page).get_by_role("link", name="Save the file").click()
    log.choose_file(page, "finds.zip", downloading.value.path().read_bytes())
    expect(log.finds(page).get_by_text("In this file")).to_be_visible()


def no_entry(page: Page, site: Site) -> None:
    go(page, "#entry/none")


def lies_open(page: Page, site: Site) -> None:
    log.begin(page)
    read(page, "toe-outline", "square")
    go(page, "#finds")
    log.rows(page).get_by_role("link").click()
    log.entry(page).get_by_role("button", name="Open it again").click()
    expect(log.entry(page).locator("[data-act=reopen-over]")).to_be_visible()


def judged_again(page: Page, site: Site) -> None:
    log.entry(page).locator("[data-act=reopen-not]").click()
    log.entry(page).get_by_role("button", name="Judge it with today’s guide").click()
    expect(log.entry(page).locator("[data-act=keep-again]")).to_be_visible()


def draft(page: Page, site: Site) -> None:
    log.entry(page).locator("[data-act=leave-again]").click()
    go(page, "#home")
    page.get_by_text("Start a new one instead").click()
    expect(page.get_by_role("link", name="Forget them and start")).to_be_visible()


def which_member(page: Page, site: Site) -> None:
    go(page, "#set")
    expect(page.get_by_role("heading", name="Which one is it?")).to_be_visible()


def members(page: Page, site: Site) -> None:
    log.begin(page)
    add_set(page, "2", "W")
    go(page, "#set")
    page.get_by_text("One was taken for another").click()


def asked_of_all(page: Page, site: Site) -> None:
    read(page, "collar-rings", "navy-gold")
    expect(page.locator(".scope")).to_contain_text("all 9 alike")


def which_differs(page: Page, site: Site) -> None:
    go(page, "#look/collar-rings")
    page.get_by_role("link", name="One differs?").click()
    expect(page.get_by_role("link", name="6 iron")).to_be_visible()


def places_of_set(page: Page, site: Site) -> None:
    read(page, "collar-rings", "red-gold", "6")
    go(page, "#places")


def stray(page: Page, site: Site) -> None:
    for clue, option in list(SET_OF_1957.items())[:5]:
        read(page, clue, option)
    for clue, option in ODD_ONE.items():
        read(page, clue, option, of="6")
    go(page, "#verdict")
    expect(page.locator(".of-set--stray")).to_have_count(1)


def own_verdict(page: Page, site: Site) -> None:
    go(page, "#verdict/6")


def lacking(page: Page, site: Site) -> None:
    go(page, "#set")
    page.locator(".tile[data-member='5']").click()
    go(page, "#verdict")
    on(page, "verdict").locator("[data-act=want-missing]").click()
    expect(on(page, "verdict").locator("[data-slot=lacking-said]")).not_to_be_empty()


def offer_for_set(page: Page, site: Site) -> None:
    go(page, "#offer")
    expect(test_offer.part(page, "walk")).not_to_be_empty()


def marks(page: Page, site: Site) -> None:
    go(page, "#home")
    page.get_by_role("link", name="Look for marks").click()
    expect(on(page, "places").locator("h1")).to_be_visible()


def bracketed(page: Page, site: Site) -> None:
    for clue, option in {"us-address": "zip", "trade-mark": "office"}.items():
        go(page, f"#look/{clue}")
        page.locator(f"label.answer:has(input[value='{option}'])").click()
        # Marks are looked for from a list, which comes again.
        expect(on(page, "places")).to_be_visible()
    go(page, "#verdict")
    expect(on(page, "verdict")).to_contain_text("1963")


def swing(page: Page, site: Site) -> None:
    go(page, "#home")
    card = page.locator("[data-guide-card=golf-club-era]")
    card.get_by_role("link", name="Start looking").click()
    expect(page.get_by_role("heading", name="What can you see on it?")).to_be_visible()
    go(page, "#look/swing-weight")
    page.get_by_text("No swing-weight scale?").click()
    page.get_by_label("The club’s weight", exact=True).fill("425")
    page.get_by_label("The club’s balance point", exact=True).fill("719")
    expect(page.get_by_text("D0.6, give or take 0.7")).to_be_visible()


def practice(page: Page, site: Site) -> None:
    go(page, test_practice.HERE)
    expect(test_practice.button(page, "Begin a round")).to_be_visible()


def practice_round(page: Page, site: Site) -> None:
    test_practice.button(page, "Begin a round").click()
    test_practice.screen(page).locator("button[data-clue=collar-rings]").click()
    expect(test_practice.seen(page, "collar-rings")).to_be_focused()


def unanswered(page: Page, site: Site) -> None:
    test_practice.button(page, "That is my answer").click()
    expect(test_practice.screen(page).get_by_role("alert")).not_to_be_empty()


def practised(page: Page, site: Site) -> None:
    test_practice.answer(page, 1957, 80)


def calibrated(page: Page, site: Site) -> None:
    before = {"rounds": test_practice.rounds(40), "begun": None}
    go(page, "#finds")
    page.evaluate(test_offer.SETTING, [test_practice.KEPT, before])
    go(page, test_practice.HERE)
    expect(test_practice.screen(page).locator("svg").first).to_be_visible()


def unchecked(page: Page, site: Site) -> None:
    go(page, "#check")


def checked(page: Page, site: Site) -> None:
    on(page, "check").locator("button").first.click()
    agreed = re.compile(r"All \d+ examples agree")
    expect(on(page, "check")).to_contain_text(agreed, timeout=60_000)


def guests(page: Page, site: Site) -> None:
    go(page, "#guests")


def refused_guide(page: Page, site: Site) -> None:
    test_guests.choose_file(page, b"no guide")
    expect(test_guests.said(page)).not_to_be_empty()


def offered_guide(page: Page, site: Site) -> None:
    test_guests.choose_file(page, given.written(test_guests.BITTERN))
    expect(test_guests.button(page, "Add it")).to_be_visible()


def added_guide(page: Page, site: Site) -> None:
    test_guests.button(page, "Add it").click()
    expect(test_guests.said(page)).to_contain_text("was added")


def guest_at_home(page: Page, site: Site) -> None:
    go(page, "#home")
    expect(test_guests.card(page)).to_contain_text(test_guests.UNCHECKED)


def number(page: Page, site: Site) -> None:
    test_guests.card(page).get_by_role("link", name="Start looking").click()
    expect(heading(page)).to_be_visible()
    go(page, "#look/serial")
    for key in "04":
        page.locator(f".key[data-key='{key}']").click()


def layouts(page: Page, site: Site) -> None:
    go(page, "#look/date-code")
    page.locator(".key:not([aria-disabled])").first.click()


def missed_photo(page: Page, site: Site) -> None:
    go(page, "#finds")
    log.rows(page).first.get_by_role("link").click()
    with page.expect_file_chooser():
        log.entry(page).get_by_role("button", name="Take a photo").click()
    go(page, "#home")
    page.reload()
    expect(page.locator(".missed")).to_be_visible()


def full(page: Page, site: Site) -> None:
    page.get_by_role("button", name="Understood").click()
    log.begin(page)
    page.evaluate(log.FULL_DISK)
    read(page, "toe-outline", "round")
    expect(page.locator(".banner__notice")).to_be_visible()


def updated(page: Page, site: Site) -> None:
    site.update()
    page.goto(site.url)
    expect(page.get_by_role("button", name="Update now")).to_be_visible()
    expect_open(page)


def up_to_date(page: Page, site: Site) -> None:
    page.get_by_role("button", name="Update now").click()
    expect(page.get_by_role("button", name="Update now")).to_be_hidden()
    open_kept(page, site.url)
    expect_open(page)


def expect_open(page: Page) -> None:
    """Home is drawn to its end, with the marks that were left open on this way."""
    marks = page.locator("[data-guide-card=dated-marks]")
    expect(marks.get_by_text("Left open:")).to_be_visible()
