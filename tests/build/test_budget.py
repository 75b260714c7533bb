import gzip

import brotli

from fieldid.build import budget

PAGE = b'<link href="a.css"><script src="b.js"></script><a href="c.html">c</a>'


def test_only_texts_worth_it_are_compressed():
    made = budget.compressed({"a.css": b"a" * 999, "b.png": b"a" * 999, "c.js": b"c"})

    assert list(made) == ["a.css.br", "a.css.gz"]
    assert brotli.decompress(made["a.css.br"]) == b"a" * 999
    assert gzip.decompress(made["a.css.gz"]) == b"a" * 999


def test_picture_is_sent_as_it_is():
    """Hosts keep copies of texts alone, so no other file weighs less."""
    picture = b"a" * 999

    assert budget.sent("b.png", picture, ".br") == picture
    assert budget.lines({"index.html": b"", "b.png": picture})[-1] == (
        "kept on a phone: 2 files, 1.0 kB (1.0 kB as gzip), 1.0 kB unpacked"
    )


def test_first_load_is_the_page_and_what_it_runs():
    noise = bytes(range(256)) * 4
    files = {"index.html": PAGE, "a.css": noise, "b.js": noise, "c.html": noise * 99}
    without = budget.lines({key: files[key] for key in ("index.html", "a.css", "b.js")})

    assert budget.lines(files)[0] == without[0]


def test_too_much_is_said(monkeypatch):
    monkeypatch.setattr(budget, "FIRST_LOAD", 10)
    first, *_ = budget.lines({"index.html": b"<p>0123456789 abcdefghij"})

    assert "over the 0.0 kB that a poor line bears" in first
