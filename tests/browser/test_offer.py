"""The offer on the phone, its figures held against the Python engine."""

import re
from dataclasses import replace
from pathlib import Path

from playwright.sync_api import Locator, Page, expect

from faults import BUSY_DISK
from fieldid.engine import Find, prepare
from fieldid.engine.deal import Deal
from fieldid.engine.find import Item
from fieldid.engine.guide import Off
from fieldid.engine.offer import Offer, offer
from fieldid.engine.words import capital, money
from fieldid.guides.load import load
from finds import FULL_DISK, SETTING, begin, entry, keep
from finds import field as entry_field
from steps import add_set, go, open_kept, read, start

GUIDE = load(Path(__file__).parents[2] / "rules" / "wrackham-teale-dotterel.toml")
TABLES = prepare(GUIDE)
PRICES = f"prices/{GUIDE.id}"
# Every year 40 and the sought-after one 120; the rest as the guide has it.
OWN = replace(
    GUIDE.prices,
    source="",
    worth=tuple((y.year, 120.0 if y.year == 1957 else 40.0) for y in GUIDE.years),
)


def screen(page: Page) -> Locator:
    return page.locator("[data-screen=offer]")


def part(page: Page, slot: str) -> Locator:
    return screen(page).locator(f"[data-slot={slot}]")


def box(page: Page, key: str) -> Locator:
    """The field of the deal or of the prices that has this key."""
    return screen(page).locator(f"[data-own='{key}']")


def write(page: Page, key: str, text: str) -> None:
    """Fills in a field, opening the prices where it is one of them, and leaves it."""
    summary = screen(page).get_by_text("My prices", exact=True)
    if "/" in key and not box(page, key).is_visible():
        summary.click()
    box(page, key).fill(text)
    box(page, key).blur()


def opened(page: Page, url: str) -> None:
    """The offer for a find of one reading."""
    open_kept(page, url)
    start(page)
    read(page, "toe-outline", "round")
    go(page, "#offer")
    expect(part(page, "walk")).not_to_be_empty()


def reckoned(*items: Item, prices=OWN, **deal) -> Offer:
    """What Python says of the same find, or of items of one's own."""
    read_off = items or (Item((("toe-outline", "round"),)),)
    return offer(TABLES, Find(GUIDE.id, read_off), prices=prices, deal=Deal(**deal))


def expect_answer(page: Page, wanted: Offer) -> None:
    short, reason = wanted.say.split(": ")
    most = money(wanted.walk, wanted.currency)
    heads = {"buy": "Buy, up to", "walk": short, "offer": short.replace(f" {most}", "")}
    expect(part(page, "advice")).to_have_text(heads[wanted.advice])
    expect(part(page, "walk")).to_have_text(most)
    expect(part(page, "reason")).to_have_text(capital(reason))
    expect(part(page, "range")).to_have_text(wanted.range_say)
    expect(part(page, "note")).to_have_text(wanted.note)


def test_prices_and_deal_answer_as_in_python(standing, visit):
    """First the guide's own; then as typed, and turning with the price asked."""
    page = visit()
    opened(page, standing.url)
    expect_answer(page, reckoned(prices=GUIDE.prices))
    expect(part(page, "note")).to_contain_text("invented prices of 1 June 2025")
    expect(part(page, "looks-say")).to_contain_text("Say what is asked")
    write(page, "worth/all", "40")
    write(page, "worth/1957", "120,00")
    expect_answer(page, reckoned())
    write(page, "margin", "25 %")
    write(page, "costs", "2,5")
    advice = []
    for asked in (20.0, 60.5, 400.0):
        write(page, "asked", str(asked).replace(".", ","))
        wanted = reckoned(asked=asked, margin=25.0, costs=2.5)
        expect_answer(page, wanted)
        expect(part(page, "looks-say")).to_have_text(wanted.looks_say)
        expect(part(page, "perfect")).to_have_text(wanted.perfect_say)
        advice.append(wanted.advice)

    assert advice == ["buy", "offer", "walk"]
    box(page, "condition").select_option("pitted")
    expect_answer(
        page, reckoned(asked=400.0, margin=25.0, costs=2.5, condition="pitted")
    )


