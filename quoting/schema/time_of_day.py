"""The kind of a time of the day, as it stands on a clock."""

from __future__ import annotations

import re
from datetime import time
from typing import ClassVar

from quoting.core.ground.codes import MistakeCode
from quoting.core.ground.errors import refuse
from quoting.core.ground.money import MINUTES_PER_HOUR
from quoting.notation.marks import shown
from quoting.schema.kind import Leaf
from quoting.schema.notation import Notation
from quoting.schema.spot import Spot

_WRITTEN = re.compile(r"(\d{1,2})[:.h]\s?(\d{2})\s*(?:([ap])\.?\s?m\.?)?", re.ASCII | re.IGNORECASE)
NOON, HOURS = 12, 24


class TimeOfDay(Leaf[time]):
    """Hours and minutes: `9:10`, `21.05`, `9:10 pm`."""

    mode: ClassVar[str] = "time"
    stand_in = time(NOON)

    def from_file(self, spot: Spot) -> time:
        """Return the time of a text."""
        return self.from_typed(spot)

    def parse(self, text: str, notation: Notation) -> time:
        """Return the time. Errors: `wrong-type`."""
        del notation
        read = _read(text)
        if read is None:
            raise refuse("", MistakeCode.WRONG_TYPE, read=shown(text), wanted="time")
        return read

    def to_record(self, value: time) -> str:
        """Return the time as text."""
        return f"{value:%H:%M}"

    def show(self, value: time, notation: Notation) -> str:
        """Return the time as a browser's own field has it."""
        del notation
        return f"{value:%H:%M}"


def _read(text: str) -> time | None:
    found = _WRITTEN.fullmatch(text.strip())
    if found is None:
        return None
    hour, minute, half = int(found[1]), int(found[2]), (found[3] or "").lower()
    if half and 1 <= hour <= NOON:
        hour = hour % NOON + (NOON if half == "p" else 0)
    elif half:
        return None
    return time(hour, minute) if hour < HOURS and minute < MINUTES_PER_HOUR else None


TIME_OF_DAY = TimeOfDay()
