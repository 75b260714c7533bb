"""Makes the README's picture: `python tests/browser/picture.py` writes screens.png.

Four screens of the phone side by side, drawn by the tests' Chromium.
"""

import base64
import sys
import tempfile
from pathlib import Path

from playwright.sync_api import sync_playwright

HERE = Path(__file__).parent
sys.path[:0] = [str(HERE), str(HERE.parent)]

from conftest import CHROMIUM, QUIET
from serving import Server
from steps import arrive, open_kept, start, tap

SCREENS = ("#home", "#look/collar-rings", "#look/hosel-code", "#verdict")
ANSWERS = {
    "toe-outline": "round",
    "sole-numerals": "with small feet",
    "grip-cap": "red with a lantern",
}
SHEET = """<body style="margin:0;display:flex;gap:14px;background:#8a8577;padding:14px">
{}</body>"""


def main() -> None:
    with tempfile.TemporaryDirectory() as folder, sync_playwright() as started:
        server = Server(Path(folder) / "site")
        browser = started.chromium.launch(executable_path=CHROMIUM, args=list(QUIET))
        page = browser.new_page(viewport={"width": 390, "height": 844})
        open_kept(page, server.url)
        start(page)
        for clue, answer in ANSWERS.items():
            page.goto(f"{server.url}#look/{clue}")
            tap(page, answer)
        shots = []
        for screen in SCREENS:
            arrive(page, screen)
            shots.append(page.screenshot())
        sheet = browser.new_page(viewport={"width": 4 * 195 + 5 * 14, "height": 450})
        images = "".join(
            f'<img width="195" src="data:image/png;base64,'
            f'{base64.b64encode(shot).decode()}">'
            for shot in shots
        )
        sheet.set_content(SHEET.format(images))
        sheet.screenshot(path=HERE / "screens.png")
        browser.close()
        server.stop()


if __name__ == "__main__":
    main()
