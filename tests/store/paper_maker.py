"""A program that makes a bill and a record for each of some orders, and prints their numbers.

Run as `python -m tests.store.paper_maker ADDRESS FIRST LAST`, the orders being those of these ids.
It waits for a line before it begins, so that several begin at once.
"""

from __future__ import annotations

import sys

from quoting.store.book import open_book
from quoting.store.papers import make_paper
from tests.store.made_papers import bill, record
from tests.store.moments import NOW

WAIT_S = 120


def main() -> None:
    """Make the papers."""
    address, first, last = sys.argv[1], int(sys.argv[2]), int(sys.argv[3])
    with open_book(address, now=NOW, wait_s=WAIT_S) as book:
        _say("ready")
        sys.stdin.readline()
        for order_id in range(first, last + 1):
            for paper in (bill(), record()):
                made = make_paper(book, order_id, paper, seen=0, now=NOW)
                _say(f"{made.kind}:{made.number}")


def _say(word: str) -> None:
    sys.stdout.write(f"{word}\n")
    sys.stdout.flush()


if __name__ == "__main__":
    main()
