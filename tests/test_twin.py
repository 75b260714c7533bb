"""The engine in Python and in JavaScript, file by file, name by name.

What the two compute is held together by the vectors; here it is how they read.
"""

import ast
import importlib
import json
import re
import subprocess
from pathlib import Path

import pytest

ROOT = Path(__file__).parents[1]
PYTHON = ROOT / "fieldid" / "engine"
SCRIPT = ROOT / "static" / "phone" / "engine"
MODULES = sorted(path.stem for path in PYTHON.glob("*.py") if path.stem != "__init__")

# What one language has of its own, or lets stand without a name.
SCRIPT_ALONE = {
    "bag": {"_kept"},  # a phone judges again after every tap
    "flags": {"flag", "_raised"},  # in Python the records make themselves
    # In Python guides are read from TOML, and Number is no type of the language.
    "guide": {"unpack", "_frozen", "Counted"},
    "layout": {"_place"},  # arrays are no keys of a Map
    # A phone answers taps between two steps.
    "judge": {"judging"},
    "prepare": {"ended", "preparing"},
    "special": {"sum", "largest", "pairs"},  # sum, max with a key, combinations
    "standing": {"_stood", "_parted", "_strayed"},  # kept from tap to tap
    "value": {"_same", "_alike"},  # lists are equal by themselves in Python
    "words": {"Bounds"},
}

_NAMED = re.compile(
    r"^(?:export )?(?:function\*?|const) (\w+)"
    r"|@typedef \{(?:[^{}]|\{[^{}]*\})*\} (\w+)",
    re.MULTILINE,
)
_DOC = r"/\*\*((?:(?!\*/).)*)\*/\n(?:export )?function\*? %s\("


def python(module: str) -> ast.Module:
    return ast.parse((PYTHON / f"{module}.py").read_text())


def script(module: str) -> str:
    return (SCRIPT / f"{module}.js").read_text()


def named(node: ast.stmt) -> list[str]:
    """The names that a statement of a module gives."""
    if isinstance(node, ast.FunctionDef | ast.ClassDef):
        return [node.name]
    if isinstance(node, ast.Assign):
        return [target.id for target in node.targets if isinstance(target, ast.Name)]
    return []


def constants(module: str) -> dict[str, object]:
    loaded = importlib.import_module(f"fieldid.engine.{module}")
    names = [name for node in python(module).body for name in named(node)]
    return {name: getattr(loaded, name) for name in names if name.isupper()}


def functions(module: str) -> list[ast.FunctionDef]:
    return [node for node in python(module).body if isinstance(node, ast.FunctionDef)]


def records(module: str) -> list[ast.ClassDef]:
    return [node for node in python(module).body if isinstance(node, ast.ClassDef)]


def gist(text: str) -> str:
    """The first paragraph on one line, with what the languages name differently."""
    text = re.sub(r"^ ?\* ?", "", text, flags=re.MULTILINE).split("@")[0].strip()
    return " ".join(text.split("\n\n")[0].split()).replace("None", "null")


def test_files_are_the_same():
    assert sorted(path.stem for path in SCRIPT.glob("*.js")) == sorted(
        ["index", *MODULES]
    )


@pytest.mark.parametrize("module", MODULES)
def test_names_stand_in_the_same_order(module):
    ours = [name for node in python(module).body for name in named(node)]
    theirs = [a or b for a, b in _NAMED.findall(script(module))]
    alone = SCRIPT_ALONE.get(module, set())

    assert alone <= set(theirs)
    assert [name for name in theirs if name not in alone] == ours


@pytest.mark.parametrize("module", MODULES)
def test_constants_are_the_same(module):
    """As Node reads them, not as they are written."""
    ours = constants(module)
    show = "import(process.argv[1]).then((m) => console.log(JSON.stringify(m)))"
    told = subprocess.run(
        ["node", "-e", show, (SCRIPT / f"{module}.js").as_uri()],
        capture_output=True,
        check=True,
        text=True,
    )

    assert json.loads(told.stdout) == json.loads(json.dumps(ours))


@pytest.mark.parametrize("module", MODULES)
def test_records_have_the_same_fields(module):
    for record in records(module):
        annotated = [node for node in record.body if isinstance(node, ast.AnnAssign)]
        ours = [node.target.id for node in annotated]
        typedef = script(module).split(f"@typedef {{object}} {record.name}\n")[1]
        theirs = re.findall(r"@property \{.*\} (\w+)", typedef.split("*/")[0])

        assert [name for name in theirs if name != "name" or name in ours] == ours


@pytest.mark.parametrize("module", MODULES)
def test_functions_say_the_same_of_themselves(module):
    for function in functions(module):
        doc = ast.get_docstring(function)
        if doc is not None:
            theirs = re.search(_DOC % function.name, script(module), re.DOTALL)

            assert theirs, f"{function.name} says nothing"
            assert gist(theirs[1]) == gist(doc)


@pytest.mark.parametrize("module", MODULES)
def test_functions_take_the_same(module):
    """Keywords come as one object in JavaScript, named in the same order."""
    for function in functions(module):
        ours = [a.arg for a in (*function.args.args, *function.args.kwonlyargs)]
        head = re.search(rf"function\*? {function.name}\(([^)]*)\)", script(module))
        theirs = re.findall(r"(\w+)(?= ?[,}\]]| =|$)", head[1]) if head else []

        assert [name for name in theirs if name != "false"] == ours, function.name
