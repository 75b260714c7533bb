import re
import subprocess
from itertools import chain, combinations
from pathlib import Path

import pytest

from fieldid.errors import BuildError
from fieldid.paths import STATIC
from fieldid.web.script import GUESTS, SCRIPTS, alone, script


@pytest.fixture
def joined(tmp_path):
    """The one script of some modules by their paths."""

    def join(modules):
        for path, text in modules.items():
            (tmp_path / path).parent.mkdir(parents=True, exist_ok=True)
            (tmp_path / path).write_text(text)
        return script(tmp_path)

    return join


def run(module: str) -> str:
    """What a module says."""
    command = ["node", "--input-type=module", "--eval", module]
    return subprocess.run(command, check=True, capture_output=True, text=True).stdout


MODULES = {
    "phone/app.js": """
import { add as plus, Sum } from "./engine/sums.js";
import * as texts from "./texts.js";
import {
  late,
  twice,
} from "./late.js";

const add = "a name of its own";
console.log(plus(1, 2), new Sum().of, texts.HELLO, texts.shown(add));
late().then((said) => console.log(said, [...twice("b")].join(), texts.late));
""",
    "phone/engine/sums.js": """
import { HELLO } from "../texts.js";
const own = 1;
export function add(a, b) {
  return own * (a + b);
}
export class Sum {
  of = HELLO;
}
""",
    "phone/texts.js": """
export const HELLO = "hello";
export const { shown } = {
  shown: (text) => `${text}: import { a } from "./gone.js";`,
};
export {};
""",
    "phone/late.js": """
export { late, twice } from "./deep/late.js";
""",
    "phone/deep/late.js": """
export async function late() {
  return "late";
}
export function* twice(each) {
  yield each;
  yield each;
}
""",
}


def test_one_script_does_what_its_modules_do(joined):
    said = run(joined(MODULES))

    assert said.splitlines() == [
        '3 hello hello a name of its own: import { a } from "./gone.js";',
        "late b,b undefined",
    ]


UNTAKEN = {
    "phone/app.js": """
import { kept, passed as given } from "./passing.js";
export const start = 1;
console.log(kept, given);
""",
    "phone/passing.js": """
export { passed, unpassed } from "./last.js";
export const kept = 1;
export const forTests = 3;
""",
    "phone/last.js": """
export const passed = 4;
export const unpassed = 5;
""",
}


def test_module_gives_what_others_take_alone(joined):
    made = joined(UNTAKEN)
    given = re.findall(r"^return \{ (.*) \};$", made, re.M)

    assert given == ["passed", "passed: $last.passed, kept", "start"]
    assert run(made) == "1 4\n"


def test_each_module_stands_there_once(joined):
    assert joined(MODULES).count('const HELLO = "hello"') == 1


def test_no_import_is_left_in_the_first_script():
    """But for the later script, which it asks for while it runs."""
    left = [line for line in script(STATIC).splitlines() if line.startswith("import")]

    assert left == []
    assert script(STATIC).count(' import("./finding.js")') == 1


def test_no_module_is_in_two_scripts():
    made = [
        set(re.findall(r"^const (\$\w+) =", script(STATIC, entry), re.M))
        for entry in SCRIPTS
    ]

    assert all(one.isdisjoint(other) for one, other in combinations(made, 2))
    assert "$device" in made[0]
    assert "$engine_judge" in made[1]
    assert "$kept_finds" in made[2]
    assert "$dealing_offer" in made[3]
    assert "$practice_round" in made[4]
    assert "$guests_fit" in made[5]


def test_scripts_give_what_others_take():
    """Each name is used where it is taken, and taken by somebody where it is given."""
    made = [script(STATIC, entry) for entry in SCRIPTS]
    lines = [re.sub(r"^(im|ex)port \{.*$", "", text, flags=re.M) for text in made]
    taken = [re.findall(r"\$\w+", "".join(_heads("import", text))) for text in made]
    given = [re.findall(r"\$\w+", "".join(_heads("export", text))) for text in made]

    assert all(taken[1:])
    assert set(chain(*taken)) == set(chain(*given))
    for names, text in zip(taken, lines, strict=True):
        assert set(names) <= set(re.findall(r"\$\w+", text))


