"""How long the queue of a book of 10,000 orders takes: read for a page, and laid into days.

Run as `python tests/benchmarks/agreed_orders.py` with the project on the path. Everything is timed
in one run, beside a fixed loop in plain Python. What a page pays for it is to be a few
milliseconds.
"""

from __future__ import annotations

import sys
import tempfile
from dataclasses import replace
from datetime import date, timedelta
from pathlib import Path

sys.path.insert(0, str(Path(__file__).parents[2]))

from sqlalchemy import update

from quoting.core.order.stage import Stage
from quoting.core.workshop.queue import queue_orders
from quoting.core.workshop.weeks import weeks_ahead
from quoting.store.book import open_book
from quoting.store.queue import kept_queue
from quoting.store.tables import ORDERS
from quoting.store.workshops import save_workshop
from tests.benchmarks.order_list import NOW, fill, seconds, tell, yardstick
from tests.examples import sample_order, sample_workshop
from tests.store.agreements import agree

TODAY = date(2026, 11, 25)
WAITING = 40
"""Orders that were agreed: a year's work, which is more than most makers promise."""


def main() -> None:
    """Fill a book, have some of it agreed, and time what is asked of the queue."""
    loop_s, workshop = seconds(yardstick), sample_workshop()
    off = tuple(TODAY + timedelta(days=7 * week) for week in range(52))
    workshop = replace(workshop, calendar=replace(workshop.calendar, days_off=off))
    with (
        tempfile.TemporaryDirectory() as folder,
        open_book(str(Path(folder) / "book.db"), now=NOW) as book,
    ):
        save_workshop(book, workshop, now=NOW)
        fill(book)
        with book.writing() as connection:
            connection.execute(update(ORDERS).values(stage=Stage.HANDED_OVER.value))
        for number in range(WAITING):
            moment = NOW + timedelta(minutes=number)
            agree(book, sample_order(title=f"Waiting {number}"), workshop, now=moment)
        known = kept_queue(book)
        queue = queue_orders(known.orders, workshop, today=TODAY)
        tell("read for the first time", lambda: kept_queue(book), loop_s)
        tell("read again", lambda: kept_queue(book, known), loop_s)
        tell("laid into days", lambda: queue_orders(known.orders, workshop, today=TODAY), loop_s)
        tell("the weeks ahead", lambda: weeks_ahead(queue, workshop, today=TODAY), loop_s)


if __name__ == "__main__":
    main()
