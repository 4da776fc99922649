"""How a book is reached: a file through SQLite, or a server through psycopg."""

from __future__ import annotations

import sqlite3
import time
from contextlib import ExitStack
from pathlib import Path
from typing import Any

from sqlalchemy import URL, Connection, Engine, create_engine, event, make_url
from sqlalchemy.engine.interfaces import DBAPICursor
from sqlalchemy.exc import ArgumentError, NoSuchModuleError

from quoting.core.ground.codes import MistakeCode
from quoting.core.ground.errors import refuse

WAIT_S = 5.0
"""How long a save waits for another that is under way."""

_SERVER_SCHEME = "postgresql://"

_PRAGMAS = ("foreign_keys = ON", "synchronous = FULL", "fullfsync = ON")
"""A save is on the disk when it is acknowledged; `fullfsync` is what that takes on a Mac."""

_PAUSE_S = 0.02

WRITES = "writes"
"""The option of a connection whose transaction is to write."""


def is_server(address: str) -> bool:
    """Return whether an address is one of a server, rather than of a file.

    Errors: `not-a-book-address` of any other kind of server.
    """
    if "://" in address and not address.startswith(_SERVER_SCHEME):
        raise refuse("", MistakeCode.NOT_A_BOOK_ADDRESS, wanted=_SERVER_SCHEME)
    return "://" in address


def file_engine(path: Path, wait_s: float) -> Engine:
    """Return the engine of a book's file; its failures bear nothing of what it keeps."""
    url = URL.create("sqlite", database=str(path))
    engine = create_engine(url, connect_args={"timeout": wait_s}, hide_parameters=True)
    event.listen(engine, "connect", _prepare_file)
    event.listen(engine, "begin", _begin)
    return engine


def server_engine(address: str, wait_s: float) -> Engine:
    """Return the engine of a book on a server, whose failures bear nothing of what it keeps.

    Errors: `not-a-book-address`, `no-database-driver`.
    """
    wait = f"-c lock_timeout={round(wait_s * 1000)} -c synchronous_commit=on"
    try:
        url = make_url(address).set(drivername="postgresql+psycopg")
        asked = url.query.get("options", "")
        options = " ".join((asked if isinstance(asked, str) else " ".join(asked), wait)).strip()
        return create_engine(
            url.update_query_dict({"options": options}),
            pool_pre_ping=True,
            connect_args={"connect_timeout": 10},
            hide_parameters=True,
        )
    except (ArgumentError, ValueError):
        raise refuse("", MistakeCode.NOT_A_BOOK_ADDRESS, wanted=_SERVER_SCHEME) from None
    except (ImportError, NoSuchModuleError) as error:
        raise refuse("", MistakeCode.NO_DATABASE_DRIVER) from error


def _prepare_file(connection: sqlite3.Connection, record: Any) -> None:
    """Have every transaction begun and ended by name; the driver would begin some by itself.

    A file that is none of SQLite's shows itself here: then nobody else would close it.
    """
    del record
    connection.isolation_level = None
    with ExitStack() as undo:
        undo.callback(connection.close)
        for pragma in _PRAGMAS:
            connection.execute(f"PRAGMA {pragma}")
        undo.pop_all()


def _begin(connection: Connection) -> None:
    """Take the lock at once where something is to be written, not halfway through."""
    writes = connection.get_execution_options().get(WRITES)
    connection.exec_driver_sql("BEGIN IMMEDIATE" if writes else "BEGIN")


def keep_log_beside(cursor: DBAPICursor, wait_s: float) -> None:
    """Have writes go to a log beside the file, as soon as nobody else writes in it.

    SQLite reads how the file is kept before it changes it, and never waits to make a reader a
    writer: two that open one book at once would both be refused. Errors: sqlite3.OperationalError.
    """
    deadline = time.monotonic() + wait_s
    while time.monotonic() < deadline:
        try:
            return _ask_for_log(cursor)
        except sqlite3.OperationalError as error:
            if error.sqlite_errorcode != sqlite3.SQLITE_BUSY:
                raise
            time.sleep(_PAUSE_S)
    return _ask_for_log(cursor)


def _ask_for_log(cursor: DBAPICursor) -> None:
    cursor.execute("PRAGMA journal_mode = WAL")
