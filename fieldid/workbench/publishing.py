"""Publishing: the app that is served here, built anew, taken away, and its address."""

from functools import lru_cache

from flask import (
    Blueprint,
    Response,
    abort,
    flash,
    redirect,
    render_template,
    request,
    url_for,
)
from flask.typing import ResponseReturnValue

from fieldid.build import qr
from fieldid.build.onefile import one_file
from fieldid.build.takedown import take_down
from fieldid.build.zipped import zipped
from fieldid.workbench.phone import Served, phone
from fieldid.workbench.place import place

ALREADY = "The app is being built already."
NOTHING = "There is no app yet: it needs a guide without mistakes, and to be built."
SECONDS = 3
"""How often the page looks again while the app is being built."""

publishing = Blueprint("publishing", __name__, url_prefix="/publish")


@publishing.get("/")
def page() -> str:
    """What is served, the ways to take it away, and the code of an address."""
    app = phone()
    address = request.args.get("address", "").strip()
    why = qr.refused(address) if address else None
    return render_template(
        "workbench/publish.html",
        state=app.state,
        served=app.served,
        changed=app.changed,
        seconds=SECONDS,
        can_build=_can_build(),
        is_any_left_out=bool(place().left_out()),
        address=address,
        why=why,
        code=qr.code(address) if address and not why else None,
    )


def _can_build() -> bool:
    """Whether there is any guide but those that are left out of the app."""
    return place().guides() != place().left_out()


@publishing.post("/build")
def build() -> ResponseReturnValue:
    """Begins to build the app from the guides as they are now."""
    if not phone().rebuild():
        flash(ALREADY)
    return redirect(url_for("publishing.page"), 303)


@publishing.get("/fieldid-app.zip")
def site() -> Response:
    """The folder for a host."""
    return as_file(_zipped(_served()), "application/zip", "fieldid-app.zip")


@publishing.get("/fieldid.html")
def alone() -> Response:
    """The app in one file."""
    return as_file(_one_file(_served()), "text/html", "fieldid.html")


@publishing.get("/fieldid-taken-down.zip")
def gone() -> Response:
    """What stands on a host in place of the app once it is taken down."""
    served = phone().served
    made = take_down(served.guides if served else ())
    return as_file(zipped(made), "application/zip", "fieldid-taken-down.zip")


@publishing.get("/fieldid-address.html")
def poster() -> Response:
    """The code of an address on a sheet to print."""
    address = request.args.get("address", "")
    if why := qr.refused(address):
        abort(400, f"This is no address for phones: {why}")
    return as_file(qr.page(address).encode(), "text/html", "fieldid-address.html")


@publishing.get("/hosting")
def hosting() -> str:
    """How to put the app on a host, to bring it up to date, and to take it down."""
    return render_template("workbench/publish_hosting.html")


def _served() -> Served:
    found = phone().served
    if found is None:
        abort(404, NOTHING)
    return found


# Both take seconds, and are the same until the app is built anew.
@lru_cache(maxsize=1)
def _zipped(served: Served) -> bytes:
    return zipped(served.bundle)


@lru_cache(maxsize=1)
def _one_file(served: Served) -> bytes:
    return one_file(served.guides)


def as_file(body: bytes, kind: str, name: str) -> Response:
    """The bytes as a file to be saved, whatever a browser would rather do."""
    answer = Response(body, content_type=kind)
    answer.headers["Content-Disposition"] = f'attachment; filename="{name}"'
    return answer
