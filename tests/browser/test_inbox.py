"""What a phone exports, dropped on the inbox: looked at, accepted, undone."""

import shutil
import threading

import pytest
from playwright.sync_api import expect
from werkzeug.middleware.dispatcher import DispatcherMiddleware
from werkzeug.serving import make_server

import photofiles
from fieldid.census import read
from fieldid.guides.load import load
from fieldid.paths import RULES
from finds import add_photos, export, kept, said, write
from photopage import assert_bare
from serving import TRIED
from workbenches import bench

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
def rules(tmp_path):
    folder = tmp_path / "rules"
    folder.mkdir()
    shutil.copy(RULES / f"{TRIED}.toml", folder)
    return folder


@pytest.fixture
def workbench(rules):
    """The address of a workbench that is served in a thread."""
    served = bench(rules).wsgi_app
    mounted = DispatcherMiddleware(served, {"/workbench": served})
    server = make_server("127.0.0.1", 0, mounted, threaded=True)
    thread = threading.Thread(target=server.serve_forever)
    thread.start()
    yield f"http://127.0.0.1:{server.server_port}/workbench"
    server.shutdown()
    thread.join()
    server.server_close()


def test_export_is_dropped_looked_at_and_accepted(
    standing, launch, workbench, rules, tmp_path
):
    page = launch()
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
