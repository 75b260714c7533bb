"""WebKitGTK, the engine of phones with an apple on them: the journey without signal,
a set, and a find with its photo.
"""

import re

import photofiles
from drivers import Selected
from journey import answer, open_kept, start, walk

TITLE = "Iron from the barn"
# What lies in the log, photos by their number of bytes; a Blob would have no such.
LYING = """() => new Promise((done, failed) => {
  const opening = indexedDB.open("fieldid");
  opening.onerror = () => failed(opening.error);
  opening.onsuccess = () => {
    const photos = opening.result.transaction("photos").objectStore("photos").getAll();
    photos.onsuccess = () => {
      opening.result.close();
      done(photos.result.map(({ bytes }) => bytes.byteLength));
    };
  };
})"""
# What a file is chosen with must be seen by the driver.
SHOW = "(css) => { document.querySelector(css).hidden = false; }"
GALLERY = "[data-slot=from-gallery]"


def test_webkit_needs_no_signal(bundle, webkit):
    walk(Selected(webkit), bundle)


def test_set_is_entered_and_judged_in_webkit(standing, webkit):
    phone = Selected(webkit)
    open_kept(phone, standing.url)
    start(phone)
    phone.tap("a[href='#set']")
    phone.tap("[data-act=sold]")
    phone.until(lambda: len(phone.texts(".tile[aria-pressed=true]")) == 7)
    phone.go("#look")
    phone.text("[data-row] .row__cell")
    answer(phone)
    assert len(phone.texts(".row__cell--read")) == 7
    phone.go("#verdict")

    rows = phone.until(lambda: phone.texts(".of-set"))
    assert len(rows) == 7
    assert re.search(r"19[56]\d", rows[0])


def test_find_with_its_photo_is_kept_in_webkit(standing, webkit, tmp_path):
    """Its automation is a private window, where a Blob in the database is an error."""
    photo = tmp_path / "photo.jpg"
    photo.write_bytes(photofiles.camera_photo(6, size=(2400, 1800)))
    phone = Selected(webkit)
    open_kept(phone, standing.url)
    start(phone)
    answer(phone)
    phone.go("#verdict")
    phone.tap("[data-act=keep]")
    phone.type("[data-own=title]", TITLE)
    phone.until(lambda: phone.texts(".entry__said p") == ["The title is saved."])
    phone.ask(SHOW, GALLERY)
    phone.hand_over(GALLERY, photo)
    phone.until(lambda: phone.texts(".entry__said p") == ["The photo is added."])
    [held] = phone.ask(LYING)
    phone.reload()
    phone.until(lambda: phone.texts(".shot img"))
    phone.go("#finds")
    phone.tap("[data-act=make-log]")

    phone.text("[data-act=save-file]")
    size = re.search(
        r"\.zip, (\d+)\skB", phone.text("[data-slot=file] [data-slot=name]")
    )
    assert phone.texts(".kept__title") == [TITLE]
    assert 10 < held / 1000 < int(size[1]) < held / 1000 + 10
