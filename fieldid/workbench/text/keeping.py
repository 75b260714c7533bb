"""What was sent and cannot be taken: the page that answers keeps what was typed, and
leads on; and a form from before a restart is filled in again where it still fits.
"""

from collections.abc import Callable, Sequence
from typing import TypeVar

from flask import g
from werkzeug.exceptions import Conflict

from fieldid.workbench.text.differing import Differing

REFILLED = (
    "The server has started anew since this page was opened, and nothing was saved. "
    "What you had typed stands below: save once more."
)
View = TypeVar("View", bound=Callable[..., object])


class KeptError(Conflict):
    """Nothing was saved: why, links with their words, and what was changed on disk."""

    def __init__(
        self,
        sentence: str,
        *links: tuple[str, str],
        different: Differing | None = None,
    ) -> None:
        super().__init__(sentence)
        self.links: Sequence[tuple[str, str]] = links
        self.different = different


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
    """Whether what was sent carries a token of a server that has ended, so that it may
    be shown but not done.
    """
    return bool(g.get("from_before"))
