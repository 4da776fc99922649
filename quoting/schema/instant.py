"""The kind that is a moment: when something was done, which nobody types."""

from __future__ import annotations

from datetime import UTC, datetime

from quoting.core.ground.codes import MistakeCode
from quoting.core.ground.errors import refuse
from quoting.notation.marks import shown
from quoting.schema.kind import Leaf
from quoting.schema.notation import Notation
from quoting.schema.spot import Spot


class Instant(Leaf[datetime]):
    """A moment with its zone, as ISO 8601 has it; kept in records and never typed."""

    stand_in = datetime.min.replace(tzinfo=UTC)

    def from_file(self, spot: Spot) -> datetime:
        """Return the moment of a text."""
        return self.from_typed(spot)

    def parse(self, text: str, notation: Notation) -> datetime:
        """Return the moment. Errors: `wrong-type`."""
        del notation
        try:
            return datetime.fromisoformat(text.strip())
        except ValueError:
            raise refuse("", MistakeCode.WRONG_TYPE, read=shown(text), wanted="date") from None

    def to_record(self, value: datetime) -> str:
        """Return the moment as text."""
        return value.isoformat()

    def show(self, value: datetime, notation: Notation) -> str:
        """Return the moment as text."""
        del notation
        return value.isoformat()


INSTANT = Instant()
