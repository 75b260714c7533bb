"""The phone's modules as a few scripts: six files to fetch in place of a hundred.

Each module becomes a function, called once, that gives what the module exports; it
stands after all that it imports. So names stay apart and nothing is renamed. Only the
forms of `import` and `export` that our modules use are known; another is refused.

The first script is what Home needs. It asks for the second, which holds what a find
needs, and that for the third, for finds that are kept, and the fourth, for what is
worked out from one: an offer, a match with wants, a size off a photo. The fifth,
practice, is asked for when somebody practises; the sixth, guides from files, by whoever
has some or wants to add or give one. Each takes from those before what is there
already, so that no module runs twice; one that needs nothing of another never asks for
it. What a module exports and no other takes is not given, so that a minifier may drop
it: much is exported for tests alone.

A page that is a file of its own has one script, in which nothing is asked for.

A bundler from elsewhere would bring Node to everyone who builds, or has no wheel for
every machine. Should the app ever need a package from outside, this gives way to one.
"""

import posixpath
import re
from collections.abc import Iterable, Iterator, Mapping, Sequence, Set
from pathlib import Path

from fieldid.errors import BuildError

ENTRY = "phone/app.js"
FINDING = "phone/finding.js"
KEPT = "phone/kept.js"
DEALING = "phone/dealing.js"
PRACTICE = "phone/practice.js"
GUESTS = "phone/guests.js"
SCRIPTS = (ENTRY, FINDING, KEPT, DEALING, PRACTICE, GUESTS)
"""What each script begins from, in the order in which they are asked for."""

_NAMED = r"\{(?P<names>[^}]*)\}"
_LIST = r"\s*\w+(?:\s*,\s*\w+)*,?\s*"
_STATEMENTS = re.compile(
    rf"""^(?:
      import\s+(?:{_NAMED}|\*\s+as\s+(?P<whole>\w+))\s+from\s+"(?P<source>[^"]+)";
    | export\s+\{{(?P<passed>{_LIST})\}}\s+from\s+"(?P<passing>[^"]+)";
    | export\s+(?P<opening>(?:async\s+)?function\*?|const|class)\s+
      (?P<own>\w+|\{{{_LIST}\}})
    | export\s+\{{\s*\}};
    | (?P<unknown>(?:import|export)\b(?!\.).*)
    )""",
    re.MULTILINE | re.VERBOSE,
)


_COMMENT = re.compile(r"/\*.*?\*/", re.DOTALL)
_ASKED = re.compile(r"\bimport\(\s*(?P<source>[^)]*?)\s*\)")
_NEVER = "new Promise(() => {})"
"""In place of a script that is asked for where there is none."""
_NONE: Mapping[str, str] = {}
_ALL = "*"
"""Stands for all that a module exports."""


def script(static: Path, entry: str = ENTRY) -> str:
    """The entry and all that it imports, directly or not, as one module; of the later
    script, what the first has not got.

    A BuildError names what is missing, imported in a circle, or written in a form that
    is not known here.
    """
    if entry not in SCRIPTS:
        raise BuildError(f"{entry} is no script of the app")
    parts = _parts(static, entry)
    own = parts[entry]
    order = list(parts)
    place = order.index(entry)
    needed = _needs(own)
    taken = [_taking(each, parts[each], entry, needed) for each in order[:place]]
    wanted = {path for each in order[place + 1 :] for path in _needs(parts[each])}
    given = [path for path in own if path in wanted]
    wished = _wished(
        {path: text for part in parts.values() for path, text in part.items()}
    )
    bodies = (_wrapped(path, text, wished[path]) for path, text in own.items())
    return "\n".join([*taken, *bodies, _givings(static, entry, given)])


def _parts(static: Path, entry: str) -> dict[str, dict[str, str]]:
    """The modules that each script holds, as they are: those up to the entry, and later
    ones that are there.
    """
    read: dict[str, str] = {}
    parts: dict[str, dict[str, str]] = {}
    for each in SCRIPTS:
        if entry in parts and not (static / each).is_file():
            continue
        earlier = set(read)
        _read(static, each, (), read)
        parts[each] = {p: text for p, text in read.items() if p not in earlier}
    return parts


def _taking(each: str, there: Iterable[str], entry: str, needed: Set[str]) -> str:
    """The line that takes what is needed from an earlier script, if that has any."""
    taken = [path for path in there if path in needed]
    address = posixpath.relpath(each, posixpath.dirname(entry))
    return f'import {_names(taken)} from "./{address}";\n' if taken else ""


def alone(static: Path, entry: str, instead: Mapping[str, str] = _NONE) -> str:
    """The entry and all that it imports as one classic script that asks for nothing.

    `instead` names modules by their paths, and those that stand in for them. A script
    that is asked for never comes, which is how the app takes a slow line.
    """
    read: dict[str, str] = {}
    _read(static, entry, (), read, instead)
    wished = _wished(read, instead)
    bodies = []
    for path, text in read.items():
        if "import.meta" in text:
            raise BuildError(f"{path}: a file of its own has no import.meta")
        bodies.append(_wrapped(path, text, wished[path], instead))
    body = _ASKED.sub(_NEVER, "\n".join(bodies))
    return f"(() => {{\n{body}}})();\n"


