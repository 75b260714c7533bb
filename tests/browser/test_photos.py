"""Photos as they come from cameras, galleries and elsewhere: what is kept of each."""

import base64
import io
import math

import pytest
from PIL import Image, ImageOps

import photofiles
from memory import Memory
from photopage import (
    WATCH,
    assert_bare,
    assert_released,
    assert_upright,
    kept,
    refused,
    served,
    take,
    taken,
)

LARGEST_PHOTO = (12_000, 9_000)
PIXEL_BYTES = 4
TIMES = 20
# Above this, phones with an apple on them give an empty canvas without a word.
LARGEST_CANVAS = 16_777_216


@pytest.fixture(scope="module")
def address():
    with served() as address:
        yield address


@pytest.fixture
def page(chromium, address):
    page = chromium.new_page()
    page.goto(address)
    page.evaluate(WATCH)
    yield page
    page.close()


@pytest.mark.parametrize("deny", [False, True], ids=["bitmap", "image"])
@pytest.mark.parametrize("orientation", range(1, 9))
def test_every_orientation_comes_upright(page, orientation, deny):
    """A browser that cannot scale while it decodes draws the image itself."""
    file = photofiles.camera_photo(orientation, size=(2400, 1800))
    assert_upright(ImageOps.exif_transpose(Image.open(io.BytesIO(file))))
    page.evaluate("(deny) => { watch.deny = deny; }", deny)
    picture = kept(page, file)

    assert picture.size == (1600, 1200)
    assert_upright(picture)


@pytest.mark.parametrize("progressive", [False, True])
def test_small_photo_keeps_its_size(page, progressive):
    picture = kept(page, photofiles.camera_photo(6, progressive=progressive))

    assert picture.size == photofiles.SIZE
    assert_upright(picture)


def test_what_the_camera_wrote_is_gone(page):
    """The check can fail: all of it is found in the camera's file."""
    file = photofiles.camera_photo(6)
    before = Image.open(io.BytesIO(file))
    assert before.getexif().get_ifd(0x8825)[1] == "N"
    assert {"exif", "xmp", "comment"} <= {*before.info}
    with pytest.raises(AssertionError):
        assert_bare(file)

    kept(page, file)


def test_browser_that_writes_exif_is_cleaned_up_after(page):
    page.evaluate(
        """(part) => {
          const { toBlob } = HTMLCanvasElement.prototype;
          const exif = Uint8Array.from(part);
          HTMLCanvasElement.prototype.toBlob = function (done, ...how) {
            toBlob.call(this, (blob) => {
              done(new Blob([blob.slice(0, 2), exif, blob.slice(2)]));
            }, ...how);
          };
        }""",
        list(photofiles.with_part(b"\xff\xd8", 0xE1, b"Exif\0\0MM\0*" + bytes(9))[2:]),
    )

    kept(page, photofiles.camera_photo(1))


@pytest.mark.parametrize(
    "broken",
    [
        "toBlob = (done) => done(null)",
        "toBlob = (done) => done(new Blob(['no picture']))",
        "getContext = () => null",
    ],
    ids=["nothing", "junk", "no canvas"],
)
def test_browser_that_cannot_draw_is_told(page, broken):
    page.evaluate(f"() => {{ HTMLCanvasElement.prototype.{broken} }}")

    assert "small copy" in refused(page, photofiles.camera_photo(1))


def test_content_counts_and_not_the_name(page):
    file = photofiles.camera_photo(8)
    picture = kept(page, file, name="notes.txt", mime="text/plain")

    assert_upright(picture)


@pytest.mark.parametrize(
    ("file", "says"),
    [
        (b"I am a text, whatever my name says.\n" * 40, "not a photo"),
        (b"%PDF-1.7\n", "not a photo"),
        (b"x", "not a photo"),
        (b"", "is empty"),
        (photofiles.heic_head(), "HEIC photo"),
        (photofiles.heic_head().replace(b"heic", b"avif"), "AVIF photo"),
        (b"II*\0" + bytes(400), "raw photo"),
        (b"RIFF\x20\0\0\0WEBPVP8 " + bytes(20), "may be damaged"),
        (photofiles.camera_photo(1)[:3000], "cut short"),
        (b"\xff\xd8\xff\xe1\xff\xff" + bytes(50), "claims 65535 bytes"),
        (b"\xff\xd8\xff\xd9", "how large"),
    ],
    ids=lambda value: value.replace(" ", "-") if isinstance(value, str) else "",
)
def test_what_is_no_photo_is_told(page, file, says):
    assert says in refused(page, file)


def test_drawing_that_browsers_know_is_no_photo(page):
    """It could hold scripts and ask for more files."""
    svg = b"""<svg xmlns="http://www.w3.org/2000/svg" width="90" height="90">
      <circle r="40" fill="red"/></svg>"""

    assert "not a photo" in refused(page, svg, name="a.svg", mime="image/svg+xml")


@pytest.mark.parametrize("format_", ["heic", "avif"])
def test_heic_says_what_to_do_on_the_phone(page, format_):
    head = photofiles.heic_head().replace(b"heic", format_.encode())
    says = refused(page, head)

    assert "camera's settings" in says
    assert "copy of it as JPEG" in says


