import pytest

from fieldid.build.slim import slim


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


def test_other_files_stay():
    assert slim("a.json", b"  // a\n") == b"  // a\n"
