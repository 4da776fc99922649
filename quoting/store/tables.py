"""The tables of the book as they are now; `migrations` says how they came to be so."""

from __future__ import annotations

from sqlalchemy import (
    Column,
    Date,
    Double,
    ForeignKey,
    Index,
    Integer,
    MetaData,
    Table,
    Text,
)

from quoting.store.columns import PLAIN_SORTED, ExactNumber, Moment

METADATA = MetaData(
    naming_convention={
        "pk": "pk_%(table_name)s",
        "fk": "fk_%(table_name)s_%(column_0_name)s",
        "ix": "ix_%(table_name)s_%(column_0_name)s",
    }
)

WORKSHOP_VERSIONS = Table(
    "workshop_versions",
    METADATA,
    Column("number", Integer, primary_key=True, autoincrement=False),
    Column("saved_at", Moment, nullable=False),
    Column("brought_back", Integer, ForeignKey("workshop_versions.number")),
    Column("record", Text, nullable=False),
)
"""Each version of the workshop, whole; numbered from 1, and never changed."""

FIRST_ANSWERS = Table(
    "first_answers",
    METADATA,
    Column("number", Integer, primary_key=True, autoincrement=False),
    Column("asks", Text, nullable=False),
    Column("typed", Text, nullable=False),
)
"""What was typed before there is a workshop, and which question comes next: one row or none."""

LOTS = Table(
    "lots",
    METADATA,
    Column("id", Integer, primary_key=True),
    Column("position", Integer, nullable=False),
    Column("yarn", Text, nullable=False),
    Column("colour", Text, nullable=False),
    Column("lot", Text, nullable=False),
    Column("grams", Double, nullable=False),
    sqlite_autoincrement=True,
)
"""The shelf as it is now, in the order that the workshop lists it."""

ORDERS = Table(
    "orders",
    METADATA,
    Column("id", Integer, primary_key=True),
    Column("revision", Integer, nullable=False),
    Column("writer", Text, nullable=False),
    Column("stage", Text, nullable=False),
    Column("stage_before", Text),
    Column("created_at", Moment, nullable=False),
    Column("changed_at", Moment, nullable=False),
    Column("title", Text, nullable=False),
    Column("title_key", PLAIN_SORTED, nullable=False),
    Column("buyer", Text, nullable=False),
    Column("buyer_key", PLAIN_SORTED, nullable=False),
    Column("wanted_by", Date),
    Column("price", ExactNumber),
    Column("currency", Text),
    Column("earned_per_hour", ExactNumber),
    Column("hours", ExactNumber),
    Column("ready_by", Date),
    sqlite_autoincrement=True,
)
"""Each order as lists show it; `title_key` and `buyer_key` are what is searched and sorted by."""

Index(None, ORDERS.c.changed_at)

ORDER_TEXTS = Table(
    "order_texts",
    METADATA,
    Column("order_id", Integer, ForeignKey("orders.id"), primary_key=True, autoincrement=False),
    Column("typed", Text, nullable=False),
    Column("record", Text),
)
"""What was typed of each order, and its record: apart, for a list need not wade through them."""

SET_ASIDE = Table(
    "set_aside",
    METADATA,
    Column("order_id", Integer, ForeignKey("orders.id"), primary_key=True, autoincrement=False),
    Column("writer", Text, primary_key=True),
    Column("from_revision", Integer, nullable=False),
    Column("kept_at", Moment, nullable=False),
    Column("typed", Text, nullable=False),
)
"""What was typed into an order that somebody else had changed meanwhile, by who typed it."""

QUOTES = Table(
    "quotes",
    METADATA,
    Column("id", Integer, primary_key=True),
    Column("order_id", Integer, ForeignKey("orders.id"), nullable=False),
    Column("year", Integer, nullable=False),
    Column("running", Integer, nullable=False),
    Column("version", Integer, nullable=False),
    Column("given_at", Moment, nullable=False),
    Column("day", Date, nullable=False),
    Column("valid_until", Date, nullable=False),
    Column("revision", Integer, nullable=False),
    Column("workshop_version", Integer, ForeignKey("workshop_versions.number"), nullable=False),
    Column("workshop", Text, nullable=False),
    Column("order_record", Text, nullable=False),
    Column("results", Text, nullable=False),
    Column("offer", Text, nullable=False),
    Column("page", Text, nullable=False),
    Column("program", Text, nullable=False),
    sqlite_autoincrement=True,
)
"""Each quote that was given, whole and never changed: `year` and `running` are its number.

`workshop` is the workshop that it was reckoned with, its shelf and its exchange rates included;
`revision` that of the order; `page` what the buyer was sent.
"""

Index(None, QUOTES.c.order_id)
Index(None, QUOTES.c.year, QUOTES.c.running, QUOTES.c.version, unique=True)

AGREEMENTS = Table(
    "agreements",
    METADATA,
    Column("order_id", Integer, ForeignKey("orders.id"), primary_key=True, autoincrement=False),
    Column("quote_id", Integer, ForeignKey("quotes.id"), nullable=False),
    Column("agreed_at", Moment, nullable=False),
)
"""Which quote an order was agreed by, and since when it waits for its turn."""

LOG = Table(
    "log",
    METADATA,
    Column("id", Integer, primary_key=True),
    Column("order_id", Integer, ForeignKey("orders.id"), nullable=False),
    Column("at", Moment, nullable=False),
    Column("kind", Text, nullable=False),
    Column("record", Text, nullable=False),
    Column("corrects", Integer, ForeignKey("log.id")),
    sqlite_autoincrement=True,
)
"""What happened to orders, one thing a row; only added to: a correction is a further row."""

Index(None, LOG.c.order_id)

PAPERS = Table(
    "papers",
    METADATA,
    Column("id", Integer, primary_key=True),
    Column("order_id", Integer, ForeignKey("orders.id"), nullable=False),
    Column("kind", Text, nullable=False),
    Column("year", Integer, nullable=False),
    Column("running", Integer, nullable=False),
    Column("day", Date, nullable=False),
    Column("made_at", Moment, nullable=False),
    Column("record", Text, nullable=False),
    sqlite_autoincrement=True,
)
"""Each paper of an order, never changed: `year` and `running` are its number among its kind.

`record` has all that it says, as facts.
"""

Index(None, PAPERS.c.order_id)
Index(None, PAPERS.c.kind, PAPERS.c.year, PAPERS.c.running, unique=True)

CLOCKS = Table(
    "clocks",
    METADATA,
    Column("order_id", Integer, ForeignKey("orders.id"), primary_key=True, autoincrement=False),
    Column("started_at", Moment, nullable=False),
)
"""The clock that runs for an order: one or none, whatever pages are open."""

PASSPHRASE = Table(
    "passphrase",
    METADATA,
    Column("number", Integer, primary_key=True, autoincrement=False),
    Column("digest", Text, nullable=False),
    Column("set_at", Moment, nullable=False),
    Column("failures", Integer, nullable=False),
    Column("failed_at", Moment),
)
"""What lets a maker in from other computers, as its digest; how often it was missed of late."""

SIGN_INS = Table(
    "sign_ins",
    METADATA,
    Column("token_digest", Text, primary_key=True),
    Column("begun_at", Moment, nullable=False),
    Column("seen_at", Moment, nullable=False),
)
"""Browsers that were let in and have not been shown out, by the digest of what they bear."""
