"""The door: whom the passphrase lets in, for how long, and how it waits for who misses it."""

from __future__ import annotations

from datetime import datetime, timedelta
from pathlib import Path

import pytest
from sqlalchemy import select

from quoting.core.ground.codes import MistakeCode
from quoting.store.backups import back_up
from quoting.store.book import Book, open_book
from quoting.store.door import (
    IDLE,
    LONGEST,
    MOST_WAIT_S,
    LetIn,
    Missed,
    Standing,
    TooSoon,
    end_sign_in,
    has_passphrase,
    remove_passphrase,
    set_passphrase,
    standing_of,
    try_passphrase,
    wait_after,
)
from quoting.store.restoring import restore
from quoting.store.tables import PASSPHRASE, SIGN_INS
from tests.store.moments import NOW, later
from tests.store.refusals import refused

SECOND = timedelta(seconds=1)
RIGHT, WRONG = "three otters under a gate", "three otters over a gate"


@pytest.fixture(autouse=True)
def _quick(monkeypatch: pytest.MonkeyPatch) -> None:
    """Take little time for each passphrase, of which there are many here."""
    monkeypatch.setattr("quoting.store.passphrases.SCRYPT", "scrypt:256:8:1")


def set_up(book: Book, passphrase: str = RIGHT, now: datetime = NOW) -> None:
    set_passphrase(book, passphrase, maker="Ottermoor Blankets", now=now)


def let_in(book: Book, now: datetime = NOW) -> str:
    tried = try_passphrase(book, RIGHT, now=now)
    assert isinstance(tried, LetIn)
    return tried.token


def test_without_a_passphrase_the_door_is_open(book: Book) -> None:
    assert not has_passphrase(book)
    assert standing_of(book, None, now=NOW) is Standing.OPEN
    assert refused(lambda: try_passphrase(book, RIGHT, now=NOW)) == MistakeCode.NO_PASSPHRASE


def test_the_passphrase_lets_in_and_another_does_not(book: Book) -> None:
    set_up(book)
    assert standing_of(book, None, now=NOW) is Standing.OUTSIDE
    assert standing_of(book, "a guess", now=NOW) is Standing.OUTSIDE
    token = let_in(book)
    assert standing_of(book, token, now=later(hours=1)) is Standing.INSIDE
    assert isinstance(try_passphrase(book, WRONG, now=later(hours=1)), Missed)


def test_neither_the_passphrase_nor_a_token_stands_in_the_book(book: Book) -> None:
    set_up(book)
    token = let_in(book)
    with book.reading() as connection:
        kept = connection.execute(select(PASSPHRASE.c.digest)).scalar_one()
        digest = connection.execute(select(SIGN_INS.c.token_digest)).scalar_one()
    assert kept.startswith("scrypt:")
    assert RIGHT not in kept
    assert token != digest


def test_spaces_around_it_and_the_way_its_signs_are_composed_do_not_matter(book: Book) -> None:
    set_up(book, "a caf\u00e9 on the moor road")
    tried = try_passphrase(book, " a cafe\u0301 on the moor road ", now=NOW)
    assert isinstance(tried, LetIn)


def test_a_sign_in_that_nobody_uses_ends_after_a_week(book: Book) -> None:
    set_up(book)
    token = let_in(book)
    used = later(days=6)
    assert standing_of(book, token, now=used) is Standing.INSIDE
    assert standing_of(book, token, now=used + IDLE - SECOND) is Standing.INSIDE
    assert standing_of(book, token, now=used + IDLE + IDLE) is Standing.OUTSIDE


def test_a_sign_in_ends_after_a_month_however_much_it_is_used(book: Book) -> None:
    set_up(book)
    token = let_in(book)
    for day in range(LONGEST.days):
        assert standing_of(book, token, now=later(days=day)) is Standing.INSIDE
    assert standing_of(book, token, now=NOW + LONGEST - SECOND) is Standing.INSIDE
    assert standing_of(book, token, now=NOW + LONGEST) is Standing.OUTSIDE


def test_one_that_ended_is_not_kept_beyond_the_next(book: Book) -> None:
    set_up(book)
    let_in(book)
    let_in(book, later(days=40))
    with book.reading() as connection:
        assert len(connection.execute(select(SIGN_INS)).all()) == 1


def test_a_token_from_before_a_sign_out_is_nobodys(book: Book) -> None:
    set_up(book)
    token, other = let_in(book), let_in(book)
    end_sign_in(book, token)
    assert standing_of(book, token, now=NOW) is Standing.OUTSIDE
    assert standing_of(book, other, now=NOW) is Standing.INSIDE


@pytest.mark.parametrize("new", [RIGHT, "four kettles on a windowsill"])
def test_a_passphrase_that_is_set_ends_every_sign_in(book: Book, new: str) -> None:
    set_up(book)
    token = let_in(book)
    set_up(book, new, later(hours=1))
    assert standing_of(book, token, now=later(hours=1)) is Standing.OUTSIDE


