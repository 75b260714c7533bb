"""Debian's Firefox, driven by Playwright like any other browser, over WebDriver BiDi.

Playwright speaks to a newer Firefox than Debian's. So it is given this file as the
browser: run as a program, it starts Firefox and stands between the two. It answers the
one command that Firefox does not know, and names downloads as Playwright wants them.
"""

import functools
import json
import re
import shlex
import subprocess
import sys
import threading
from pathlib import Path
from typing import Any

import trio
from trio_websocket import (
    ConnectionClosed,
    WebSocketConnection,
    open_websocket_url,
    serve_websocket,
)

from installed import installed

FIREFOX = "/usr/bin/firefox-esr"
UNKNOWN = "emulation.setMediaFeaturesOverride"
DOWNLOADS = ("browsingContext.downloadWillBegin", "browsingContext.downloadEnd")
SAYING = "WebDriver BiDi listening on "
MOST = 2**28
"""Bytes of one message; a photo may be in it."""

PREFS = {
    "app.normandy.enabled": False,
    "app.update.auto": False,
    "browser.aboutwelcome.enabled": False,
    "browser.sessionstore.resume_from_crash": False,
    "browser.shell.checkDefaultBrowser": False,
    "datareporting.policy.dataSubmissionEnabled": False,
    "network.captive-portal-service.enabled": False,
    "network.connectivity-service.enabled": False,
    "services.settings.server": "data:,#remote-settings-dummy/v1",
    # One that was killed now and then would ask whether to start without its profile.
    "toolkit.startup.max_resumed_crashes": -1,
    "toolkit.telemetry.enabled": False,
}
"""Nothing of its own that would disturb a test or ask the network for something."""


def profile(folder: Path) -> Path:
    """A folder that a Firefox keeps everything in, quiet from the start."""
    folder.mkdir(exist_ok=True)
    lines = [f"user_pref({json.dumps(k)}, {json.dumps(v)});" for k, v in PREFS.items()]
    (folder / "user.js").write_text("\n".join(lines) + "\n")
    return folder


def program(folder: Path) -> Path:
    """This file as a program, as Playwright takes a browser."""
    installed(FIREFOX)
    made = folder / "firefox"
    called = shlex.join([sys.executable, str(Path(__file__).resolve())])
    made.write_text(f'#!/bin/sh\nexec {called} "$@"\n')
    made.chmod(0o755)
    return made


def answered(message: str) -> str | None:
    """The answer to a command that Firefox does not know; none to any other."""
    command = json.loads(message)
    if command.get("method") != UNKNOWN:
        return None
    return json.dumps({"type": "success", "id": command["id"], "result": {}})


def named(message: str) -> str:
    """The message; a download in it goes by its address, for it has no other name."""
    if not any(name in message for name in DOWNLOADS):
        return message
    told: dict[str, Any] = json.loads(message)
    if told.get("method") in DOWNLOADS:
        told["params"].setdefault("download", told["params"]["url"])
    return json.dumps(told)


async def between(here: WebSocketConnection, there: WebSocketConnection) -> None:
    """Hands on what Playwright and Firefox say, until one of them has gone."""

    async def up() -> None:
        while True:
            message = await here.get_message()
            answer = answered(message)
            await (here.send_message(answer) if answer else there.send_message(message))

    async def down() -> None:
        while True:
            await here.send_message(named(await there.get_message()))

    async def until_closed(way) -> None:
        try:
            await way()
        except ConnectionClosed:
            both.cancel_scope.cancel()

    async with trio.open_nursery() as both:
        both.start_soon(until_closed, up)
        both.start_soon(until_closed, down)


def started(arguments: list[str]) -> tuple[subprocess.Popen[str], str]:
    """A running Firefox, and the address where it listens."""
    firefox = subprocess.Popen(
        [FIREFOX, *arguments],
        stdout=subprocess.DEVNULL,
        stderr=subprocess.PIPE,
        text=True,
    )
    for line in firefox.stderr:
        found = re.search(rf"{SAYING}(ws://\S+)", line)
        if found:
            # What it goes on to say nobody reads, and it must not wait for that.
            threading.Thread(target=firefox.stderr.read, daemon=True).start()
            return firefox, f"{found[1]}/session"
    raise SystemExit("Firefox did not say where it listens.")


async def main(arguments: list[str]) -> None:
    """Runs Firefox for one Playwright, as long as it lasts."""
    firefox, address = started(arguments)

    async def meet(request) -> None:
        here = await request.accept()
        async with open_websocket_url(address, max_message_size=MOST) as there:
            await between(here, there)

    async with trio.open_nursery() as nursery:
        serve = functools.partial(serve_websocket, max_message_size=MOST)
        server = await nursery.start(serve, meet, "127.0.0.1", 0, None)
        print(f"{SAYING}ws://127.0.0.1:{server.port}", file=sys.stderr, flush=True)
        await trio.to_thread.run_sync(firefox.wait)
        nursery.cancel_scope.cancel()


if __name__ == "__main__":
    trio.run(main, sys.argv[1:])
