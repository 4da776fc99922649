"""A program that saves and saves until it is killed, and says of each save when it is done.

Run as `python -m tests.store.saver ADDRESS`. For each line that it reads it starts a child, which
prints its number, then `n` once the save of revision n is acknowledged. A child begins at once, as
everything is loaded by then.
"""

from __future__ import annotations

import os
import sys
from datetime import UTC, datetime

from quoting.store.book import open_book
from quoting.store.order_content import KeptOrder, OrderContent
from quoting.store.orders import kept_order, save_order
from quoting.store.workshops import save_workshop
from tests.examples import sample_order, sample_workshop

MOST = 10_000
WRITER = "child"
WORDS = "stitch, row, round " * 40


def content_of(number: int) -> OrderContent:
    """Return the content of a save, which names its number in every place that is kept."""
    title = f"Blanket {number}"
    typed = {"order.title": (title,), "order.notes": (f"{number} {WORDS}",)}
    return OrderContent(typed=typed, title=title, order=sample_order(title=title))


def save_on(address: str) -> None:
    """Save the first order, and the workshop now and then, for ever or nearly so."""
    _say(f"pid {os.getpid()}")
    with open_book(address, now=datetime.now(UTC)) as book:
        number = kept_order(book, 1).revision
        for _ in range(MOST):
            number += 1
            now = datetime.now(UTC)
            saved = save_order(
                book, 1, content_of(number), revision=number - 1, writer=WRITER, now=now
            )
            assert isinstance(saved, KeptOrder)
            _say(f"order {saved.revision}")
            hours = 1 + number % 100
            version = save_workshop(book, sample_workshop(hours_per_week=hours), now=now)
            _say(f"workshop {version.number}")


def _say(words: str) -> None:
    os.write(1, f"{words}\n".encode())


def main() -> None:
    """Start a child for each line."""
    for _ in sys.stdin:
        child = os.fork()
        if child == 0:
            save_on(sys.argv[1])
            os._exit(0)
        os.waitpid(child, 0)
        _say("ended")


if __name__ == "__main__":
    main()
