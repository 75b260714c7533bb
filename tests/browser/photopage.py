"""An empty page that takes photos, and what must hold of whatever comes out."""

import base64
import functools
import http.server
import io
import threading
from contextlib import contextmanager

from PIL import Image

import photofiles
from fieldid.paths import STATIC
from fieldid.web.headers import policy

# Everything that holds pixels is counted while it is alive.
WATCH = """() => {
  const watch = { urls: 0, mostUrls: 0, bitmaps: 0, largest: 0, canvases: [] };
  let last = 0;
  const tick = () => {
    const now = performance.now();
    watch.longest = Math.max(watch.longest, now - last);
    last = now;
  };
  watch.listen = () => {
    last = performance.now();
    watch.longest = 0;
    setInterval(tick, 10);
  };
  const { createObjectURL, revokeObjectURL } = URL;
  URL.createObjectURL = (blob) => {
    watch.mostUrls = Math.max(watch.mostUrls, ++watch.urls);
    return createObjectURL(blob);
  };
  URL.revokeObjectURL = (url) => { watch.urls--; revokeObjectURL(url); };
  const makeBitmap = createImageBitmap;
  window.createImageBitmap = async (...args) => {
    if (watch.deny && args.length > 1) throw new DOMException("", "NotSupportedError");
    const bitmap = await makeBitmap(...args);
    watch.bitmaps++;
    return bitmap;
  };
  const { close } = ImageBitmap.prototype;
  ImageBitmap.prototype.close = function () { watch.bitmaps--; close.call(this); };
  for (const name of ["width", "height"]) {
    const { get, set } = Object.getOwnPropertyDescriptor(
      HTMLCanvasElement.prototype, name);
    Object.defineProperty(HTMLCanvasElement.prototype, name, {
      get,
      set(value) {
        set.call(this, value);
        if (!watch.canvases.includes(this)) watch.canvases.push(this);
        watch.largest = Math.max(watch.largest, this.width * this.height);
      },
    });
  }
  window.watch = watch;
}"""

TAKE = """async (what) => {
  const { takePhoto, makeThumb } = await import("/phone/log/photo.js");
  const files = [...document.querySelector("input").files];
  const text = (bytes) => {
    let out = "";
    const all = new Uint8Array(bytes);
    for (let at = 0; at < all.length; at += 8192) {
      out += String.fromCharCode(...all.subarray(at, at + 8192));
    }
    return btoa(out);
  };
  watch.listen();
  const started = performance.now();
  const photos = files.map(async (file) => {
    try {
      const photo = await takePhoto(file);
      const kept = what === "thumb" ? await makeThumb(photo.bytes) : photo;
      const plain = kept.bytes instanceof ArrayBuffer;
      return { ...kept, plain, bytes: text(kept.bytes) };
    } catch (error) {
      return { error: error.name, says: error.message };
    }
  });
  const done = await Promise.all(photos);
  return [done, performance.now() - started];
}"""


class Plain(http.server.SimpleHTTPRequestHandler):
    """The scripts as they lie there and an empty page, under the app's own policy."""

    def do_GET(self):
        if self.path != "/":
            return super().do_GET()
        self.send_response(200)
        self.send_header("Content-Type", "text/html")
        self.end_headers()
        self.wfile.write(b"<!doctype html><title>Photos</title>")
        self.wfile.write(b"<input type=file multiple>")
        return None

    def end_headers(self):
        for name, value in policy("/"):
            self.send_header(name, value)
        super().end_headers()

    def log_message(self, *_):
        """Says nothing."""


@contextmanager
def served():
    """The address of the page, while it is served."""
    handler = functools.partial(Plain, directory=str(STATIC))
    server = http.server.ThreadingHTTPServer(("127.0.0.1", 0), handler)
    thread = threading.Thread(target=server.serve_forever)
    thread.start()
    yield f"http://127.0.0.1:{server.server_port}/"
    server.shutdown()
    server.server_close()
    thread.join()


def take(page, *files, name="photo.jpg", mime="image/jpeg", what="photo"):
    """What comes of the files, all chosen at once, and the milliseconds."""
    chosen = [{"name": name, "mimeType": mime, "buffer": file} for file in files]
    page.set_input_files("input", chosen)
    return taken(page, what)


def taken(page, what="photo"):
    """What comes of the files that are chosen, and the milliseconds."""
    return page.evaluate(TAKE, what)


def kept(page, file, **options):
    """The one photo as Pillow reads it, after all that must hold of every photo."""
    [photo], _ = take(page, file, **options)
    assert "error" not in photo, photo
    assert photo["plain"]
    data = base64.b64decode(photo["bytes"])
    assert_bare(data)
    picture = Image.open(io.BytesIO(data))
    picture.load()
    assert picture.format == "JPEG"
    assert picture.size == (photo["width"], photo["height"])
    assert_released(page)
    return picture


def refused(page, file, **options):
    """The sentence that the file is refused with."""
    [photo], _ = take(page, file, **options)
    assert photo.get("error") == "PhotoError", photo
    assert photo["says"][0].isupper()
    assert photo["says"].endswith(".")
    assert_released(page)
    return photo["says"]


def assert_bare(jpeg):
    """Two parsers and a look at the raw bytes find nothing but the picture."""
    assert {marker for marker, _ in photofiles.parts(jpeg)} <= {
        *(0xE0, 0xE2),
        *(0xDB, 0xC0, 0xC4, 0xDA),
    }
    picture = Image.open(io.BytesIO(jpeg))
    assert dict(picture.getexif()) == {}
    assert not {"exif", "xmp", "comment", "photoshop", "mpoffset"} & {*picture.info}
    for trace in (b"Exif", b"GPS", b"Camera of nobody", b"adobe", b"taken at home"):
        assert trace not in jpeg
    assert jpeg.endswith(b"\xff\xd9")


def assert_released(page):
    """Nothing that holds pixels is left alive."""
    urls, bitmaps, pixels = page.evaluate(
        """() => {
          const pixels = watch.canvases.map((canvas) => canvas.width * canvas.height);
          return [watch.urls, watch.bitmaps, Math.max(0, ...pixels)];
        }"""
    )
    assert (urls, bitmaps, pixels) == (0, 0, 0)


def corners(picture):
    """The colours a quarter of the way in from each corner."""
    width, height = picture.size
    spots = [(1, 1), (3, 1), (1, 3), (3, 3)]
    return [picture.getpixel((x * width // 4, y * height // 4)) for x, y in spots]


def assert_upright(picture):
    wanted = corners(photofiles.upright())
    for found, colour in zip(corners(picture), wanted, strict=True):
        far = max(abs(a - b) for a, b in zip(found, colour, strict=True))
        assert far < 40, (found, colour)
