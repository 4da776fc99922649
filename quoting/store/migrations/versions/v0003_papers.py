"""The papers of orders, and keys for what their buyers read.

The table is written out here as it was then, whatever becomes of `tables.py`.
"""

from __future__ import annotations

import sqlalchemy as sa
from alembic import op

revision = "0003"
down_revision = "0002"
branch_labels = None
depends_on = None


def upgrade() -> None:
    """Make the table."""
    op.create_table(
        "papers",
        sa.Column("id", sa.Integer),
        sa.Column("order_id", sa.Integer, nullable=False),
        sa.Column("kind", sa.Text, nullable=False),
        sa.Column("year", sa.Integer, nullable=False),
        sa.Column("running", sa.Integer, nullable=False),
        sa.Column("day", sa.Date, nullable=False),
        sa.Column("made_at", sa.DateTime(timezone=True), nullable=False),
        sa.Column("record", sa.Text, nullable=False),
        sa.PrimaryKeyConstraint("id", name="pk_papers"),
        sa.ForeignKeyConstraint(["order_id"], ["orders.id"], name="fk_papers_order_id"),
        sqlite_autoincrement=True,
    )
    op.create_index("ix_papers_order_id", "papers", ["order_id"])
    op.create_index("ix_papers_kind", "papers", ["kind", "year", "running"], unique=True)
