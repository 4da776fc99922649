"""Many who write at once: nothing is lost, and no number is given twice or left out."""

from __future__ import annotations

import os
import sqlite3
import sys
from concurrent.futures import ThreadPoolExecutor
from contextlib import ExitStack, closing
from pathlib import Path
from subprocess import PIPE, Popen
from threading import Timer
from typing import IO

import pytest

from quoting.store.book import Book, open_book
from quoting.store.engines import file_engine, keep_log_beside
from quoting.store.orders import create_order, kept_order, save_order
from quoting.store.workshops import save_workshop, workshop_versions
from tests.examples import sample_workshop
from tests.store.contents import half
from tests.store.moments import NOW
from tests.store.saver_to_kill import ROOT

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


def test_two_hundred_quotes_of_four_processes_have_two_hundred_numbers(address: str) -> None:
    each = 50
    with open_book(address, now=NOW) as book:
        save_workshop(book, sample_workshop(), now=NOW)
        for _ in range(WRITERS * each):
            create_order(book, half(), now=NOW)
    told = said_at_once("giver", address, each)
    assert [len(numbers) for numbers in told] == [each] * WRITERS
    assert sorted(number for numbers in told for number in numbers) == [
        f"2026-{number:03}" for number in range(1, WRITERS * each + 1)
    ]


def test_papers_of_four_processes_are_numbered_without_a_gap_each_kind_by_itself(
    address: str,
) -> None:
    with open_book(address, now=NOW) as book:
        for _ in range(WRITERS * EACH):
            create_order(book, half(), now=NOW)
    told = [number for numbers in said_at_once("paper_maker", address, EACH) for number in numbers]
    assert sorted(told) == [
        f"{kind}:2026-{number:03}"
        for kind in ("batch", "bill")
        for number in range(1, WRITERS * EACH + 1)
    ]


def said_at_once(program: str, address: str, each: int) -> list[list[str]]:
    """Return the words of four programs that begin at once, each with so many orders."""
    with ExitStack() as ended:
        started = [
            ended.enter_context(giver(program, address, first, first + each - 1))
            for first in range(1, WRITERS * each, each)
        ]
        assert [from_giver(one).readline() for one in started] == ["ready\n"] * WRITERS
        for one in started:
            assert one.stdin is not None
            one.stdin.write("begin\n")
            one.stdin.flush()
        return [from_giver(one).read().split() for one in started]


def giver(program: str, address: str, first: int, last: int) -> Popen[str]:
    """Start a program that gives the numbers of so many orders."""
    argv = [sys.executable, "-m", f"tests.store.{program}", address, str(first), str(last)]
    where = os.environ | {"PYTHONPATH": str(ROOT)}
    return Popen(argv, stdin=PIPE, stdout=PIPE, text=True, cwd=ROOT, env=where)


def from_giver(one: Popen[str]) -> IO[str]:
    assert one.stdout is not None
    return one.stdout


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
