"""What was sent and cannot be taken: the page that answers keeps what was typed, and
leads on; and a form whose token is not good is filled in again where it still fits.
"""

from collections.abc import Callable, Sequence
from typing import TypeVar

from flask import g, request, url_for
from werkzeug.exceptions import Conflict

EARLIER = "This form is from an earlier session, or the server has started anew since."
"""Of a token that is not good no more is known."""
REFILLED = f"{EARLIER} What you had typed stands below: save once more."
View = TypeVar("View", bound=Callable[..., object])


class KeptError(Conflict):
    """Nothing was saved: why, links with their words, and what was changed on disk, as
    the template workbench/differing.html shows it.
    """

    def __init__(
        self,
        sentence: str,
        *links: tuple[str, str],
        different: object | None = None,
    ) -> None:
        super().__init__(sentence)
        self.links: Sequence[tuple[str, str]] = links
        self.different = different


def home() -> tuple[str, str]:
    """The way on from wherever there is no other, with its words."""
    return url_for("base.home"), "To the workbench"


def refilled(view: View) -> View:
    """Marks a view that shows its form again with what was sent, if that
    `is_from_before`, and saves nothing of it.
    """
    view.is_refilled = True  # type: ignore[attr-defined]  # for `can_refill`
    return view


def can_refill(view: object) -> bool:
    """Whether the view was marked so."""
    return getattr(view, "is_refilled", False)


def is_from_before() -> bool:
    """Whether what was sent carries a token that is not good, as that of a session or a
    server that has ended, so that it may be shown but not done.
    """
    return bool(g.get("from_before"))


def wish(*others: str) -> str:
    """What the button of a form asks for: one of these, or else to save, so that no
    other word slips past what is asked before anything is saved.
    """
    do = request.form.get("do", "")
    return do if do in others else "save"
