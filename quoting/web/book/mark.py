"""Which kept order a form belongs to, and from which save of it the page began."""

from __future__ import annotations

import re
import secrets
from dataclasses import dataclass

from flask import request, url_for

from quoting.web.kept import kept_shop

FIELD = "kept"
TURN = "turn"
"""When a page sent its form, by its own clock: of two of its saves the later one stands."""

OF_THE_PAGE = frozenset({"csrf_token", "do", FIELD, TURN})
"""Fields that belong to the page, not to the order."""

_MARK = re.compile(r"([1-9]\d{0,14})\.(\d{1,15})\.([\w-]{1,40})", re.ASCII)


@dataclass(frozen=True, slots=True, kw_only=True)
class Mark:
    """An order, the revision that a page shows, and the name that the page goes by."""

    order_id: int
    revision: int
    writer: str

    def __str__(self) -> str:
        """Return the mark as a form carries it."""
        return f"{self.order_id}.{self.revision}.{self.writer}"


def read_mark(text: str) -> Mark | None:
    """Return the mark that a form carries, None where it has none."""
    found = _MARK.fullmatch(text)
    if found is None:
        return None
    return Mark(order_id=int(found[1]), revision=int(found[2]), writer=found[3])


def sent_mark() -> Mark | None:
    """Return the mark of the form that was sent, where this application has a book."""
    return None if kept_shop() is None else read_mark(request.form.get(FIELD, ""))


def new_writer() -> str:
    """Return a name for a page that is opened."""
    return secrets.token_urlsafe(9)


def order_home() -> str:
    """Return where the order at hand is found again: its page, or the worktable without a book."""
    mark = sent_mark()
    if mark is None:
        return url_for("orders.show")
    return url_for("kept_orders.show", order_id=mark.order_id)
