"""Applications and bundles of one small guide, made once for all tests."""

import fcntl
import json
import re
from collections.abc import Callable
from functools import cache
from pathlib import Path

from flask import Flask

import templates
from fieldid.build.site import Bundle, bundle
from fieldid.engine.guide import Guide
from fieldid.guides.load import load
from fieldid.web.app import create_app

RULES = Path(__file__).parent / "rules"


@cache
def guide(name: str = "tarn-corncrake") -> Guide:
    """A small guide with choices, measures, codes and set members."""
    return load(RULES / f"{name}.toml")


def app(**settings) -> Flask:
    """The live application, or with `bundle` the one that serves its files."""
    made = create_app(**{"guides": [guide()], "testing": True, **settings})
    return templates.shared(made)


@cache
def built() -> Bundle:
    """The bundle of the small guide."""
    return bundle([guide()])


def once(folder: Path, make: Callable[[Path], None]) -> Path:
    """The folder, made by whichever process of a run asks for it first; the others
    wait for that.
    """
    with folder.with_suffix(".lock").open("w") as lock:
        fcntl.flock(lock, fcntl.LOCK_EX)
        if not folder.exists():
            # One that was cut short is not taken for a whole one.
            part = folder.with_suffix(".part")
            make(part)
            part.rename(folder)
    return folder


def worker(made: Bundle) -> tuple[str, list[dict]]:
    """The two constants of a built worker."""
    text = made.files["sw.js"].decode()
    name = re.search(r'^const BUILD = "(.*)";$', text, re.MULTILINE)
    files = re.search(r"^const FILES = (\[.*?^\]);$", text, re.MULTILINE | re.DOTALL)
    return name[1], json.loads(re.sub(r",\n\]", "\n]", files[1]))
