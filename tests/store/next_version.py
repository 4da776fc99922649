"""A program that is one version ahead: its migrations are today's and one more."""

from __future__ import annotations

import shutil
from pathlib import Path

import pytest

from quoting.store import migrations, schema_version

NEXT = f"{int(schema_version.NEWEST) + 1:04}"

_STEP = """
import sqlalchemy as sa
from alembic import op

revision, down_revision, branch_labels, depends_on = {revision!r}, {before!r}, None, None

def upgrade():
    op.add_column("orders", sa.Column("colour_card", sa.Text))
    op.execute("UPDATE orders SET colour_card = 'none yet'")
    {further}
"""


def bring_program_ahead(patch: pytest.MonkeyPatch, folder: Path, further: str = "") -> None:
    """Make the program that of the next version, whose step does something further."""
    steps = folder / "100 % new steps"
    shutil.copytree(Path(migrations.__file__).parent, steps)
    text = _STEP.format(revision=NEXT, before=schema_version.NEWEST, further=further)
    (steps / "versions" / "next.py").write_text(text, "utf-8")
    patch.setattr(schema_version, "MIGRATIONS", str(steps).replace("%", "%%"))
    patch.setattr(schema_version, "NEWEST", NEXT)
