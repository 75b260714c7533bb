"""The same journey in WebKitGTK, the engine that phones with an apple on them use.

Its automation keeps nothing between sessions, so the app is reloaded rather than the
browser restarted; the server is really stopped all the same.
"""

import os
import re
import subprocess
import time

import pytest
from selenium.webdriver import WebKitGTK, WebKitGTKOptions
from selenium.webdriver.common.by import By
from selenium.webdriver.support.wait import WebDriverWait
from selenium.webdriver.webkitgtk.service import Service

from serving import TRIED

START = f"[data-guide-card={TRIED}] [data-act=start]"
DRIVER = "/usr/bin/WebKitWebDriver"
BROWSER = "/usr/lib/x86_64-linux-gnu/webkit2gtk-4.1/MiniBrowser"


@pytest.fixture
def display():
    """A screen that nobody sees; the number is the server's own choice."""
    read, write = os.pipe()
    screen = subprocess.Popen(
        ["Xvfb", "-displayfd", str(write), "-screen", "0", "800x900x24"],
        pass_fds=[write],
        stderr=subprocess.DEVNULL,
    )
    os.close(write)
    with os.fdopen(read) as told:
        number = told.readline().strip()
    yield f":{number}"
    screen.terminate()
    screen.wait()


@pytest.fixture
def webkit(display):
    """A WebKitGTK window. As root, WebKit's own sandbox has to be off."""
    options = WebKitGTKOptions()
    options.binary_location = BROWSER
    options.add_argument("--automation")
    environment = {
        **os.environ,
        "DISPLAY": display,
        "WEBKIT_DISABLE_SANDBOX_THIS_IS_DANGEROUS": "1",
    }
    driver = WebKitGTK(options, Service(DRIVER, env=environment))
    driver.set_window_size(390, 844)
    yield driver
    driver.quit()


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


def test_verdict_is_reached_without_signal_in_webkit(server, webkit):
    webkit.get(server.url)
    wait(
        webkit,
        lambda: (
            "ready for no signal"
            in webkit.find_element(By.CSS_SELECTOR, "[data-ready]").text.lower()
        ),
    )
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
    webkit.get(standing.url)
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
