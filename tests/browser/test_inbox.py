"""What a phone exports, dropped on the inbox: looked at, accepted, undone."""

import shutil

import pytest
from playwright.sync_api import expect

import photofiles
from fieldid.census import read
from fieldid.guides.load import load
from fieldid.paths import RULES
from finds import add_photos, export, kept, said, write
from photopage import assert_bare
from serving import TRIED

NOTE = "“Ünter” dem <b>Tisch</b>\n=1+1"
PHOTOS = [photofiles.camera_photo(6, size=(900, 700)), photofiles.camera_photo(1)]
DROP = """(bytes) => {
  const dropped = new DataTransfer();
  dropped.items.add(new File([new Uint8Array(bytes)], "finds.zip"));
  const page = document.querySelector("h1");
  for (const type of ["dragover", "drop"]) {
    const how = { bubbles: true, cancelable: true, dataTransfer: dropped };
    const went = page.dispatchEvent(new DragEvent(type, how));
    if (went) throw new Error(`${type} is left to the browser, which leaves the page`);
  }
}"""


@pytest.fixture
def rules(rules):
    shutil.copy(RULES / f"{TRIED}.toml", rules)
    return rules


def test_export_is_dropped_looked_at_and_accepted(
    standing, visit, workbench, rules, tmp_path
):
    page = visit()
    kept(page, standing.url)
    write(page, "Note", NOTE)
    add_photos(page, *PHOTOS)
    expect(said(page)).to_have_text("2 photos are added.")
    file = export(page, tmp_path / "finds.zip")
    told = []
    page.on("console", lambda message: told.append(message.text))

    page.goto(f"{workbench}/inbox")
    page.evaluate(DROP, list(file.read_bytes()))
    page.get_by_role("button", name="Take them in").click()
    expect(page.locator(".became")).to_have_text("finds.zip 1 find is new.")
    page.locator(".sent__name").click()

    expect(page.get_by_text(NOTE.splitlines()[0])).to_be_visible()
    # The guide here is the phone's own: nothing is said of another version.
    expect(page.locator(".notice")).to_have_count(0)
    pictures = page.locator(".photos__picture")
    expect(pictures).to_have_count(2)
    pictures.last.scroll_into_view_if_needed()
    page.wait_for_function(
        "[...document.images].every((one) => one.complete && one.naturalWidth)"
    )
    for i in range(2):
        source = pictures.nth(i).evaluate("(one) => one.src")
        assert_bare(page.request.get(source).body())

    page.get_by_label("Model year").fill("1957")
    page.get_by_label("How it was confirmed").select_option("receipt")
    page.get_by_role("button", name="Accept it").click()
    expect(page.locator(".notice")).to_contain_text("is in the census")
    path = rules / f"{TRIED}.toml"
    (specimen,) = read.load(read.beside(path), load(path)).specimens
    assert dict(specimen.item.readings) == {"toe-outline": "round"}

    page.get_by_role("button", name="Undo it").click()
    expect(page.locator(".notice")).to_contain_text("it waits again")
    assert read.load(read.beside(path), load(path)).specimens == ()
    assert told == []