def test_one_that_is_taken_away_is_asked_no_more_and_its_sign_ins_do_not_come_back(
    book: Book,
) -> None:
    set_up(book)
    token = let_in(book)
    remove_passphrase(book)
    assert standing_of(book, token, now=NOW) is Standing.OPEN
    set_up(book)
    assert standing_of(book, token, now=NOW) is Standing.OUTSIDE


def test_what_does_not_serve_leaves_the_passphrase_and_the_sign_ins_as_they_were(
    book: Book,
) -> None:
    set_up(book)
    token = let_in(book)
    assert refused(lambda: set_up(book, "too short")) == MistakeCode.PASSPHRASE_SHORT
    assert standing_of(book, token, now=NOW) is Standing.INSIDE


def test_each_miss_doubles_the_wait_up_to_a_quarter_of_an_hour() -> None:
    waits = [wait_after(misses) for misses in range(13)]
    assert waits == [0, 1, 2, 4, 8, 16, 32, 64, 128, 256, 512, 900, 900]
    assert wait_after(10**6) == MOST_WAIT_S


def test_a_try_before_the_wait_is_over_is_not_looked_at_and_does_not_count(
    book: Book, monkeypatch: pytest.MonkeyPatch
) -> None:
    set_up(book)
    assert try_passphrase(book, WRONG, now=NOW) == Missed(wait_s=1)
    assert try_passphrase(book, WRONG, now=later(seconds=1)) == Missed(wait_s=2)
    with monkeypatch.context() as patched:
        patched.setattr("quoting.store.door.is_passphrase", lambda *_: pytest.fail("looked at"))
        for passphrase in (RIGHT, WRONG):
            soon = try_passphrase(book, passphrase, now=later(seconds=2))
            assert soon == TooSoon(wait_s=1, misses=2)
    assert isinstance(try_passphrase(book, RIGHT, now=later(seconds=3)), LetIn)


def test_a_thousand_wrong_tries_do_not_keep_the_right_one_out_for_longer_than_the_most(
    book: Book,
) -> None:
    set_up(book)
    for tenth in range(1000):
        try_passphrase(book, WRONG, now=later(seconds=tenth / 10))
    last = later(seconds=100)
    soon = try_passphrase(book, RIGHT, now=last)
    assert isinstance(soon, TooSoon)
    assert soon.misses == 7  # at 0, 1, 3, 7, 15, 31 and 63 seconds: the others were not looked at
    assert soon.wait_s <= MOST_WAIT_S
    token = let_in(book, last + timedelta(seconds=soon.wait_s))
    assert standing_of(book, token, now=last + timedelta(hours=1)) is Standing.INSIDE


def test_the_right_one_begins_the_waits_anew(book: Book) -> None:
    set_up(book)
    for hour in range(4):
        try_passphrase(book, WRONG, now=later(hours=hour))
    let_in(book, later(hours=5))
    assert try_passphrase(book, WRONG, now=later(hours=6)) == Missed(wait_s=1)


def test_a_restart_does_not_end_the_wait(address: str) -> None:
    with open_book(address, now=NOW) as book:
        set_up(book)
        try_passphrase(book, WRONG, now=NOW)
    with open_book(address, now=NOW) as book:
        assert isinstance(try_passphrase(book, RIGHT, now=NOW), TooSoon)


def test_a_miss_counts_before_it_is_looked_at(book: Book, monkeypatch: pytest.MonkeyPatch) -> None:
    set_up(book)

    def meanwhile(*_: str) -> bool:
        assert isinstance(try_passphrase(book, RIGHT, now=NOW), TooSoon)
        return False

    monkeypatch.setattr("quoting.store.door.is_passphrase", meanwhile)
    assert try_passphrase(book, WRONG, now=NOW) == Missed(wait_s=1)


def test_a_clock_that_was_put_back_keeps_nobody_out(book: Book) -> None:
    set_up(book)
    try_passphrase(book, WRONG, now=later(days=900))
    assert isinstance(try_passphrase(book, RIGHT, now=NOW), LetIn)


def test_who_tries_while_another_passphrase_is_set_is_not_let_in_by_the_old_one(
    book: Book, monkeypatch: pytest.MonkeyPatch
) -> None:
    set_up(book)

    def meanwhile(*_: str) -> bool:
        set_up(book, "four kettles on a windowsill")
        return True

    monkeypatch.setattr("quoting.store.door.is_passphrase", meanwhile)
    assert isinstance(try_passphrase(book, RIGHT, now=NOW), Missed)


def test_a_restore_brings_no_sign_in_back(tmp_path: Path) -> None:
    path, copy = tmp_path / "book.db", tmp_path / "copy.db"
    with open_book(str(path), now=NOW) as book:
        set_up(book)
        token = let_in(book)
        back_up(book, copy)
        end_sign_in(book, token)
    restore(str(path), copy, now=NOW)
    with open_book(str(path), now=NOW) as book:
        assert has_passphrase(book)
        assert standing_of(book, token, now=NOW) is Standing.OUTSIDE
