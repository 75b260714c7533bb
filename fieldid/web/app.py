"""The one application: the phone's pages, or a built bundle of them, and the judge."""

import hashlib
import secrets
from collections.abc import Iterable
from pathlib import Path
from wsgiref.headers import Headers

from flask import Flask
from jinja2 import StrictUndefined

# The library does not say its types.
from whitenoise import WhiteNoise  # type: ignore[import-untyped]

from fieldid.engine.guide import Guide
from fieldid.engine.words import capital
from fieldid.paths import STATIC, TEMPLATES
from fieldid.web.headers import BUILT, sealed
from fieldid.web.judging import judging
from fieldid.web.phone import LIVE, TYPES, Shelf, common, phone


def create_app(
    *,
    guides: Iterable[Guide],
    build: str = LIVE,
    bundle: Path | None = None,
    static: Path = STATIC,
    templates: Path = TEMPLATES,
    secret: str | None = None,
    testing: bool = False,
) -> Flask:
    """The application; with a `bundle` its files are served in place of live pages.

    `secret` signs the form's cookie. Without one it is drawn anew for each process,
    which costs nothing but a form that was open across a restart.
    """
    app = Flask(__name__, static_folder=None, template_folder=str(templates))
    app.config.update(
        TESTING=testing,
        SECRET_KEY=secret or secrets.token_hex(32),
        SESSION_COOKIE_NAME="fieldid",
        # The phone's pages never see a cookie, and no other site can use it.
        SESSION_COOKIE_PATH="/judge",
        SESSION_COOKIE_SAMESITE="Strict",
        # As long as the page stays open, its form can be sent.
        WTF_CSRF_TIME_LIMIT=None,
    )
    app.jinja_env.undefined = StrictUndefined
    app.jinja_env.filters["capital"] = capital
    app.jinja_env.trim_blocks = app.jinja_env.lstrip_blocks = True
    app.extensions["fieldid"] = Shelf(tuple(guides), static, build)
    app.context_processor(common)
    app.register_blueprint(judging)
    inner = app.wsgi_app
    if bundle is None:
        app.register_blueprint(phone)
    else:
        inner = _files(app, bundle)
    app.wsgi_app = sealed(inner)  # type: ignore[assignment,method-assign]  # Flask's way
    return app


def _files(app: Flask, bundle: Path) -> WhiteNoise:
    """The bundle's files before the application; the outer table sets their caching."""
    return WhiteNoise(
        app.wsgi_app,
        root=bundle,
        max_age=None,
        allow_all_origins=False,
        index_file=True,
        immutable_file_test=f"^{BUILT.pattern}",
        mimetypes=TYPES,
        add_headers_function=_tag,
    )


def _tag(headers: Headers, path: str, url: str) -> None:
    """The content's hash as ETag: time and size can be those of another content."""
    found = hashlib.sha256(Path(path).read_bytes()).hexdigest()
    headers["ETag"] = f'"{found}"'