def _givings(static: Path, entry: str, wanted: Sequence[str]) -> str:
    """What a script gives: what later scripts want, and what its entry exports."""
    given = ", ".join(_given(static / entry))
    exported = f"export const {{ {given} }} = {_name(entry)};\n" if given else ""
    return f"export {_names(wanted)};\n{exported}" if wanted else exported


def _names(written: Iterable[str]) -> str:
    """The modules' names between braces."""
    return f"{{ {', '.join(map(_name, written))} }}"


def _given(file: Path) -> Iterator[str]:
    """The names that a module makes and exports."""
    for found in _STATEMENTS.finditer(file.read_text("utf-8")):
        if found["own"]:
            yield from _listed(found["own"])


def _read(
    static: Path,
    path: str,
    importing: tuple[str, ...],
    read: dict[str, str],
    instead: Mapping[str, str] = _NONE,
) -> None:
    """Put a module after all that it imports, each once."""
    if path in read:
        return
    if path in importing:
        raise BuildError(f"{' imports '.join((*importing, path))}: a circle")
    file = static / path
    if not file.is_file():
        raise BuildError(f"{importing[-1]} imports {path}, which does not exist")
    text = file.read_text("utf-8")
    _check_asked(path, text)
    for source in _sources(path, text, instead):
        _read(static, source, (*importing, path), read, instead)
    read[path] = text


def _wished(
    read: Mapping[str, str], instead: Mapping[str, str] = _NONE
) -> dict[str, set[str]]:
    """What others take from each module; all of what a script begins from."""
    wished = {path: {_ALL} if path in SCRIPTS else set() for path in read}
    # Modules stand after what they import: so who takes from one came before it here.
    for path, text in reversed(tuple(read.items())):
        for found in _STATEMENTS.finditer(text):
            if found["source"]:
                names = re.findall(r"(\w+)(?:\s+as\s+\w+)?", found["names"] or "")
                source = _path(path, found["source"], instead)
                wished[source].update([_ALL] if found["whole"] else names)
            elif found["passed"]:
                source = _path(path, found["passing"], instead)
                wished[source].update(_listed(found["passed"], wished[path]))
    return wished


def _sources(path: str, text: str, instead: Mapping[str, str] = _NONE) -> Iterator[str]:
    """Paths of the modules that a module takes something from."""
    for found in _STATEMENTS.finditer(text):
        if found["unknown"]:
            raise BuildError(f"{path}: cannot join {found['unknown']!r}")
        if source := found["source"] or found["passing"]:
            yield _path(path, source, instead)


def _needs(read: Mapping[str, str]) -> set[str]:
    """Paths of the modules that any of the modules names."""
    return {source for path, text in read.items() for source in _sources(path, text)}


def _check_asked(path: str, text: str) -> None:
    """What a module asks for while it runs can only be a later script."""
    for found in _ASKED.finditer(_COMMENT.sub("", text)):
        if _path(path, found["source"].strip('"')) not in SCRIPTS[1:]:
            raise BuildError(f"{path}: cannot join {found[0]!r}")


def _wrapped(
    path: str, text: str, wished: Set[str], instead: Mapping[str, str] = _NONE
) -> str:
    """A module as a function that was called, under the name of its path; it gives what
    is wished of it.
    """
    exported: list[str] = []

    def rewritten(found: re.Match[str]) -> str:
        if found["own"]:
            exported.extend(_listed(found["own"], wished))
            return f"{found['opening']} {found['own']}"
        if found["passed"]:
            whole = _name(_path(path, found["passing"], instead))
            passed = _listed(found["passed"], wished)
            exported.extend(f"{name}: {whole}.{name}" for name in passed)
            return ""
        if not found["source"]:
            return ""
        whole = _name(_path(path, found["source"], instead))
        if found["whole"]:
            return f"const {found['whole']} = {whole};"
        taken = found["names"].replace(" as ", ": ").strip()
        return f"const {{ {taken} }} = {whole};"

    body = _STATEMENTS.sub(rewritten, text).strip()
    given = f"return {{ {', '.join(exported)} }};\n" if exported else ""
    return f"const {_name(path)} = (() => {{\n{body}\n{given}}})();\n"


def _listed(names: str, wished: Set[str] = frozenset([_ALL])) -> list[str]:
    """Those of the names that are wished."""
    listed = re.findall(r"\w+", names)
    return [name for name in listed if name in wished or _ALL in wished]


def _name(path: str) -> str:
    """What a module's exports are called in the one script.

    >>> _name("phone/engine/judge.js")
    '$engine_judge'
    """
    return "$" + re.sub(r"\W", "_", path.removeprefix("phone/").removesuffix(".js"))


def _path(importer: str, address: str, instead: Mapping[str, str] = _NONE) -> str:
    """The module that an import means, or the one that stands in for it."""
    named = posixpath.normpath(posixpath.join(posixpath.dirname(importer), address))
    return instead.get(named, named)