def test_best_look_leads_to_its_question(standing, visit):
    page = visit()
    opened(page, standing.url)
    write(page, "hour", "15")
    write(page, "asked", "30")
    best = reckoned(prices=GUIDE.prices, asked=30.0, hour=15.0).looks[0]
    link = screen(page).locator(".nexts__list a").first

    expect(link).to_contain_text(best.say)
    link.click()
    assert page.evaluate("location.hash") == f"#look/{best.clue}"


def test_set_is_answered_whole(standing, visit):
    """One of them a stray. A look leads to its member, which has no offer by itself."""
    page = visit()
    open_kept(page, standing.url)
    start(page)
    add_set(page)
    read(page, "toe-outline", "round")
    read(page, "collar-rings", "red-ivory-red", "7")
    go(page, "#offer")
    write(page, "asked", "500")
    item = (("toe-outline", "round"),)
    odd = (*item, ("collar-rings", "red-ivory-red"))
    items = [Item(odd if m == "7" else item, member=m) for m in GUIDE.members.usual]
    wanted = reckoned(*items, prices=GUIDE.prices, asked=500.0)

    expect_answer(page, wanted)
    first = wanted.looks[0]
    link = screen(page).locator(".nexts__list a").first
    expect(link).to_have_attribute("href", f"#look/{first.clue}/{first.member}")
    go(page, "#verdict")
    expect(page.get_by_role("link", name="What to offer")).to_be_visible()
    go(page, "#verdict/7")
    expect(page.get_by_role("link", name="What to offer")).to_have_count(0)


def test_prices_stay_and_the_asked_price_goes(standing, visit):
    """Over a reload all is there; with another find the price asked is not."""
    page = visit()
    opened(page, standing.url)
    for key, text in {"asked": "28", "margin": "20", "worth/1957": "200"}.items():
        write(page, key, text)
    expect(part(page, "whose")).to_contain_text("Your own prices")
    page.reload()

    expect(box(page, "asked")).to_have_value("28")
    begin(page)
    read(page, "toe-outline", "round")
    go(page, "#offer")
    expect(box(page, "margin")).to_have_value("20")
    expect(box(page, "worth/1957")).to_have_value("200")
    expect(box(page, "asked")).to_have_value("")
    page.reload()
    expect(box(page, "margin")).to_have_value("20")
    expect(box(page, "asked")).to_have_value("")


def test_reload_loses_nothing_that_was_typed(standing, visit):
    """Neither what a busy disk has not taken yet, nor what is still being typed."""
    page = visit()
    opened(page, standing.url)
    page.evaluate(BUSY_DISK)
    write(page, "worth/1957", "200")
    write(page, "margin", "25")
    box(page, "asked").fill("28")
    page.reload()

    expect(box(page, "asked")).to_have_value("28")
    expect(box(page, "margin")).to_have_value("25")
    expect(box(page, "worth/1957")).to_have_value("200")
    expect(part(page, "whose")).to_contain_text("Your own prices")
    expect(part(page, "advice")).to_have_text("Buy, up to")


def test_kept_find_has_the_asked_price(standing, visit):
    """And brings it back when it is opened again."""
    page = visit()
    opened(page, standing.url)
    write(page, "asked", "28,50")
    expect(part(page, "advice")).to_have_text("Buy, up to")
    keep(page)

    expect(entry_field(page, "Price asked")).to_have_value("28.50")
    expect(entry_field(page, "Currency")).to_have_value("EUR")
    begin(page)
    go(page, "#finds")
    page.locator(".kept a").first.click()
    entry(page).get_by_role("button", name="Open it again").click()
    expect(page.locator("[data-screen=verdict] h1")).to_be_visible()
    go(page, "#offer")
    expect(box(page, "asked")).to_have_value("28.50")


