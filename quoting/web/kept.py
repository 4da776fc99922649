"""The book of an application: its workshop as it is at each request, and the book to write to."""

from __future__ import annotations

from collections.abc import Callable
from dataclasses import dataclass, field, replace
from datetime import date, datetime
from pathlib import Path
from typing import TYPE_CHECKING

from flask import current_app

from quoting.core.ground.errors import Refused
from quoting.core.workshop.euro_rates import EuroRates
from quoting.web.shop import SHOPS, Day, Shop, open_shop

if TYPE_CHECKING:
    from quoting.store.book import Book
    from quoting.store.queue import KeptQueue
    from quoting.store.workshops import KeptWorkshop


@dataclass(slots=True, kw_only=True)
class KeptShop:
    """The workshop of an open book, read from it at each request.

    What was read last is served again while it is still so, which the book tells in a moment.
    `passing` says that the book is the demo's, and is thrown away at the end. `left` has the hours
    that orders on the hook may still take, each with the last line of the log that told so.
    """

    book: Book
    now: Callable[[], datetime]
    today: Day
    passing: bool = False
    rates: EuroRates | None = None
    rates_file: Path | None = None
    copied_on: date | None = None
    left: dict[int, tuple[int, float | None]] = field(default_factory=dict)
    _read: tuple[KeptWorkshop | None, Shop | None] = (None, None)
    _agreed: KeptQueue | None = None

    def shop(self) -> Shop | None:
        """Return the workshop as it is now, None of a book without any.

        Errors: as `Book.reading`.
        """
        from quoting.store.workshops import current_workshop  # with a book it is loaded already

        known, shop = self._read
        kept = current_workshop(self.book, known)
        if kept is not known:
            shop = None if kept is None else self._opened(kept)
            self._read = kept, shop
        return shop

    def agreed(self) -> KeptQueue:
        """Return the orders that wait for their turn. Errors: as `Book.reading`."""
        from quoting.store.queue import EMPTY_QUEUE, kept_queue

        self._agreed = kept_queue(self.book, self._agreed or EMPTY_QUEUE)
        return self._agreed

    def copy_daily(self) -> str:
        """Copy the book beside it, once a day; return what it failed by, a code, or nothing."""
        from quoting.store.backups import copy_of_the_day

        today = self.today()
        if self.passing or self.copied_on == today:
            return ""
        self.copied_on = today  # one that fails is tried again at the next start or the next day
        try:
            copy_of_the_day(self.book, today)
        except (Refused, OSError) as error:
            return str(error)
        return ""

    def take_rates(self, rates: EuroRates) -> None:
        """Serve with other reference rates from now on."""
        self.rates, self._read = rates, (None, None)

    def _opened(self, kept: KeptWorkshop) -> Shop:
        shop = open_shop(kept.workshop, today=self.today, file="", borrowed=self.passing)
        shop = replace(shop, version=kept.version.number)
        return shop.keeping_rates_in(self.rates_file).with_rates(self.rates)


def kept_shop() -> KeptShop | None:
    """Return the book that this application serves, None where it serves a workshop file."""
    shops = current_app.extensions[SHOPS]
    return shops if isinstance(shops, KeptShop) else None


def book_now() -> Book:
    """Return the open book, on a page that there is only with one."""
    kept = kept_shop()
    assert kept is not None, "the page is of a book"  # noqa: S101
    return kept.book


def moment_now() -> datetime:
    """Return this moment, on a page that there is only with a book."""
    kept = kept_shop()
    assert kept is not None, "the page is of a book"  # noqa: S101
    return kept.now()
