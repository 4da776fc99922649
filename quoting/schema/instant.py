"""The kind that is a moment: when something was done, which nobody types."""

from __future__ import annotations

from datetime import UTC, datetime

from quoting.core.ground.codes import MistakeCode
from quoting.core.ground.errors import refuse
from quoting.notation.marks import shown
from quoting.schema.kind import Leaf
from quoting.schema.notation import Notation
from quoting.schema.spot import Spot

YEARS = range(2, 9999)
"""Those whose moments every zone can tell: at the edges of the calendar some have no day."""


class Instant(Leaf[datetime]):
    """A moment with its zone, as ISO 8601 has it; kept in records and never typed."""

    stand_in = datetime.min.replace(tzinfo=UTC)

    def from_file(self, spot: Spot) -> datetime:
        """Return the moment of a text."""
        return self.from_typed(spot)

    def parse(self, text: str, notation: Notation) -> datetime:
        """Return the moment. Errors: `wrong-type`."""
        del notation
        moment = _read(text)
        if moment is None:
            raise refuse("", MistakeCode.WRONG_TYPE, read=shown(text), wanted="date")
        return moment

    def to_record(self, value: datetime) -> str:
        """Return the moment as text."""
        return value.isoformat()

    def show(self, value: datetime, notation: Notation) -> str:
        """Return the moment as text."""
        del notation
        return value.isoformat()


def _read(text: str) -> datetime | None:
    try:
        moment = datetime.fromisoformat(text.strip())
    except ValueError:
        return None
    return None if moment.tzinfo is None or moment.year not in YEARS else moment


INSTANT = Instant()
