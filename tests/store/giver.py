"""A program that gives the quotes of some orders, one after another, and prints their numbers.

Run as `python -m tests.store.giver ADDRESS FIRST LAST`, the orders being those of these ids. It
waits for a line before it begins, so that several begin at once.
"""

from __future__ import annotations

import sys
from dataclasses import replace

from quoting.core.quote.given_number import GivenNumber
from quoting.store.book import open_book
from quoting.store.quote_content import FrozenQuote
from quoting.store.quotes import give_quote
from tests.store.given import DAY, frozen
from tests.store.moments import NOW

WAIT_S = 120


def main() -> None:
    """Give the quotes."""
    address, first, last = sys.argv[1], int(sys.argv[2]), int(sys.argv[3])
    whole = frozen(GivenNumber(2026, 1))

    def freeze(number: GivenNumber) -> FrozenQuote:
        return replace(whole, offer=replace(whole.offer, number=str(number)))

    with open_book(address, now=NOW, wait_s=WAIT_S) as book:
        _say("ready")
        sys.stdin.readline()
        for order_id in range(first, last + 1):
            quote = give_quote(book, order_id, freeze, revision=1, day=DAY, now=NOW)
            _say(str(quote.number))


def _say(word: str) -> None:
    sys.stdout.write(f"{word}\n")
    sys.stdout.flush()


if __name__ == "__main__":
    main()