def test_half_a_scan_is_refused(page):
    """Browsers draw such a file with its lower part grey, and say nothing."""
    whole = photofiles.camera_photo(1, size=(1200, 900))

    assert "cut short" in refused(page, whole[: len(whole) // 2])


@pytest.mark.parametrize("make", [photofiles.claiming_jpeg, photofiles.claiming_png])
def test_huge_claims_are_refused_at_once(page, make):
    [photo], _ = take(page, make(20_000, 20_000))

    assert photo["error"] == "PhotoError"
    assert "400 megapixels" in photo["says"]
    assert "camera's settings" in photo["says"]
    assert page.evaluate("watch.largest") == 0, "none of it was drawn"


@pytest.mark.parametrize("make", [photofiles.claiming_jpeg, photofiles.claiming_png])
def test_a_size_that_lies_does_no_harm(page, make):
    """It is within the limits, but hardly any pixels are behind it; a photo that has
    them takes as long.
    """
    _, honest = take(page, photofiles.camera_photo(1, size=(4000, 3000)))
    [photo], milliseconds = take(page, make(9000, 9000))

    assert photo.get("error", "PhotoError") == "PhotoError"
    assert milliseconds < TIMES * honest
    assert_released(page)


def test_too_many_megabytes_are_refused_unread(page):
    says = page.evaluate(
        """async () => {
          const { takePhoto } = await import("/phone/log/photo.js");
          Blob.prototype.arrayBuffer = () => { throw new Error("it was read"); };
          const file = new Blob([new Uint8Array(30_000_001)]);
          return takePhoto(file).catch((error) => `${error.name}: ${error.message}`);
        }"""
    )

    assert says.startswith("PhotoError: The photo has 31 megabytes; ")


def test_file_that_is_not_handed_over_is_told(page):
    page.evaluate(
        """() => {
          Blob.prototype.arrayBuffer = async () => {
            throw new DOMException("gone", "NotReadableError");
          };
        }"""
    )

    assert "did not hand" in refused(page, photofiles.camera_photo(1))


@pytest.fixture(scope="module")
def largest(tmp_path_factory):
    """The largest photo that phones take: 108 megapixels."""
    path = tmp_path_factory.mktemp("photos") / "largest.jpg"
    path.write_bytes(photofiles.huge_photo(*LARGEST_PHOTO))
    return path


def test_largest_phone_photo_is_held_once(page, largest):
    """And no canvas is ever nearly as large."""
    page.set_input_files("input", largest)
    with Memory() as memory:
        [photo], _ = taken(page)
    picture = Image.open(io.BytesIO(base64.b64decode(photo["bytes"])))

    assert picture.size == (1600, 1200)
    assert page.evaluate("watch.largest") == 1600 * 1200 <= LARGEST_CANVAS
    assert len({*picture.resize((8, 8)).get_flattened_data()}) > 32
    assert memory.grown < 2 * PIXEL_BYTES * math.prod(LARGEST_PHOTO)


def held(page):
    """The part of the time for a photo in which the page did nothing else."""
    _, milliseconds = taken(page)
    return page.evaluate("watch.longest") / milliseconds


def test_page_goes_on_while_a_photo_is_decoded(page, largest):
    """Drawing the image itself would hold the page for nine tenths of that time.

    A busy machine holds the page too, so it is the shortest of several that counts.
    """
    page.set_input_files("input", largest)

    assert min(held(page) for _ in range(4)) < 0.6


def test_transparent_picture_lies_on_white(page):
    picture = Image.new("RGBA", (300, 200), (0, 0, 0, 0))
    picture.paste((255, 0, 0, 255), (0, 0, 150, 200))
    found = kept(page, photofiles.saved(picture, "PNG"), name="cut-out.png")

    assert found.getpixel((225, 100)) == (255, 255, 255)
    assert found.getpixel((75, 100))[0] > 240


@pytest.mark.parametrize("kind", ["PNG", "WEBP"])
def test_moving_picture_gives_its_first_frame(page, kind):
    frames = [photofiles.upright(), Image.new("RGB", photofiles.SIZE, "black")]
    options = {"save_all": True, "append_images": frames[1:], "duration": 20}
    file = photofiles.saved(frames[0], kind, **options)
    assert Image.open(io.BytesIO(file)).n_frames == 2

    assert_upright(kept(page, file))


@pytest.mark.parametrize("size", [(1, 1), (1, 5000), (7, 7)])
def test_odd_sizes_are_kept(page, size):
    picture = kept(page, photofiles.saved(Image.new("RGB", size, "red"), "PNG"))

    width, height = picture.size
    assert (width, height) == (size[0], min(size[1], 1600))


def test_noise_is_made_small_enough(page):
    """At the first quality it has 1.7 megabytes."""
    [photo], _ = take(page, photofiles.noise(1600))
    data = base64.b64decode(photo["bytes"])

    assert 600_000 < len(data) <= 1_000_000
    assert Image.open(io.BytesIO(data)).size == (1600, 1600)


def test_blank_photo_is_not_kept(page):
    white = photofiles.saved(Image.new("RGB", (300, 200), "white"), "JPEG")

    assert "came out blank" in refused(page, white)


def test_canvas_that_draws_nothing_is_noticed(page):
    page.evaluate("() => { CanvasRenderingContext2D.prototype.drawImage = () => {}; }")

    assert "came out blank" in refused(page, photofiles.camera_photo(1))


def test_many_photos_are_taken_one_by_one(page):
    """And one that cannot be read does not stop the ones after it."""
    good = photofiles.camera_photo(6, size=(2400, 1800))
    photos, _ = take(page, good, b"no photo", photofiles.heic_head(), good, good)

    assert ["error" in photo for photo in photos] == [False, True, True, False, False]
    assert page.evaluate("watch.mostUrls") == 1
    assert_released(page)


def test_thumbnail_is_small_and_upright(page):
    file = photofiles.camera_photo(5, size=(2400, 1800))
    picture = kept(page, file, what="thumb")

    assert picture.size == (240, 180)
    assert_upright(picture)
