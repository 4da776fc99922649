"""What the charts are given: names, amounts to draw, and the same amounts as words."""

from __future__ import annotations

from dataclasses import dataclass
from decimal import Decimal


@dataclass(frozen=True, slots=True, kw_only=True)
class Part:
    """One part of a bar: what it pays for, how much, and that in words."""

    what: str
    amount: Decimal
    label: str


@dataclass(frozen=True, slots=True, kw_only=True)
class StackedBar:
    """A bar of parts that add up to its total; a part below nothing is a loss."""

    name: str
    parts: tuple[Part, ...]
    label: str

    @property
    def total(self) -> Decimal:
        """The parts together."""
        return sum((part.amount for part in self.parts), Decimal(0))

    @property
    def gained(self) -> Decimal:
        """The parts above nothing together."""
        return sum((part.amount for part in self.parts if part.amount > 0), Decimal(0))

    @property
    def lost(self) -> Decimal:
        """The parts below nothing together, not above nothing."""
        return sum((part.amount for part in self.parts if part.amount < 0), Decimal(0))


@dataclass(frozen=True, slots=True, kw_only=True)
class Bar:
    """A bar of one amount, and that in words. `level` is its own, where it is not that of all."""

    name: str
    amount: Decimal
    label: str
    level: Decimal | None = None


@dataclass(frozen=True, slots=True, kw_only=True)
class Level:
    """A line across the bars to hold them against."""

    amount: Decimal
    label: str
