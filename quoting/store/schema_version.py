"""Which version a book's tables are of, and how an older one becomes the newest."""

from __future__ import annotations

import re
from collections.abc import Callable

from sqlalchemy import (
    Column,
    Connection,
    MetaData,
    PrimaryKeyConstraint,
    String,
    Table,
    insert,
    inspect,
    select,
)

from quoting.core.ground.codes import MistakeCode
from quoting.core.ground.errors import refuse
from quoting.store.tables import METADATA

NEWEST = "0004"
"""The version that this program keeps: the last of `migrations/versions`."""

MIGRATIONS = "quoting.store:migrations"
"""Where Alembic finds the steps."""

VERSION_TABLE = "quoting_version"
"""Where a book says its version; by this table a book is known from other programs' databases."""

_VERSIONS = Table(
    VERSION_TABLE,
    MetaData(),
    Column("version_num", String(32), nullable=False),
    PrimaryKeyConstraint("version_num", name=f"{VERSION_TABLE}_pkc"),
)
"""That table as Alembic makes it."""

_VERSION = re.compile(r"\d{4}")


def version_of(connection: Connection) -> str | None:
    """Return the version of a book, None where a database has nothing in it yet.

    Errors: `not-a-book`, `book-newer`.
    """
    tables = inspect(connection).get_table_names()
    if not tables:
        return None
    if VERSION_TABLE not in tables:
        raise refuse("", MistakeCode.NOT_A_BOOK)
    version = _kept_version(connection)
    if _VERSION.fullmatch(version) is None:
        raise refuse("", MistakeCode.NOT_A_BOOK)
    if version > NEWEST:
        raise refuse("", MistakeCode.BOOK_NEWER, read=version, wanted=NEWEST)
    return version


def _kept_version(connection: Connection) -> str:
    return str(connection.scalar(select(_VERSIONS.c.version_num)))


def bring_up_to_date(connection: Connection, before: Callable[[], object]) -> None:
    """Give a database the newest tables, within the connection's transaction.

    `before` is called where there is an older book to be changed. Errors: as `version_of`.
    """
    version = version_of(connection)
    if version is None:
        _begin(connection)
    elif version != NEWEST:
        before()
        take_steps(connection)


def _begin(connection: Connection) -> None:
    """Make the tables of today at once: Alembic takes its time to load, and the steps theirs."""
    for tables in (METADATA, _VERSIONS.metadata):
        tables.create_all(connection, checkfirst=False)
    connection.execute(insert(_VERSIONS).values(version_num=NEWEST))


def take_steps(connection: Connection) -> None:
    """Take every step that a database has still before it, from the first where it is empty."""
    from alembic import command
    from alembic.config import Config

    config = Config()
    config.set_main_option("script_location", MIGRATIONS)
    config.attributes["connection"] = connection
    command.upgrade(config, NEWEST)
