"""Practice rounds on the phone, what they tell held against the Python engine."""

import re
from collections.abc import Callable
from dataclasses import replace
from pathlib import Path

from playwright.sync_api import Locator, Page, expect

from fieldid.draw.letters import WORN
from fieldid.engine import prepare
from fieldid.engine.find import Item
from fieldid.engine.lot import among, lots
from fieldid.engine.one import weigh
from fieldid.engine.specimen import specimen
from fieldid.engine.words import figure, percent
from fieldid.guides.load import load
from finds import FULL_DISK, SETTING
from stamped import spelled
from steps import go, open_kept, until

GUIDE = load(Path(__file__).parents[2] / "rules" / "wrackham-teale-dotterel.toml")
TABLES = prepare(GUIDE)
YEARS = [year.year for year in GUIDE.years]
KEPT = f"practice/{GUIDE.id}"
HERE = f"#practice/{GUIDE.id}"
# A number by lot that draws a 4 iron, on which these looks leave three years open.
DOUBTFUL, NUMBER = 134586765, "4"
LOOKS = ("collar-rings", "toe-outline", "sole-numerals", "club-length")
BY_LOT = f"crypto.getRandomValues = (at) => at.fill({DOUBTFUL})"


def screen(page: Page) -> Locator:
    return page.locator("[data-screen=practice]")


def button(page: Page, name: str) -> Locator:
    return screen(page).get_by_role("button", name=name, exact=True)


def setting(page: Page, key: str = KEPT):
    return page.evaluate(SETTING, [key, None])


def expect_practice(page: Page, wanted: Callable[[dict], bool]) -> dict:
    """The setting, once it is as wanted: what is shown is kept a little later."""
    return until(page, lambda: (kept := setting(page)) and wanted(kept) and kept)


def looks(count: int) -> Callable[[dict], bool]:
    return lambda kept: len((kept["begun"] or {}).get("looks", ())) == count


def opened(page: Page, url: str) -> None:
    """Practice with the guide, from its card."""
    open_kept(page, url)
    card = page.locator(f"[data-guide-card={GUIDE.id}]")
    card.get_by_role("link", name="Practise").click()
    expect(screen(page).locator("[data-heading]")).to_be_focused()


def begun(page: Page, url: str) -> None:
    opened(page, url)
    button(page, "Begin a round").click()
    expect(screen(page)).to_contain_text("60 seconds left")


def look(page: Page, clue: str) -> None:
    screen(page).locator(f"button[data-clue={clue}]").click()
    expect(seen(page, clue)).to_be_focused()


def seen(page: Page, clue: str) -> Locator:
    return screen(page).locator(f"[data-seen={clue}]")


def answer(page: Page, year: int, sure: int) -> None:
    screen(page).get_by_role("radio", name=str(year)).check()
    screen(page).get_by_role("radio", name=f"{sure} %").check()
    button(page, "That is my answer").click()
    expect(button(page, "Next round")).to_be_visible()


def exact(kept: dict) -> dict[int, float]:
    """What Python makes of a round's looks: its specimen, and each year's share."""
    draw = lots(kept["seed"])
    draw()
    usual = GUIDE.members.usual
    member = usual[among(draw, len(usual))]
    drawn = specimen(TABLES, draw, y=YEARS.index(kept["year"]), member=member)
    read = dict(drawn.readings)
    looks = tuple((clue, read[clue]) for clue in kept["looks"])
    prior = [0.0] * len(TABLES.prior)
    for start, stop in TABLES.stretches:
        prior[start:stop] = [1 / len(YEARS) / (stop - start)] * (stop - start)
    even = replace(TABLES, prior=tuple(prior))
    posterior = weigh(even, Item(looks, member=member))
    return dict(zip(YEARS, posterior.years, strict=True))


def rounds(count: int) -> list[dict]:
    """Rounds as they are kept, half of them right."""
    return [
        {
            "seed": i,
            "year": YEARS[i % 12],
            "said": YEARS[i % 12] if i % 2 else 1957 + (i % 12 == 3),
            "sure": (0.35, 0.8)[i % 4 > 1],
            "years": 12,
        }
        for i in range(count)
    ]


def prepared(page: Page, url: str, kept: object) -> None:
    """Practice with something that is kept already."""
    open_kept(page, url)
    go(page, "#finds")
    page.evaluate(SETTING, [KEPT, kept])
    go(page, HERE)


