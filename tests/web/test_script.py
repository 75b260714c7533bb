import subprocess

import pytest

from fieldid.errors import BuildError
from fieldid.paths import STATIC
from fieldid.web.script import script


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


def test_each_module_stands_there_once(joined):
    assert joined(MODULES).count('const HELLO = "hello"') == 1


def test_no_import_is_left_in_the_app():
    assert not [
        line
        for line in script(STATIC).splitlines()
        if line.startswith(("import", "export"))
    ]


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