def test_answer_comes_while_typing(standing, visit):
    """Beside the field, which keeps its focus, caret and place."""
    page = visit()
    opened(page, standing.url)
    field = box(page, "asked")
    field.focus()
    top = field.bounding_box()["y"]
    field.press_sequentially("48")
    most = money(reckoned(prices=GUIDE.prices).walk, "EUR")
    expect(part(page, "now")).to_have_text(f"Offer up to {most}.")
    page.keyboard.press("ArrowLeft")
    page.keyboard.press("Backspace")
    expect(part(page, "now")).to_have_text("Buy.")

    expect(field).to_be_focused()
    expect(field).to_have_value("8")
    assert field.evaluate("(each) => each.selectionStart") == 0
    assert abs(field.bounding_box()["y"] - top) <= 1
    page.keyboard.press("Tab")
    expect(part(page, "said")).to_be_empty()
    page.reload()
    expect(box(page, "asked")).to_have_value("8")


def test_keyboard_is_enough(standing, visit):
    """What is typed into keeps the focus and its place while the answer changes."""
    page = visit()
    open_kept(page, standing.url)
    start(page)
    read(page, "toe-outline", "round")
    go(page, "#verdict")
    page.get_by_role("link", name="What to offer").focus()
    page.keyboard.press("Enter")
    expect(screen(page).get_by_role("heading", level=1)).to_be_focused()
    # The fields come with the prices, which lie on the disk.
    expect(box(page, "asked")).to_be_visible()
    page.keyboard.press("Tab")
    expect(box(page, "asked")).to_be_focused()
    page.keyboard.type("28,5")
    top = box(page, "asked").bounding_box()["y"]
    page.keyboard.press("Enter")

    expect(part(page, "advice")).to_have_text("Buy, up to")
    expect(box(page, "asked")).to_be_focused()
    assert abs(box(page, "asked").bounding_box()["y"] - top) <= 1


def test_nonsense_in_a_field_ends_the_answer(standing, visit):
    """It is told beside the field and in the answer's place, left or not."""
    page = visit()
    opened(page, standing.url)
    box(page, "asked").press_sequentially("1e99")

    expect(part(page, "working")).to_have_text(
        "The price asked cannot be read: mend it below."
    )
    expect(part(page, "answered")).to_be_hidden()
    expect(part(page, "looking")).to_be_hidden()
    box(page, "asked").blur()
    expect(box(page, "asked")).to_have_attribute("aria-invalid", "true")
    expect(screen(page).get_by_role("alert").first).to_contain_text("in figures")
    expect(part(page, "answered")).to_be_hidden()
    write(page, "asked", "€ 20")
    expect(part(page, "advice")).to_have_text("Buy, up to")
    expect(box(page, "asked")).to_have_value("20")
    expect(box(page, "asked")).not_to_have_attribute("aria-invalid", "true")


def test_reset_lets_go_of_what_cannot_be_read(standing, visit):
    page = visit()
    opened(page, standing.url)
    write(page, "worth/1958", "30")
    write(page, "worth/1957", "dear")
    expect(part(page, "working")).to_contain_text("“1957” among your prices cannot")
    screen(page).get_by_role("button", name="Back to the guide’s prices").click()

    expect(box(page, "worth/1957")).to_have_value("85")
    expect_answer(page, reckoned(prices=GUIDE.prices))


def test_dearer_part_lowers_the_answer(standing, visit):
    page = visit()
    opened(page, standing.url)
    write(page, "right/shaft", "")
    write(page, "part/shaft", "100 %")
    price = next(each for each in GUIDE.prices.parts if each.part == "shaft")
    dear = replace(price, off=Off(share=1.0), put_right=None)
    parts = tuple(dear if each is price else each for each in GUIDE.prices.parts)
    wanted = reckoned(prices=replace(GUIDE.prices, source="", parts=parts))

    expect_answer(page, wanted)
    assert wanted.expected < reckoned(prices=GUIDE.prices).expected