def test_whole_round_by_taps(standing, visit):
    """What the looks say is what Python says of the same specimen."""
    page = visit()
    page.add_init_script(BY_LOT)
    begun(page, standing.url)
    expect(screen(page)).to_contain_text("An invented 4 iron")
    for clue in LOOKS:
        look(page, clue)
    expect(screen(page)).to_contain_text("10 seconds left")
    expect(screen(page).locator("button[data-clue=sole-width]")).to_be_disabled()
    button(page, "That is my answer").click()
    expect(screen(page).get_by_role("alert")).to_have_text("Choose a year first.")
    kept = expect_practice(page, looks(len(LOOKS)))["begun"]
    shares = exact(kept)
    said = max(YEARS, key=lambda year: shares[year])
    assert shares[said] < 0.6
    answer(page, said, 65)

    year = kept["year"]
    told = screen(page)
    replaced = "Replaced, and lit in the drawing: the grip."
    expect(told).to_contain_text(replaced)
    share = percent(shares[year]).replace(" %", "\u00a0%")
    expect(told).to_contain_text(f"It was {year}: {share}.")
    ribbon = told.get_by_role("img", name=re.compile("^Year ribbon"))
    for each, share in shares.items():
        expect(ribbon).to_have_attribute(
            "aria-label", re.compile(rf"\b{each} {re.escape(percent(share))}")
        )
    score = figure(0.35**2 + 11 * (0.35 / 11) ** 2)
    expect(told.get_by_role("heading", level=1)).to_have_text(f"{said}: right")
    expect(told).to_contain_text(f"You said 65\u00a0%, which scores {score}")
    expect(told.locator("ol > li")).to_have_count(len(LOOKS))
    for i, row in enumerate(told.locator("ol > li").all()):
        share = exact({**kept, "looks": kept["looks"][: i + 1]})[year]
        expect(row).to_contain_text(percent(share).replace(" ", "\u00a0"))
    expect(told).not_to_contain_text("comes again")
    expect_practice(page, lambda kept: len(kept["rounds"]) == 1 and not kept["begun"])
    button(page, "Next round").click()
    expect(told).to_contain_text("60 seconds left")
    told.get_by_role("link", name="All guides").click()
    expect(page.get_by_role("heading", name="Which year is it?")).to_be_visible()


def test_whole_round_by_keys(standing, visit):
    """Each look's name is told, and no name gives the year away."""
    page = visit()
    opened(page, standing.url)
    press_to(page, "Begin a round")
    page.keyboard.press("Enter")
    expect(screen(page).locator("[data-heading]")).to_be_focused()
    for name, clue in (("Face scoring", "face-scoring"), ("Grip cap", "grip-cap")):
        press_to(page, name)
        page.keyboard.press("Enter")
        expect(seen(page, clue)).to_be_focused()
        spoken = seen(page, clue).get_attribute("aria-label")
        assert re.match(rf"{name}: [a-z]", spoken), spoken
        assert not re.search(r"19\d\d", spoken)
    press_to(page, "1954")
    for _ in range(3):
        page.keyboard.press("ArrowRight")
    press_to(page, "10")
    page.keyboard.press("ArrowRight")
    page.keyboard.press("Enter")

    expect(screen(page).locator("[data-heading]")).to_be_focused()
    expect(screen(page)).to_contain_text(re.compile("1957: right|not 1957"))
    expect(screen(page)).to_contain_text("You said 20\u00a0%")


def press_to(page: Page, name: str) -> None:
    """Tabs on until the control has the focus whose name or value begins so."""
    held = """() => {
      const at = document.activeElement;
      return at.type === "radio" ? at.value : at.textContent;
    }"""
    for _ in range(60):
        page.keyboard.press("Tab")
        if page.evaluate(held).startswith(name):
            return
    raise AssertionError(f"no Tab leads to {name}")


def test_used_up_time_is_told(standing, visit):
    page = visit()
    begun(page, standing.url)
    for clue in ("hosel-code", "catalogue-letters"):
        look(page, clue)
    expect(screen(page)).to_contain_text("5 seconds left")
    expect(screen(page)).not_to_contain_text("now say the year")
    look(page, "toe-outline")

    expect(screen(page)).to_contain_text("1 second left")
    expect(screen(page)).to_contain_text("No look fits into what is left")
    expect(screen(page).locator("button[data-clue]:enabled")).to_have_count(0)


def test_round_survives_a_reload(standing, visit):
    page = visit()
    begun(page, standing.url)
    look(page, "collar-rings")
    look(page, "sole-numerals")
    expect_practice(page, looks(2))
    before = seen(page, "collar-rings").inner_html()
    page.reload()

    expect(screen(page)).to_contain_text("49 seconds left")
    assert seen(page, "collar-rings").inner_html() == before
    look(page, "face-scoring")
    expect(screen(page)).to_contain_text("45 seconds left")


def test_answer_survives_a_reload(standing, visit):
    """What is half chosen, and later what the round taught."""
    page = visit()
    begun(page, standing.url)
    look(page, "collar-rings")
    screen(page).get_by_role("radio", name="1958").check()
    screen(page).get_by_role("radio", name="35 %").check()
    expect_practice(page, lambda kept: kept["begun"]["sure"] == 0.35)
    page.reload()
    expect(screen(page).get_by_role("radio", name="1958")).to_be_checked()
    expect(screen(page).get_by_role("radio", name="35 %")).to_be_checked()

    button(page, "That is my answer").click()
    expect(button(page, "Next round")).to_be_visible()
    expect_practice(page, lambda kept: kept["answered"] is not None)
    taught = screen(page).inner_text()
    page.reload()
    expect(button(page, "Next round")).to_be_visible()
    assert screen(page).inner_text() == taught
    button(page, "Next round").click()
    expect_practice(page, lambda kept: kept["begun"] and kept["answered"] is None)


