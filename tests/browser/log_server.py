"""A dumb web host of the app's own scripts and of one page that uses the log alone."""

import functools
import http.server
import json
import queue
import threading

from fieldid.paths import STATIC

PAGE = b"""<!doctype html>
<html lang="en"><meta charset="utf-8"><title>The log</title>
<script type="module" src="/log_page.js"></script>"""
SCRIPT = "log_page.js"


class Handler(http.server.SimpleHTTPRequestHandler):
    """Serves the page at the root, `static/` beside it, and notes what is told."""

    protocol_version = "HTTP/1.1"

    def do_GET(self):
        if self.path == "/":
            return self.answer(PAGE, "text/html")
        if self.path == f"/{SCRIPT}":
            script = (self.server.folder / SCRIPT).read_bytes()
            return self.answer(script, "text/javascript")
        return super().do_GET()

    def do_POST(self):
        body = self.rfile.read(int(self.headers["Content-Length"]))
        self.server.told.put(json.loads(body))
        self.answer(b"", "text/plain")

    def answer(self, body, kind):
        self.send_response(200)
        self.send_header("Content-Type", kind)
        self.send_header("Content-Length", str(len(body)))
        self.end_headers()
        self.wfile.write(body)

    def log_message(self, *_):
        """Says nothing."""


class Quiet(http.server.ThreadingHTTPServer):
    """A browser that is killed breaks off its requests; that is no news."""

    daemon_threads = True

    def handle_error(self, *_):
        """Says nothing: what a page has to tell is awaited where it counts."""


class LogServer:
    """The running host; `told` is what its pages have told, in order."""

    def __init__(self, folder):
        handler = functools.partial(Handler, directory=str(STATIC))
        self.server = Quiet(("127.0.0.1", 0), handler)
        self.server.folder = folder
        self.server.told = self.told = queue.Queue()
        self.url = f"http://127.0.0.1:{self.server.server_port}/"
        self.thread = threading.Thread(target=self.server.serve_forever)
        self.thread.start()

    def stop(self):
        self.server.shutdown()
        self.server.server_close()
        self.thread.join()
