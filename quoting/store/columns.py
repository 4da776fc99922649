"""Kinds of column that keep a value exactly on every database."""

from __future__ import annotations

from datetime import UTC, datetime
from decimal import Decimal
from typing import Any

from sqlalchemy import DateTime, Text
from sqlalchemy.engine import Dialect
from sqlalchemy.types import TypeDecorator


class ExactNumber(TypeDecorator[Decimal]):
    """A decimal number as its digits: a number column of SQLite would make a float of it."""

    impl = Text
    cache_ok = True

    def process_bind_param(self, value: Decimal | None, dialect: Dialect) -> str | None:
        """Return the digits."""
        del dialect
        return None if value is None else str(value)

    def process_result_value(self, value: Any, dialect: Dialect) -> Decimal | None:
        """Return the number."""
        del dialect
        return None if value is None else Decimal(value)


class Moment(TypeDecorator[datetime]):
    """A moment, kept and given back in UTC; one without a zone is nobody's."""

    impl = DateTime(timezone=True)
    cache_ok = True

    def process_bind_param(self, value: datetime | None, dialect: Dialect) -> datetime | None:
        """Return the moment in UTC, without its zone where the database has none."""
        if value is None:
            return None
        if value.tzinfo is None:
            raise ValueError("a moment has a zone")
        in_utc = value.astimezone(UTC)
        return in_utc.replace(tzinfo=None) if dialect.name == "sqlite" else in_utc

    def process_result_value(self, value: Any, dialect: Dialect) -> datetime | None:
        """Return the moment."""
        if value is None:
            return None
        moment: datetime = value.replace(tzinfo=UTC) if dialect.name == "sqlite" else value
        return moment.astimezone(UTC)


PLAIN_SORTED = Text().with_variant(Text(collation="C"), "postgresql")
"""A text that every database sorts in the same way, by its characters."""