def test_drawings_are_of_this_object(standing, visit):
    """Its own number, and no code but where the code is read."""
    page = visit()
    page.add_init_script(BY_LOT)
    begun(page, standing.url)
    look(page, "sole-numerals")
    assert spelled(seen(page, "sole-numerals").inner_html()) == [NUMBER]
    expect(screen(page).locator(".drawing__sample").first).to_be_hidden()
    look(page, "hosel-setting")
    stamped = "".join(spelled(seen(page, "hosel-setting").inner_html()))
    assert set(stamped) - {" "} == {WORN}


def test_twenty_rounds_show_the_picture(standing, visit):
    page = visit((320, 640))
    prepared(page, standing.url, {"format": 1, "rounds": rounds(19), "begun": None})
    expect(screen(page)).to_contain_text("After one more round (20 in all)")
    expect(screen(page).locator("table")).to_have_count(0)
    page.evaluate(SETTING, [KEPT, {"format": 1, "rounds": rounds(20), "begun": None}])
    page.reload()

    expect(screen(page)).to_contain_text("After 20 rounds")
    expect(screen(page)).to_contain_text("were right in 10 of 20 rounds, 50\u00a0%")
    expect(screen(page).locator("svg .practice__dot")).to_have_count(2)
    row = screen(page).locator("tbody tr").first
    expect(row).to_contain_text("35\u00a0%5 of 10 (50\u00a0%)")
    assert page.evaluate("document.documentElement.scrollWidth") <= 320


def test_unreadable_practice_is_set_aside(standing, visit):
    page = visit()
    prepared(page, standing.url, {"format": 1, "rounds": "torn"})

    expect(screen(page).get_by_role("status")).to_contain_text("cannot be read")
    assert setting(page) == {"format": 1, "rounds": "torn"}
    button(page, "Begin a round").click()
    expect_practice(page, lambda kept: "begun" in kept)
    assert setting(page, f"unread-{KEPT}") == [{"format": 1, "rounds": "torn"}]


def test_round_of_an_older_guide_is_dropped(standing, visit):
    page = visit()
    old = {"seed": 5, "year": 1957, "looks": ["collar-rings"], "stamp": "older"}
    prepared(page, standing.url, {"format": 1, "rounds": rounds(2), "begun": old})

    expect(screen(page).get_by_role("status")).to_contain_text("guide was updated")
    expect(screen(page)).to_contain_text("After 2 rounds")
    button(page, "Begin a round").click()
    expect(screen(page)).to_contain_text("60 seconds left")


def test_full_disk_is_told_and_practice_goes_on(standing, visit):
    """What could not be kept is still there after practice with another guide."""
    page = visit()
    opened(page, standing.url)
    page.evaluate(FULL_DISK)
    button(page, "Begin a round").click()
    expect(screen(page).get_by_role("status").last).to_contain_text("full")
    look(page, "collar-rings")
    answer(page, 1957, 50)

    expect(screen(page)).to_contain_text("After 1 round")
    button(page, "Next round").click()
    answer(page, 1957, 50)
    expect(screen(page)).to_contain_text("After 2 rounds")
    go(page, "#practice/oxmere-grebe")
    expect(button(page, "Begin a round")).to_be_visible()
    go(page, HERE)
    expect(screen(page)).to_contain_text("After 2 rounds")


def test_two_pages_count_each_round_once(standing, visit):
    page = visit()
    begun(page, standing.url)
    look(page, "collar-rings")
    expect_practice(page, looks(1))
    other = page.context.new_page()
    other.goto(f"{standing.url}{HERE}")
    expect(seen(other, "collar-rings")).to_be_visible()
    answer(other, 1957, 50)
    expect_practice(other, lambda kept: len(kept["rounds"]) == 1)
    button(other, "Next round").click()
    expect_practice(other, lambda kept: kept["begun"] is not None)
    answer(page, 1958, 90)

    expect(screen(page).get_by_role("status")).to_contain_text("Another page answered")
    kept = setting(page)
    assert [(each["said"], each["sure"]) for each in kept["rounds"]] == [(1957, 0.5)]
    assert kept["begun"] is not None


def test_practice_works_without_signal(server, visit):
    """Its script is run only when it is asked for, and lies on the phone by then."""
    page = visit()
    open_kept(page, server.url)
    server.stop()
    go(page, HERE)
    button(page, "Begin a round").click()
    look(page, "collar-rings")
    answer(page, 1957, 50)

    expect(screen(page)).to_contain_text("After 1 round")


def test_guide_of_ranges_is_not_practised(standing, visit):
    page = visit()
    open_kept(page, standing.url)
    expect(page.get_by_role("link", name="Practise")).to_have_count(3)
    go(page, "#practice/dated-marks")
    expect(screen(page)).to_contain_text("a range of years")
    go(page, "#practice/no-such-guide")
    expect(screen(page)).to_contain_text("no such guide")
