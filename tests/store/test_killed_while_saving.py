"""Killed at any moment: every save that was acknowledged is there, and none is half there."""

from __future__ import annotations

import random
import time
from pathlib import Path

import pytest

from quoting.store.book import open_book
from quoting.store.orders import create_order, kept_order
from quoting.store.workshops import current_workshop, save_workshop
from tests.examples import sample_workshop
from tests.store.moments import NOW
from tests.store.saver import WRITER, content_of
from tests.store.saver_to_kill import saver

OFTEN, VERY_OFTEN = 20, 200


def kept_in(address: str) -> dict[str, int]:
    """Return what a book has as saved last; the order is whole, whichever save that was."""
    with open_book(address, now=NOW, wait_s=30) as book:
        order, workshop = kept_order(book, 1), current_workshop(book)
    assert workshop is not None
    assert order.content == content_of(order.revision)
    return {"order": order.revision, "workshop": workshop.version.number}


def kill_often(address: str, times: int, seed: int) -> None:
    """Kill the program that saves so many times, and look for all that it acknowledged.

    One save more may be there: it was on its way to be acknowledged.
    """
    chance = random.Random(seed)
    with open_book(address, now=NOW) as book:
        create_order(book, content_of(1), now=NOW, writer=WRITER)
        save_workshop(book, sample_workshop(), now=NOW)
    kept = kept_in(address)
    with saver(address) as program:
        for _ in range(times):
            program.start()
            program.hear(chance.randrange(5))
            time.sleep(chance.uniform(0, 0.03))
            acknowledged = kept | program.kill()
            kept = kept_in(address)
            assert all(kept[what] - number in (0, 1) for what, number in acknowledged.items())
    assert kept["order"] > times // 2


def test_killed_twenty_times_nothing_acknowledged_is_lost(address: str) -> None:
    kill_often(address, OFTEN, seed=771)


@pytest.mark.slow
def test_killed_two_hundred_times_nothing_acknowledged_is_lost(path: Path) -> None:
    kill_often(str(path), VERY_OFTEN, seed=904)
