"""The number of a quote that was given: its year, a running number, and which version it is."""

from __future__ import annotations

import re
from dataclasses import dataclass

from quoting.core.ground.errors import Checks

_WRITTEN = re.compile(r"(\d{4})-(\d{3,9})(?:/(\d{1,6}))?", re.ASCII)


@dataclass(frozen=True, slots=True, order=True)
class GivenNumber:
    """`2026-014`, and `2026-014/2` for its second version; each counts from 1."""

    year: int
    running: int
    version: int = 1

    def __post_init__(self) -> None:
        checks = Checks()
        checks.number("year", self.year, least=1, most=9999)
        checks.number("running", self.running, least=1)
        checks.number("version", self.version, least=1)
        checks.done()

    def __str__(self) -> str:
        """Return the number as it is printed."""
        return self.base if self.version == 1 else f"{self.base}/{self.version}"

    @property
    def base(self) -> str:
        """The number that all versions share."""
        return f"{self.year:04}-{self.running:03}"


def read_number(text: str) -> GivenNumber | None:
    """Return the number that is written so, None where it is none."""
    found = _WRITTEN.fullmatch(text.strip())
    if found is None:
        return None
    year, running, version = (int(part) for part in found.groups(default="1"))
    return GivenNumber(year, running, version) if year and running and version else None
