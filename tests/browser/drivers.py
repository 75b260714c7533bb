"""Ways to drive a browser that look the same to a journey: Playwright's, for Chromium
and Firefox, and Selenium's, for WebKitGTK. What is shown is asked of the page itself,
in one go, since a screen may be drawn anew between two questions.
"""

import time
from collections.abc import Callable
from typing import Any, TypeVar

from playwright.sync_api import Error
from selenium.common.exceptions import WebDriverException
from selenium.webdriver.common.by import By
from selenium.webdriver.common.keys import Keys
from selenium.webdriver.support.select import Select

T = TypeVar("T")

PATIENCE = 60
"""Seconds in which a state must have come."""
PAUSE = 0.05
"""Seconds between two looks at it."""
TEXTS = """(css) => [...document.querySelectorAll(css)]
  .filter((each) => each.checkVisibility({ visibilityProperty: true }))
  .map((each) => each.innerText)"""
SAID = "main h1, [data-ready], [data-banner]"
GO = "(address) => { location.hash = address; }"


class Phone:
    """What a person can do with a phone, and see on it, whatever drives the browser."""

    lost: type[Exception]
    """What the driver throws while a page makes way for another."""
    is_sure_to_save = True
    """Whether the browser ends each transaction with its database."""

    def ask(self, script: str, *given: Any) -> Any:
        """What a function of the page answers, once it has."""
        raise NotImplementedError

    def texts(self, css: str) -> list[str]:
        """What is shown at these places."""
        return self.ask(TEXTS, css)

    def text(self, css: str) -> str:
        """What is shown at the first of them, once one is there."""
        return self.until(lambda: self.texts(css))[0]

    def go(self, address: str) -> None:
        """To a screen of the app by its address, as a link in it would."""
        self.ask(GO, address)

    def until(self, seen: Callable[[], T]) -> T:
        """What is seen as soon as it is anything."""
        end = time.monotonic() + PATIENCE
        while True:
            try:
                found = seen()
            except self.lost:
                if time.monotonic() > end:
                    raise
                found = None
            if found:
                return found
            assert time.monotonic() < end, f"only this has come: {self.texts(SAID)}"
            time.sleep(PAUSE)


class Played(Phone):
    """Chromium or Firefox; `launch` starts one, on a profile that survives."""

    lost = Error

    def __init__(self, launch: Callable[[], Any]) -> None:
        self.launch = launch
        self.page = launch()

    def ask(self, script, *given):
        return self.page.evaluate(script, *given)

    def open(self, url):
        self.page.goto(url)

    def restart(self, url):
        self.page = self.launch()
        self.open(url)

    def reload(self):
        self.page.reload()

    def tap(self, css, words=""):
        self._shown(css).filter(has_text=words).first.click()

    def type(self, css, text):
        """Typed letter by letter, and left as with the keyboard."""
        self._shown(css).press_sequentially(text)
        self._shown(css).press("Tab")

    def choose(self, css, value):
        self._shown(css).select_option(value)

    def _shown(self, css):
        return self.page.locator(css).locator("visible=true")


class Selected(Phone):
    """WebKitGTK. Its automation is a private window that ends with the browser, so it
    is not started again: the app is opened anew.
    """

    lost = WebDriverException
    # On a busy machine it was seen never to end one.
    is_sure_to_save = False

    def __init__(self, driver: Any) -> None:
        self.driver = driver

    def ask(self, script, *given):
        waiting = f"""const given = [...arguments];
          const done = given.pop();
          Promise.resolve(({script})(...given)).then(done);"""
        return self.driver.execute_async_script(waiting, *given)

    def open(self, url):
        self.driver.get(url)

    def restart(self, url):
        # From another page, or only what lies behind the # would change.
        self.driver.get("about:blank")
        self.open(url)

    def reload(self):
        self.driver.refresh()

    def tap(self, css, words=""):
        element = self._shown(css, words)
        self.driver.execute_script(
            "arguments[0].scrollIntoView({ block: 'center' })", element
        )
        element.click()

    def type(self, css, text):
        self._shown(css).send_keys(text, Keys.TAB)

    def hand_over(self, css, file):
        """A file to what files are chosen with."""
        self._shown(css).send_keys(str(file))

    def choose(self, css, value):
        Select(self._shown(css)).select_by_value(value)

    def _shown(self, css, words=""):
        """The first element there that is shown and says this, once it is."""
        return self.until(lambda: self._all_shown(css, words))[0]

    def _all_shown(self, css, words):
        found = self.driver.find_elements(By.CSS_SELECTOR, css)
        return [each for each in found if each.is_displayed() and words in each.text]
