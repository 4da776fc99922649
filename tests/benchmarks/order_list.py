"""How long the list of a book of 10,000 orders takes, and what opening and saving take in it.

Run as `python tests/benchmarks/order_list.py` with the project on the path. Everything is timed in
one run, beside a fixed loop in plain Python. A page of the list is to come in under 100 ms.
"""

from __future__ import annotations

import sys
import tempfile
import time
from collections.abc import Callable
from dataclasses import replace
from datetime import UTC, datetime, timedelta
from decimal import Decimal
from pathlib import Path

sys.path.insert(0, str(Path(__file__).parents[2]))

from sqlalchemy import insert

from quoting.core.order.stage import Stage
from quoting.store.book import Book, open_book
from quoting.store.order_list import OrderQuery, SortedBy, list_orders
from quoting.store.order_rows import listed_columns, text_columns
from quoting.store.orders import create_order
from quoting.store.tables import ORDER_TEXTS, ORDERS, QUOTES
from quoting.store.workshops import save_workshop
from tests.examples import sample_workshop
from tests.store.contents import FIGURES, whole

NOW = datetime(2026, 11, 25, tzinfo=UTC)
MANY = 10_000
FIELDS = 120
"""Texts that the form of a middling order sends."""

ROUNDS = 7
LOOPS = 100_000

PAGE = 8_000
"""Characters of each text of a quote."""


def fill(book: Book) -> None:
    """Keep so many orders, of all stages and at many prices."""
    save_workshop(book, sample_workshop(), now=NOW)
    typed = {f"blanket.sections.1.stripes.{n}.colour": ("teal",) for n in range(FIELDS)}
    texts = text_columns(whole(typed=typed))
    rows = []
    for number in range(MANY):
        figures = replace(FIGURES, price=Decimal(number * 37 % 900), hours=Decimal(number % 60))
        own = listed_columns(whole(title=f"Blanket {number}", figures=figures))
        moment = NOW + timedelta(minutes=number * 7 % MANY)
        rows.append(
            own
            | {"id": number + 1, "revision": 1, "writer": "", "stage_before": None}
            | {"stage": list(Stage)[number % 7].value, "created_at": NOW, "changed_at": moment}
        )
    with book.writing() as connection:
        connection.execute(insert(ORDERS), rows)
        connection.execute(insert(ORDER_TEXTS), [texts | {"order_id": row["id"]} for row in rows])
        connection.execute(insert(QUOTES), [quote_row(number) for number in range(MANY)])


def quote_row(number: int) -> dict[str, object]:
    """Return a quote of an order, as large as a middling one is."""
    long = ("workshop", "order_record", "results", "offer", "page")
    return dict.fromkeys(long, "x" * PAGE) | {
        "order_id": number + 1,
        "year": 2026,
        "running": number + 1,
        "version": 1,
        "given_at": NOW,
        "day": NOW.date(),
        "valid_until": NOW.date(),
        "revision": 1,
        "workshop_version": 1,
        "program": "",
    }


def yardstick() -> int:
    """Run a loop of whole-number arithmetic that never changes."""
    total = 0
    for number in range(LOOPS):
        total = (total * 31 + number) % 1_000_003
    return total


def seconds(work: Callable[[], object]) -> float:
    """Return the least time of several, which the machine's other work disturbs least."""
    times = []
    for _ in range(ROUNDS):
        start = time.perf_counter()
        work()
        times.append(time.perf_counter() - start)
    return min(times)


def tell(what: str, work: Callable[[], object], loop_s: float) -> None:
    """Print what some work takes."""
    taken_s = seconds(work)
    print(f"{what:>28}: {taken_s * 1000:8.2f} ms, {taken_s / loop_s:7.3f} loops")


def main() -> None:
    """Fill a book and time what is asked of it."""
    loop_s = seconds(yardstick)
    with tempfile.TemporaryDirectory() as folder:
        address = str(Path(folder) / "book.db")
        with open_book(address, now=NOW) as book:
            fill(book)
            for by in SortedBy:
                query = OrderQuery(by=by)
                tell(f"sorted by {by}", lambda query=query: list_orders(book, query), loop_s)
            for name, query in {
                "the last page": OrderQuery(page=MANY),
                "two words found": OrderQuery(words="blanket 77"),
                "a quote's number found": OrderQuery(words="2026-777"),
                "nothing found": OrderQuery(words="rug"),
                "one stage": OrderQuery(stages=(Stage.ON_THE_HOOK,), by=SortedBy.WANTED_BY),
            }.items():
                tell(name, lambda query=query: list_orders(book, query), loop_s)
            tell("a new order", lambda: create_order(book, whole(), now=NOW), loop_s)
        tell("opening the book", lambda: open_book(address, now=NOW).close(), loop_s)
        print(f"{'the file':>28}: {Path(address).stat().st_size / 1e6:8.1f} MB")


if __name__ == "__main__":
    main()
