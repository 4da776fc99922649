"""The door of the book: its passphrase, who was let in, and how long the next try has to wait."""

from __future__ import annotations

import hashlib
import secrets
from contextlib import suppress
from dataclasses import dataclass
from datetime import datetime, timedelta
from enum import StrEnum
from typing import Any

from sqlalchemy import Connection, Row, delete, insert, select, update

from quoting.core.ground.codes import MistakeCode
from quoting.core.ground.errors import Refused, refuse
from quoting.store.book import Book
from quoting.store.passphrases import check_passphrase, digest_of, is_passphrase
from quoting.store.tables import PASSPHRASE, SIGN_INS

LONGEST = timedelta(days=30)
"""After which a sign-in ends, however much it is used."""

IDLE = timedelta(days=7)
"""After which one ends that nobody uses."""

SEEN_EVERY = timedelta(minutes=10)
"""How often it is written down that one is used: not at each page, as each write is a save."""

FIRST_WAIT_S, MOST_WAIT_S = 1, 15 * 60
"""What follows a first wrong passphrase, doubled by each further one up to the most."""


class Standing(StrEnum):
    """How whoever asks for a page stands at the door, which is open where none is asked."""

    OPEN = "open"
    OUTSIDE = "outside"
    INSIDE = "inside"


@dataclass(frozen=True, slots=True, kw_only=True)
class LetIn:
    """The right passphrase was given; the browser bears the `token` from now on."""

    token: str


@dataclass(frozen=True, slots=True, kw_only=True)
class Missed:
    """Another passphrase was given; the next is looked at after so many seconds."""

    wait_s: float


@dataclass(frozen=True, slots=True, kw_only=True)
class TooSoon:
    """What was given was not looked at, as so many seconds are still to wait since a miss.

    `misses` is how many there were since the door last opened.
    """

    wait_s: float
    misses: int


def set_passphrase(book: Book, passphrase: str, *, maker: str, now: datetime) -> None:
    """Have a passphrase asked from now on, and end every sign-in.

    Errors: as `check_passphrase` and `Book.writing`; then all is as it was.
    """
    check_passphrase(passphrase, maker)
    row = {"number": 1, "digest": digest_of(passphrase), "set_at": now, "failures": 0}
    with book.writing() as connection:
        _clear(connection)
        connection.execute(insert(PASSPHRASE).values(**row))


def remove_passphrase(book: Book) -> None:
    """Have no passphrase asked any more. Errors: as `Book.writing`."""
    with book.writing() as connection:
        _clear(connection)


def has_passphrase(book: Book) -> bool:
    """Return whether a passphrase is asked. Errors: as `Book.reading`."""
    with book.reading() as connection:
        return _kept(connection) is not None


def standing_of(book: Book, token: str | None, *, now: datetime) -> Standing:
    """Return how the bearer of a token stands, which counts as using it.

    Errors: as `Book.reading`.
    """
    with book.reading() as connection:
        if _kept(connection) is None:
            return Standing.OPEN
        row = None if token is None else _sign_in(connection, token)
    if row is None or _has_ended(row, now):
        return Standing.OUTSIDE
    if now - row.seen_at >= SEEN_EVERY:
        with suppress(Refused), book.writing() as connection:  # a full disk shuts nobody out
            used = update(SIGN_INS).where(SIGN_INS.c.token_digest == row.token_digest)
            connection.execute(used.values(seen_at=now))
    return Standing.INSIDE


def try_passphrase(book: Book, passphrase: str, *, now: datetime) -> LetIn | Missed | TooSoon:
    """Let in whoever has the passphrase, unless a miss before makes her wait.

    A try counts as a miss before it is looked at, and in the book: neither many tries at once nor
    a restart of the program comes round the wait. Errors: `no-passphrase`; as `Book.writing`.
    """
    with book.reading() as connection:
        soon = _too_soon(_asked(connection), now)
    if soon is not None:
        return soon
    with book.writing() as connection:
        kept = _asked(connection)
        soon = _too_soon(kept, now)
        if soon is not None:
            return soon
        connection.execute(update(PASSPHRASE).values(failures=kept.failures + 1, failed_at=now))
    if is_passphrase(passphrase, kept.digest):
        token = _let_in(book, kept.digest, now)
        if token is not None:
            return LetIn(token=token)
    return Missed(wait_s=wait_after(kept.failures + 1))


def end_sign_in(book: Book, token: str) -> None:
    """Let in nobody by a token any more. Errors: as `Book.writing`."""
    with book.writing() as connection:
        connection.execute(delete(SIGN_INS).where(SIGN_INS.c.token_digest == _digest(token)))


def wait_after(misses: int) -> int:
    """Return how many seconds the next try waits after so many misses in a row."""
    doublings = min(misses - 1, MOST_WAIT_S.bit_length())  # more would only make it a long number
    return min(FIRST_WAIT_S << doublings, MOST_WAIT_S) if misses else 0


def _too_soon(kept: Row[Any], now: datetime) -> TooSoon | None:
    """Return how long is still to wait, None where a try is looked at.

    After a miss that lies ahead, by a clock that was put back since, nobody waits.
    """
    if kept.failed_at is None or kept.failed_at > now:
        return None
    wait_s = wait_after(kept.failures) - (now - kept.failed_at).total_seconds()
    return TooSoon(wait_s=wait_s, misses=kept.failures) if wait_s > 0 else None


def _let_in(book: Book, digest: str, now: datetime) -> str | None:
    """Return a new token, None where the passphrase has been changed meanwhile."""
    token = secrets.token_urlsafe(32)
    with book.writing() as connection:
        kept = _kept(connection)
        if kept is None or kept.digest != digest:
            return None
        connection.execute(update(PASSPHRASE).values(failures=0, failed_at=None))
        ended = (SIGN_INS.c.begun_at <= now - LONGEST) | (SIGN_INS.c.seen_at <= now - IDLE)
        connection.execute(delete(SIGN_INS).where(ended))
        row = {"token_digest": _digest(token), "begun_at": now, "seen_at": now}
        connection.execute(insert(SIGN_INS).values(**row))
    return token


def _asked(connection: Connection) -> Row[Any]:
    kept = _kept(connection)
    if kept is None:
        raise refuse("", MistakeCode.NO_PASSPHRASE)
    return kept


def _kept(connection: Connection) -> Row[Any] | None:
    return connection.execute(select(PASSPHRASE)).one_or_none()


def _sign_in(connection: Connection, token: str) -> Row[Any] | None:
    its = select(SIGN_INS).where(SIGN_INS.c.token_digest == _digest(token))
    return connection.execute(its).one_or_none()


def _has_ended(sign_in: Row[Any], now: datetime) -> bool:
    return bool(now - sign_in.begun_at >= LONGEST or now - sign_in.seen_at >= IDLE)


def _clear(connection: Connection) -> None:
    for table in (PASSPHRASE, SIGN_INS):
        connection.execute(delete(table))


def _digest(token: str) -> str:
    """Return what is kept of a token: who reads the book cannot come in by it."""
    return hashlib.sha256(token.encode()).hexdigest()
