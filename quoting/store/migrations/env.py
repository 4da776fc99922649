"""Run by Alembic: takes the steps on the connection that the program hands it."""

from __future__ import annotations

from alembic import context

from quoting.store.schema_version import VERSION_TABLE
from quoting.store.tables import METADATA

context.configure(
    connection=context.config.attributes["connection"],
    target_metadata=METADATA,
    version_table=VERSION_TABLE,
)
with context.begin_transaction():
    context.run_migrations()
