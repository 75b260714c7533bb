"""The phone's modules as one script: one file to fetch in place of fifty.

Each module becomes a function, called once, that gives what the module exports; it
stands after all that it imports. So names stay apart and nothing is renamed. Only the
forms of `import` and `export` that our modules use are known; another is refused.
"""

import posixpath
import re
from collections.abc import Iterator
from pathlib import Path

from fieldid.errors import BuildError

ENTRY = "phone/app.js"

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


def script(static: Path, entry: str = ENTRY) -> str:
    """The entry and all that it imports, directly or not, as one module.

    A BuildError names what is missing, imported in a circle, or written in a form that
    is not known here.
    """
    written: dict[str, str] = {}
    _write(static, entry, (), written)
    return "\n".join(written.values())


def _write(
    static: Path, path: str, importing: tuple[str, ...], written: dict[str, str]
) -> None:
    """Put a module after all that it imports, each once."""
    if path in written:
        return
    if path in importing:
        raise BuildError(f"{' imports '.join((*importing, path))}: a circle")
    file = static / path
    if not file.is_file():
        raise BuildError(f"{importing[-1]} imports {path}, which does not exist")
    text = file.read_text("utf-8")
    for source in _sources(path, text):
        _write(static, source, (*importing, path), written)
    written[path] = _wrapped(path, text)


def _sources(path: str, text: str) -> Iterator[str]:
    """Paths of the modules that a module takes something from."""
    for found in _STATEMENTS.finditer(text):
        if found["unknown"]:
            raise BuildError(f"{path}: cannot join {found['unknown']!r}")
        if source := found["source"] or found["passing"]:
            yield _path(path, source)


def _wrapped(path: str, text: str) -> str:
    """A module as a function that was called, under the name of its path."""
    exported: list[str] = []

    def rewritten(found: re.Match[str]) -> str:
        if found["own"]:
            exported.extend(_listed(found["own"]))
            return f"{found['opening']} {found['own']}"
        if found["passed"]:
            whole = _name(_path(path, found["passing"]))
            exported.extend(
                f"{name}: {whole}.{name}" for name in _listed(found["passed"])
            )
            return ""
        if not found["source"]:
            return ""
        whole = _name(_path(path, found["source"]))
        if found["whole"]:
            return f"const {found['whole']} = {whole};"
        taken = found["names"].replace(" as ", ": ").strip()
        return f"const {{ {taken} }} = {whole};"

    body = _STATEMENTS.sub(rewritten, text).strip()
    given = f"return {{ {', '.join(exported)} }};\n" if exported else ""
    return f"const {_name(path)} = (() => {{\n{body}\n{given}}})();\n"


def _listed(names: str) -> list[str]:
    return re.findall(r"\w+", names)


def _name(path: str) -> str:
    """What a module's exports are called in the one script.

    >>> _name("phone/engine/judge.js")
    '$engine_judge'
    """
    return "$" + re.sub(r"\W", "_", path.removeprefix("phone/").removesuffix(".js"))


def _path(importer: str, address: str) -> str:
    return posixpath.normpath(posixpath.join(posixpath.dirname(importer), address))
