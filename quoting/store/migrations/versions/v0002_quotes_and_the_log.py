"""Quotes that were given and agreed, the log of the making, and who may come in.

The tables are written out here as they were then, whatever becomes of `tables.py`.
"""

from __future__ import annotations

import sqlalchemy as sa
from alembic import op

revision = "0002"
down_revision = "0001"
branch_labels = None
depends_on = None

_MOMENT = sa.DateTime(timezone=True)


def upgrade() -> None:
    """Make the tables."""
    _make_quotes()
    op.create_table(
        "agreements",
        sa.Column("order_id", sa.Integer, autoincrement=False),
        sa.Column("quote_id", sa.Integer, nullable=False),
        sa.Column("agreed_at", _MOMENT, nullable=False),
        sa.PrimaryKeyConstraint("order_id", name="pk_agreements"),
        sa.ForeignKeyConstraint(["order_id"], ["orders.id"], name="fk_agreements_order_id"),
        sa.ForeignKeyConstraint(["quote_id"], ["quotes.id"], name="fk_agreements_quote_id"),
    )
    _make_log()
    op.create_table(
        "passphrase",
        sa.Column("number", sa.Integer, autoincrement=False),
        sa.Column("digest", sa.Text, nullable=False),
        sa.Column("set_at", _MOMENT, nullable=False),
        sa.Column("failures", sa.Integer, nullable=False),
        sa.Column("failed_at", _MOMENT),
        sa.PrimaryKeyConstraint("number", name="pk_passphrase"),
    )
    op.create_table(
        "sign_ins",
        sa.Column("token_digest", sa.Text),
        sa.Column("begun_at", _MOMENT, nullable=False),
        sa.Column("seen_at", _MOMENT, nullable=False),
        sa.PrimaryKeyConstraint("token_digest", name="pk_sign_ins"),
    )


def _make_quotes() -> None:
    op.create_table(
        "quotes",
        sa.Column("id", sa.Integer),
        sa.Column("order_id", sa.Integer, nullable=False),
        sa.Column("year", sa.Integer, nullable=False),
        sa.Column("running", sa.Integer, nullable=False),
        sa.Column("version", sa.Integer, nullable=False),
        sa.Column("given_at", _MOMENT, nullable=False),
        sa.Column("day", sa.Date, nullable=False),
        sa.Column("valid_until", sa.Date, nullable=False),
        sa.Column("revision", sa.Integer, nullable=False),
        sa.Column("workshop_version", sa.Integer, nullable=False),
        sa.Column("workshop", sa.Text, nullable=False),
        sa.Column("order_record", sa.Text, nullable=False),
        sa.Column("results", sa.Text, nullable=False),
        sa.Column("offer", sa.Text, nullable=False),
        sa.Column("page", sa.Text, nullable=False),
        sa.Column("program", sa.Text, nullable=False),
        sa.PrimaryKeyConstraint("id", name="pk_quotes"),
        sa.ForeignKeyConstraint(["order_id"], ["orders.id"], name="fk_quotes_order_id"),
        sa.ForeignKeyConstraint(
            ["workshop_version"],
            ["workshop_versions.number"],
            name="fk_quotes_workshop_version",
        ),
        sqlite_autoincrement=True,
    )
    op.create_index("ix_quotes_order_id", "quotes", ["order_id"])
    op.create_index("ix_quotes_year", "quotes", ["year", "running", "version"], unique=True)


def _make_log() -> None:
    op.create_table(
        "log",
        sa.Column("id", sa.Integer),
        sa.Column("order_id", sa.Integer, nullable=False),
        sa.Column("at", _MOMENT, nullable=False),
        sa.Column("kind", sa.Text, nullable=False),
        sa.Column("record", sa.Text, nullable=False),
        sa.Column("corrects", sa.Integer),
        sa.PrimaryKeyConstraint("id", name="pk_log"),
        sa.ForeignKeyConstraint(["order_id"], ["orders.id"], name="fk_log_order_id"),
        sa.ForeignKeyConstraint(["corrects"], ["log.id"], name="fk_log_corrects"),
        sqlite_autoincrement=True,
    )
    op.create_index("ix_log_order_id", "log", ["order_id"])
    op.create_table(
        "clocks",
        sa.Column("order_id", sa.Integer, autoincrement=False),
        sa.Column("started_at", _MOMENT, nullable=False),
        sa.PrimaryKeyConstraint("order_id", name="pk_clocks"),
        sa.ForeignKeyConstraint(["order_id"], ["orders.id"], name="fk_clocks_order_id"),
    )