def test_limit_of_a_want_is_held_against_the_price(standing, visit):
    """On the offer and on the verdict."""
    page = visit()
    open_kept(page, standing.url)
    go(page, "#wants")
    page.locator("#want-most").fill("€85")
    page.get_by_role("button", name="Keep this want").click()
    expect(page.locator(".want__say")).to_contain_text("up to 85.00 EUR")
    begin(page)
    read(page, "toe-outline", "round")
    go(page, "#offer")
    write(page, "asked", "89")
    more = "89.00 EUR is asked, 4.00 EUR more than you wanted to pay."
    expect(part(page, "limit")).to_contain_text(more)
    go(page, "#verdict")
    expect(page.locator("[data-screen=verdict] .want__limit")).to_have_text(more)
    go(page, "#offer")
    write(page, "asked", "85")

    expect(part(page, "limit")).to_contain_text("within what you wanted to pay.")


def test_bulk_and_reset_can_be_taken_back(standing, visit):
    page = visit()
    opened(page, standing.url)
    write(page, "worth/1957", "200")
    write(page, "worth/all", "33")
    expect(box(page, "worth/1957")).to_have_value("33")
    screen(page).get_by_role("button", name="Undo the last change").click()
    expect(box(page, "worth/1957")).to_have_value("200")
    screen(page).get_by_role("button", name="Back to the guide’s prices").click()

    expect(box(page, "worth/1957")).to_have_value("85")
    expect_answer(page, reckoned(prices=GUIDE.prices))
    screen(page).get_by_role("button", name="Undo the last change").click()
    expect(box(page, "worth/1957")).to_have_value("200")


def test_unreadable_prices_are_set_aside(standing, visit):
    """They are told, and stay until a price is changed; then beside the new ones."""
    page = visit()
    open_kept(page, standing.url)
    old = {"worth": "torn"}
    page.evaluate(SETTING, [PRICES, old])
    start(page)
    read(page, "toe-outline", "round")
    go(page, "#offer")

    expect(part(page, "unread")).to_contain_text("cannot be read")
    expect_answer(page, reckoned(prices=GUIDE.prices))
    assert page.evaluate(SETTING, [PRICES, None]) == old
    write(page, "worth/1957", "99")
    expect(part(page, "unread")).to_be_empty()
    assert page.evaluate(SETTING, [f"unread-{PRICES}", None]) == [old]
    assert [1957, 99] in page.evaluate(SETTING, [PRICES, None])["worth"]


def test_full_disk_is_told_and_the_offer_goes_on(standing, visit):
    page = visit()
    opened(page, standing.url)
    page.evaluate(FULL_DISK)
    write(page, "worth/all", "40")
    write(page, "worth/1957", "120")

    expect(part(page, "said")).to_contain_text("full")
    expect_answer(page, reckoned())
    go(page, "#verdict")
    go(page, "#offer")
    expect_answer(page, reckoned())


def test_prices_changed_in_two_pages_meet(standing, visit):
    page = visit()
    opened(page, standing.url)
    other = page.context.new_page()
    other.goto(f"{standing.url}#offer")
    write(other, "worth/1957", "200")
    expect(part(other, "whose")).to_contain_text("Your own prices")
    # What was typed is noted until it is on the disk.
    other.wait_for_function(
        "() => !Object.keys(localStorage).some((key) => /^fieldid-typed/.test(key))"
    )
    other.close()
    write(page, "worth/1954", "11")

    expect(box(page, "worth/1957")).to_have_value("200")
    expect(box(page, "worth/1954")).to_have_value("11")


def test_guide_without_prices_asks_for_them(standing, visit):
    """One price for every decade is enough, and no year of it is asked for."""
    page = visit()
    open_kept(page, standing.url)
    card = page.locator("[data-guide-card=dated-marks]")
    card.get_by_role("link", name="Look for marks").click()
    # The guide is fetched before its first screen shows.
    expect(page.locator("[data-screen=places]")).to_be_visible()
    go(page, "#offer")
    expect(part(page, "advice")).to_contain_text("what each model year is worth")
    screen(page).get_by_role("button", name="Say my prices").click()
    expect(box(page, "worth/all")).to_be_focused()
    page.keyboard.type("45")
    page.keyboard.press("Tab")

    expect(part(page, "walk")).to_have_text(re.compile(r"^4\d\.\d\d$"))
    expect(box(page, "worth/1920s")).to_have_value("45")
