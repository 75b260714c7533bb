"""The staircase of imports, and order that is declared rather than discovered."""

import ast
import sys
from pathlib import Path

import pytest

import fieldid

ROOT = Path(fieldid.__file__).parent
# Who may import what; each folder may import itself.
STAIRCASE = {
    "errors": (),
    "paths": (),
    "draw": (),
    "engine": (),
    "guides": ("engine", "draw", "errors"),
    "learn": ("engine",),
    "audit": ("engine", "learn", "errors"),
    "census": ("engine", "guides", "errors"),
    "inbox": ("guides", "engine", "errors"),
    "web": ("learn", "guides", "engine", "draw", "errors", "paths"),
    "build": ("web", "guides", "engine", "errors", "paths"),
    "workbench": (
        *("web", "build", "inbox", "census", "audit", "learn", "guides", "engine"),
        *("draw", "errors", "paths"),
    ),
    "commands": (
        *("workbench", "build", "web", "inbox", "census", "audit", "learn", "guides"),
        *("engine", "errors", "paths"),
    ),
    "calls": ("commands", "errors"),
    "cli": ("calls", "errors"),
    "__main__": ("cli",),
    "__init__": (),
}
# The same within the workbench: its application is the top.
WORKBENCH = {
    "__init__": (),
    "place": (),
    "words": (),
    "fields": (),
    "text": ("gate", "fields", "place"),
    "forms": ("text", "fields"),
    "judging": ("forms", "text", "fields", "place", "words"),
    "gate": (),
    "guides": ("judging", "forms", "text", "gate", "fields", "place", "words"),
    "audit": ("place", "words"),
    "census": ("place", "words"),
    "inbox": ("gate", "judging", "place", "words"),
    "phone": (),
    "publishing": ("phone", "place"),
    "giving": ("publishing", "text", "words"),
    "app": (
        *("guides", "audit", "census", "inbox", "publishing", "giving"),
        *("gate", "fields", "phone", "place", "words"),
    ),
}
FILES = sorted(ROOT.rglob("*.py"))
MOST_MODULES = 15
"""In one folder of the workbench, so that a module is found by its folder."""


def room(path: Path, root: Path = ROOT) -> str:
    return path.relative_to(root).parts[0].removesuffix(".py")


def imports(path: Path):
    for node in ast.walk(ast.parse(path.read_text("utf-8"))):
        if isinstance(node, ast.Import):
            yield from (alias.name for alias in node.names)
        elif isinstance(node, ast.ImportFrom):
            assert node.level == 0, f"{path}: imports are absolute"
            yield node.module


@pytest.mark.parametrize("path", FILES, ids=lambda p: str(p.relative_to(ROOT)))
def test_imports_go_down_only(path):
    for name in imports(path):
        first, *rest = name.split(".")
        if first == "fieldid" and rest:
            assert rest[0] in (room(path), *STAIRCASE[room(path)]), name


@pytest.mark.parametrize(
    "path",
    [p for p in FILES if room(p) == "workbench"],
    ids=lambda p: str(p.relative_to(ROOT)),
)
def test_rooms_go_down_only(path):
    here = room(path, ROOT / "workbench")

    for name in imports(path):
        if name.startswith("fieldid.workbench"):
            # Of the workbench itself nothing is taken, and of a room its modules.
            there = name.split(".")[2]
            assert there in (here, *WORKBENCH[here]), name


def test_workbench_folders_stay_small():
    folders = [path.parent for path in FILES if room(path) == "workbench"]

    for folder in sorted(set(folders)):
        assert folders.count(folder) <= MOST_MODULES, folder


@pytest.mark.parametrize(
    "path",
    [p for p in FILES if room(p) in ("errors", "paths", "draw", "engine")],
    ids=lambda p: str(p.relative_to(ROOT)),
)
def test_leaves_need_the_standard_library_alone(path):
    for name in imports(path):
        assert name.split(".")[0] in {*sys.stdlib_module_names, "fieldid"}, name


@pytest.mark.parametrize(
    "path", sorted((ROOT / "engine").glob("*.py")), ids=lambda p: p.name
)
def test_engine_makes_no_sets(path):
    """A set has no order of its own, and the order is part of the answer."""
    for node in ast.walk(ast.parse(path.read_text("utf-8"))):
        assert not isinstance(node, ast.Set | ast.SetComp), ast.unparse(node)
        if isinstance(node, ast.Call) and isinstance(node.func, ast.Name):
            assert node.func.id not in ("set", "frozenset"), ast.unparse(node)


@pytest.mark.parametrize(
    "path", sorted((ROOT / "engine").glob("*.py")), ids=lambda p: p.name
)
def test_engine_knows_no_clock_or_dice(path):
    forbidden = {"random", "time", "datetime", "os", "pathlib", "logging", "functools"}

    assert not forbidden & {name.split(".")[0] for name in imports(path)}
