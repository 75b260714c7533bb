"""What a screen reader says: one sentence for each answer, and nothing beside it."""

from playwright.sync_api import Page, expect

from access.scripts import script
from steps import choose, go, heading, open_kept, start

LISTEN = script("listen")
SETTLED = """() => new Promise((go) =>
  requestAnimationFrame(() => requestAnimationFrame(() => setTimeout(go, 100))))"""


def heard(page: Page) -> list[list[str]]:
    """What was said since the last time, by whom."""
    page.evaluate(SETTLED)
    said = page.evaluate("window.spoken.splice(0)")
    return said


def listening(page: Page, url: str) -> None:
    open_kept(page, url)
    start(page)
    page.evaluate(LISTEN)


def test_each_answer_is_told_once(page, site):
    """A choice, a code, a measure, what cannot be told, and an answer taken back."""
    listening(page, site.url)
    told = []

    choose(page, "round")
    told.append(heard(page))
    go(page, "#look/hosel-code")
    heard(page)
    for key in "C724":
        page.locator(".keypad__keys").get_by_text(key, exact=True).click()
    typed = heard(page)
    take(page, "Take this code")
    told.append(heard(page))
    go(page, "#look/pad")
    heard(page)
    page.locator("#size").fill("6.1")
    take(page, "Take this measure")
    told.append(heard(page))
    page.get_by_role("button", name="Undo").click()
    told.append(heard(page))

    for said in told:
        assert len(said) == 1, told
        assert said[0][0].startswith("status")
    assert len({said[0][1] for said in told}) >= 3
    # The keys are told by their own place, each once.
    assert len(typed) == 4
    assert {place for place, _ in typed} == {"slot"}


def take(page: Page, name: str) -> None:
    asked = heading(page).inner_text()
    page.get_by_role("button", name=name).click()
    expect(heading(page)).not_to_have_text(asked)


def test_second_sentence_is_heard(page, site):
    """Done on purpose: the same is said again a moment later."""
    listening(page, site.url)
    page.evaluate(
        """() => {
          const place = document.querySelector("[data-status]");
          let again = true;
          new MutationObserver(() => {
            if (again) setTimeout(() => { place.textContent += " " }, 20);
            again = false;
          }).observe(place, { childList: true, characterData: true, subtree: true });
        }"""
    )
    choose(page, "round")

    assert len(heard(page)) == 2
