"""Keys for blankets that are not plain rows: the tables stay, an older program cannot read them."""

from __future__ import annotations

revision = "0004"
down_revision = "0003"
branch_labels = None
depends_on = None


def upgrade() -> None:
    """Change nothing: what is new stands in the records."""
