"""The first book: what precedes a workshop, its versions, the shelf, orders, what was set aside.

The tables are written out here as they were then, whatever becomes of `tables.py`.
"""

from __future__ import annotations

import sqlalchemy as sa
from alembic import op

revision = "0001"
down_revision = None
branch_labels = None
depends_on = None

_PLAIN_SORTED = sa.Text().with_variant(sa.Text(collation="C"), "postgresql")
_MOMENT = sa.DateTime(timezone=True)


def upgrade() -> None:
    """Make the tables."""
    op.create_table(
        "workshop_versions",
        sa.Column("number", sa.Integer, autoincrement=False),
        sa.Column("saved_at", _MOMENT, nullable=False),
        sa.Column("brought_back", sa.Integer),
        sa.Column("record", sa.Text, nullable=False),
        sa.PrimaryKeyConstraint("number", name="pk_workshop_versions"),
        sa.ForeignKeyConstraint(
            ["brought_back"],
            ["workshop_versions.number"],
            name="fk_workshop_versions_brought_back",
        ),
    )
    _make_first_answers()
    op.create_table(
        "lots",
        sa.Column("id", sa.Integer),
        sa.Column("position", sa.Integer, nullable=False),
        sa.Column("yarn", sa.Text, nullable=False),
        sa.Column("colour", sa.Text, nullable=False),
        sa.Column("lot", sa.Text, nullable=False),
        sa.Column("grams", sa.Double, nullable=False),
        sa.PrimaryKeyConstraint("id", name="pk_lots"),
        sqlite_autoincrement=True,
    )
    _make_orders()
    op.create_table(
        "set_aside",
        sa.Column("order_id", sa.Integer, autoincrement=False),
        sa.Column("writer", sa.Text),
        sa.Column("from_revision", sa.Integer, nullable=False),
        sa.Column("kept_at", _MOMENT, nullable=False),
        sa.Column("typed", sa.Text, nullable=False),
        sa.PrimaryKeyConstraint("order_id", "writer", name="pk_set_aside"),
        sa.ForeignKeyConstraint(["order_id"], ["orders.id"], name="fk_set_aside_order_id"),
    )


def _make_first_answers() -> None:
    op.create_table(
        "first_answers",
        sa.Column("number", sa.Integer, autoincrement=False),
        sa.Column("asks", sa.Text, nullable=False),
        sa.Column("typed", sa.Text, nullable=False),
        sa.PrimaryKeyConstraint("number", name="pk_first_answers"),
    )


def _make_orders() -> None:
    op.create_table(
        "orders",
        sa.Column("id", sa.Integer),
        sa.Column("revision", sa.Integer, nullable=False),
        sa.Column("writer", sa.Text, nullable=False),
        sa.Column("stage", sa.Text, nullable=False),
        sa.Column("stage_before", sa.Text),
        sa.Column("created_at", _MOMENT, nullable=False),
        sa.Column("changed_at", _MOMENT, nullable=False),
        sa.Column("title", sa.Text, nullable=False),
        sa.Column("title_key", _PLAIN_SORTED, nullable=False),
        sa.Column("buyer", sa.Text, nullable=False),
        sa.Column("buyer_key", _PLAIN_SORTED, nullable=False),
        sa.Column("wanted_by", sa.Date),
        sa.Column("price", sa.Text),
        sa.Column("currency", sa.Text),
        sa.Column("earned_per_hour", sa.Text),
        sa.Column("hours", sa.Text),
        sa.Column("ready_by", sa.Date),
        sa.PrimaryKeyConstraint("id", name="pk_orders"),
        sqlite_autoincrement=True,
    )
    op.create_index("ix_orders_changed_at", "orders", ["changed_at"])
    op.create_table(
        "order_texts",
        sa.Column("order_id", sa.Integer, autoincrement=False),
        sa.Column("typed", sa.Text, nullable=False),
        sa.Column("record", sa.Text),
        sa.PrimaryKeyConstraint("order_id", name="pk_order_texts"),
        sa.ForeignKeyConstraint(["order_id"], ["orders.id"], name="fk_order_texts_order_id"),
    )