def _heads(word: str, text: str) -> list[str]:
    return re.findall(rf"^{word} \{{.*$", text, re.M)


def test_script_asks_for_none_that_it_does_not_need():
    """Who adds a guide fetches no practice."""
    asked = re.findall(
        r'^import .* from "\./(\w+)\.js";$', script(STATIC, GUESTS), re.M
    )

    assert asked == ["app", "finding", "kept"]


TWO = {
    "phone/app.js": """
import { count } from "./count.js";
count();
const { start, NAME } = await_(import("./finding.js"));
function await_(asked) {
  asked.then((finding) => console.log(finding.start(), finding.NAME));
  return {};
}
""",
    "phone/count.js": """
let n = 0;
export const count = () => ++n;
""",
    "phone/finding.js": """
import { count } from "./count.js";
import { twice } from "./twice.js";
export const NAME = "finding";
export function start() {
  return twice(count());
}
""",
    "phone/twice.js": "export const twice = (n) => 2 * n;",
}


def test_later_script_shares_what_the_first_has(joined, tmp_path):
    """The count goes on from one: its module did not run again."""
    joined(TWO)
    built = tmp_path / "built"
    built.mkdir()
    for entry in SCRIPTS[:2]:
        (built / Path(entry).name).write_text(script(tmp_path, entry))

    said = subprocess.run(
        ["node", built / "app.js"], check=True, capture_output=True, text=True
    )

    assert said.stdout == "4 finding\n"


@pytest.mark.parametrize("asked", ['"./other.js"', "name", "`./finding.js`"])
def test_script_that_is_asked_for_must_be_the_later_one(joined, asked):
    with pytest.raises(BuildError, match=r"phone/app\.js: cannot join .import"):
        joined({"phone/app.js": f"const later = import({asked});"})


@pytest.mark.parametrize(
    "form",
    [
        'import a from "./a.js";',
        'import "./a.js";',
        "import { a } from './a.js';",
        "export default 1;",
        "export let a = 1;",
        "export const { a: b } = c;",
        'export * from "./a.js";',
        'export { a as b } from "./a.js";',
        "export { a };",
    ],
)
def test_form_that_is_not_known_is_refused(joined, form):
    with pytest.raises(BuildError, match=r"phone/app\.js: cannot join "):
        joined({"phone/app.js": form, "phone/a.js": ""})


def test_module_that_is_missing_is_named(joined):
    with pytest.raises(BuildError) as refused:
        joined({"phone/app.js": 'import { a } from "./view/a.js";'})

    assert str(refused.value) == (
        "phone/app.js imports phone/view/a.js, which does not exist"
    )


def test_circle_is_named(joined):
    with pytest.raises(BuildError) as refused:
        joined(
            {
                "phone/app.js": 'import { a } from "./a.js";',
                "phone/a.js": 'import { b } from "./b.js";',
                "phone/b.js": 'import { a } from "./a.js";',
            }
        )

    assert str(refused.value) == (
        "phone/app.js imports phone/a.js imports phone/b.js imports phone/a.js: "
        "a circle"
    )


ALONE = {
    "own/app.js": """
import { say } from "../phone/say.js";
say("asked");
const late = import("../phone/finding.js");
late.then(() => say("came"));
""",
    "phone/say.js": """
import { shown } from "./shown.js";
export const say = (text) => shown(`said ${text}`);
""",
    "phone/shown.js": """
export const shown = (text) => fetch(text);
""",
    "own/shown.js": """
import { MARK } from "./mark.js";
export const shown = (text) => console.log(text + MARK);
""",
    "own/mark.js": """
export const MARK = "!";
""",
}


def test_classic_script_takes_what_stands_in(tmp_path):
    """Names in it are found where it lies, and what it asks for later never comes."""
    for path, text in ALONE.items():
        (tmp_path / path).parent.mkdir(exist_ok=True)
        (tmp_path / path).write_text(text)
    made = alone(tmp_path, "own/app.js", {"phone/shown.js": "own/shown.js"})

    command = ["node", "--input-type=commonjs", "--eval", made]
    done = subprocess.run(command, check=True, capture_output=True, text=True)
    assert done.stdout == "said asked!\n"
