import pytest

from fieldid.build.slim import slim

APP = "phone/app.js"
TIMES = """
const DAYS = 7;
const NAMED = "n";
function weeks(n) {
  return n * DAYS;
}
return { weeks, NAMED };
"""


def slimmed(text: str, path: str = "a.js") -> str:
    return slim(path, text.encode()).decode()


def test_comment_lines_go():
    assert slimmed("// a\nb();\n  /* c\n   * d\n   */\n  e();\n") == "b();\ne();\n"


def test_types_in_the_code_go():
    assert slimmed("const a = /** @type {any} */ (b);\n") == "const a = (b);\n"


@pytest.mark.parametrize(
    "line", ['a = "// b";', "a = /\\/*b*\\//;", 'b = "/* c */";', "c(); // why"]
)
def test_what_may_be_code_stays(line):
    assert slimmed(f"{line}\n") == f"{line}\n"


def test_long_template_keeps_its_blanks():
    script = "const a = `one\n  // two\n`;\n"

    assert slimmed(script) == script


def test_page_that_shows_its_lines_stays():
    page = "<pre>\n  a\n</pre>\n"

    assert slimmed(page, "a.html") == page


def test_page_loses_its_indents_alone():
    assert slimmed("<p>\n  a\n  <!-- b -->\n", "a.html") == "<p>\na\n<!-- b -->\n"


def test_shapes_of_drawings_end_themselves():
    drawn = '<p></p><svg><path d="M0 0"></path><use href="#a"></use></svg><b></b>'

    assert slimmed(drawn, "a.html") == (
        '<p></p><svg><path d="M0 0"/><use href="#a"/></svg><b></b>'
    )


def test_sheet_loses_blanks_around_its_signs():
    sheet = "a,\nb:hover {\n  color: red;\n  margin: 0 auto;\n}\n\np {\n  top: 0;\n}\n"

    assert slimmed(sheet, "a.css") == "a,b:hover{color:red;margin:0 auto}p{top:0}"


@pytest.mark.parametrize(
    "value", ['"a b"\n"c d"', "1rem\nserif", '"; "', '"{ "', "a(b, c)"]
)
def test_value_of_a_sheet_stays_as_it_is(value):
    assert slimmed(f"a {{\n  b: {value};\n}}\n", "a.css") == f"a{{b:{value}}}"


def test_constant_goes_where_its_value_stands():
    made = slimmed(f"const $a = (() => {{\n{TIMES}}})();\nexport {{ $a }};\n", APP)

    assert "DAYS" not in made
    assert "NAMED=`n`" in made
    assert "7*" in made or "*7" in made


def test_constant_of_another_module_stays():
    """Each module is looked at by itself: their names may be the same."""
    other = 'const $b = (() => {\nconst DAYS = "d";\nreturn { DAYS };\n})();\n'
    made = slimmed(
        f"const $a = (() => {{\n{TIMES}}})();\n{other}export {{ $a, $b }};", APP
    )

    assert made.count("DAYS") == 2
    assert "DAYS=`d`" in made


def test_other_files_stay():
    assert slim("a.json", b"  // a\n") == b"  // a\n"
