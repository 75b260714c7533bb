"""The same journey in WebKitGTK, the engine that phones with an apple on them use.

Its automation keeps nothing between sessions, so the app is reloaded rather than the
browser restarted; the server is really stopped all the same.
"""

import re
import time

from selenium.webdriver.common.by import By
from selenium.webdriver.support.wait import WebDriverWait

import photofiles
from serving import TRIED

START = f"[data-guide-card={TRIED}] [data-act=start]"


def shown(driver, css):
    return [e for e in driver.find_elements(By.CSS_SELECTOR, css) if e.is_displayed()]


def wait(driver, what, *, seconds=30):
    return WebDriverWait(driver, seconds, poll_frequency=0.1).until(lambda _: what())


def tap(driver, element):
    driver.execute_script("arguments[0].scrollIntoView({block: 'center'})", element)
    element.click()


def question(driver):
    return shown(driver, "[data-screen=look] [data-heading]")


def answer(driver):
    """The first drawn answer, or "can't tell" where something has to be typed."""
    before = question(driver)[0].text
    typed = shown(driver, ".keypad, #size")
    tap(driver, shown(driver, "label.answer")[-2 if typed else 0])
    wait(driver, lambda: question(driver) and question(driver)[0].text != before)


def home(driver, url):
    """Opens Home and waits until it is still: what it says on top moves the cards, and
    the driver taps where a card was.
    """
    driver.get(url)
    badge = driver.find_element(By.CSS_SELECTOR, "[data-ready]")
    wait(driver, lambda: "ready for no signal" in badge.text.lower())


def test_verdict_is_reached_without_signal_in_webkit(server, webkit):
    home(webkit, server.url)
    server.stop()

    webkit.refresh()
    tap(webkit, wait(webkit, lambda: shown(webkit, START))[0])
    wait(webkit, lambda: question(webkit))
    for _ in range(2):
        answer(webkit)
    middle, lead = question(webkit)[0].text, shown(webkit, "[data-status]")[0].text
    time.sleep(0.5)
    webkit.refresh()
    wait(webkit, lambda: question(webkit) and question(webkit)[0].text == middle)
    assert shown(webkit, "[data-status]")[0].text == lead

    for _ in range(3):
        answer(webkit)
    webkit.execute_script("location.hash = '#verdict'")
    headline = wait(webkit, lambda: shown(webkit, "[data-screen=verdict] h1"))[0].text
    assert re.search(r"19[56]\d", headline)
    assert re.search(r"\d\s%", headline)


def test_set_is_entered_and_judged_in_webkit(standing, webkit):
    home(webkit, standing.url)
    tap(webkit, wait(webkit, lambda: shown(webkit, START))[0])
    wait(webkit, lambda: question(webkit))
    tap(webkit, shown(webkit, "a[href='#set']")[0])
    tap(webkit, wait(webkit, lambda: shown(webkit, "[data-act=sold]"))[0])
    wait(webkit, lambda: len(shown(webkit, ".tile[aria-pressed=true]")) == 7)
    webkit.execute_script("location.hash = '#look'")
    wait(webkit, lambda: shown(webkit, "[data-row] .row__cell"))
    answer(webkit)
    assert len(shown(webkit, ".row__cell--read")) == 7
    webkit.execute_script("location.hash = '#verdict'")

    rows = wait(webkit, lambda: shown(webkit, ".of-set"))
    assert len(rows) == 7
    assert re.search(r"19[56]\d", rows[0].text)


# What lies in the log, photos by their number of bytes; a Blob would have no such.
LYING = """const done = arguments[arguments.length - 1];
const opening = indexedDB.open("fieldid");
opening.onsuccess = () => {
  const photos = opening.result.transaction("photos").objectStore("photos").getAll();
  photos.onsuccess = () => {
    opening.result.close();
    done(photos.result.map(({ bytes }) => bytes.byteLength));
  };
};"""


def said(driver, css, text):
    """Waits until this is said at the place."""
    wait(driver, lambda: any(text in each.text for each in shown(driver, css)))


def test_find_with_its_photo_is_kept_in_webkit(standing, webkit, tmp_path):
    """Its automation is a private window, where a Blob in the database is an error."""
    photo = tmp_path / "photo.jpg"
    photo.write_bytes(photofiles.camera_photo(6, size=(2400, 1800)))
    home(webkit, standing.url)
    tap(webkit, wait(webkit, lambda: shown(webkit, START))[0])
    wait(webkit, lambda: question(webkit))
    answer(webkit)
    webkit.execute_script("location.hash = '#verdict'")
    tap(webkit, wait(webkit, lambda: shown(webkit, "[data-act=keep]"))[0])
    title = wait(webkit, lambda: shown(webkit, "[data-own=title]"))[0]
    title.send_keys("Iron from the barn")
    tap(webkit, shown(webkit, "[data-own=date]")[0])
    said(webkit, ".entry__said p", "The title is saved.")
    gallery = webkit.find_element(By.CSS_SELECTOR, "[data-slot=from-gallery]")
    # What a file is chosen with must be seen by the driver.
    webkit.execute_script("arguments[0].hidden = false", gallery)
    gallery.send_keys(str(photo))
    said(webkit, ".entry__said p", "The photo is added.")
    [held] = webkit.execute_async_script(LYING)
    webkit.refresh()
    wait(webkit, lambda: shown(webkit, ".shot img"))
    webkit.execute_script("location.hash = '#finds'")
    tap(webkit, wait(webkit, lambda: shown(webkit, "[data-act=make-log]"))[0])

    wait(webkit, lambda: shown(webkit, "[data-act=save-file]"))
    name = shown(webkit, "[data-slot=file] [data-slot=name]")[0].text
    size = int(re.search(r"\.zip, (\d+) kB", name)[1])
    assert shown(webkit, ".kept__title")[0].text == "Iron from the barn"
    assert 10 < held / 1000 < size < held / 1000 + 10
