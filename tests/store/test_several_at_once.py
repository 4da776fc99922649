"""Many who write at once: nothing is lost, and no number is given twice or left out."""

from __future__ import annotations

import sqlite3
from concurrent.futures import ThreadPoolExecutor
from contextlib import closing
from pathlib import Path
from threading import Timer

import pytest

from quoting.store.book import Book, open_book
from quoting.store.engines import file_engine, keep_log_beside
from quoting.store.orders import create_order, kept_order, save_order
from quoting.store.workshops import save_workshop, workshop_versions
from tests.examples import sample_workshop
from tests.store.contents import half
from tests.store.moments import NOW

WRITERS, EACH = 4, 10


def test_versions_of_the_workshop_are_numbered_without_a_gap(address: str) -> None:
    def save_some(writer: int) -> None:
        with open_book(address, now=NOW, wait_s=60) as book:
            for number in range(EACH):
                name = f"Ottermoor {writer}.{number}"
                save_workshop(book, sample_workshop(name=name), now=NOW)

    with ThreadPoolExecutor(WRITERS) as threads:
        list(threads.map(save_some, range(WRITERS)))
    with open_book(address, now=NOW) as book:
        numbers = [version.number for version in workshop_versions(book)]
    assert numbers == list(range(WRITERS * EACH, 0, -1))


def test_a_book_that_somebody_writes_in_is_waited_for_before_its_log_is_kept_beside(
    path: Path,
) -> None:
    """A new book or one put back has no log beside it; SQLite itself would refuse at once."""
    engine = file_engine(path, wait_s=60)
    with (
        closing(sqlite3.connect(path, check_same_thread=False, isolation_level=None)) as other,
        closing(engine.raw_connection()) as connection,
    ):
        other.execute("CREATE TABLE lots (id INTEGER)")
        other.execute("BEGIN IMMEDIATE")
        with pytest.raises(sqlite3.OperationalError, match="locked"):
            keep_log_beside(connection.cursor(), wait_s=0)
        leaving = Timer(0.3, other.execute, ["COMMIT"])
        leaving.start()
        keep_log_beside(connection.cursor(), wait_s=60)
        leaving.join()
        cursor = connection.cursor()
        cursor.execute("PRAGMA journal_mode")
        assert cursor.fetchone() == ("wal",)
    engine.dispose()


def test_one_book_serves_many_threads(address: str) -> None:
    def work_on_one(number: int) -> tuple[int, str]:
        order = create_order(book, half(), now=NOW, writer=str(number))
        for revision in range(1, EACH):
            save_order(
                book,
                order.id,
                half(f"Blanket {number}"),
                revision=revision,
                writer=str(number),
                now=NOW,
            )
        return number, kept_order(book, order.id).content.title

    book: Book
    with open_book(address, now=NOW, wait_s=60) as book, ThreadPoolExecutor(WRITERS) as threads:
        titles = dict(threads.map(work_on_one, range(WRITERS * 2)))
    assert titles == {number: f"Blanket {number}" for number in range(WRITERS * 2)}
