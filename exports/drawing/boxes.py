"""A box of the picture: where something lies, and how large it is."""

from __future__ import annotations

from dataclasses import dataclass


@dataclass(frozen=True, slots=True)
class Box:
    """A rectangle: its upper left corner and its size."""

    left: float
    top: float
    width: float
    height: float

    @property
    def right(self) -> float:
        """Its right side."""
        return self.left + self.width

    @property
    def bottom(self) -> float:
        """Its lower side."""
        return self.top + self.height

    @property
    def middle(self) -> tuple[float, float]:
        """Its middle: how far to the right, and how far down."""
        return self.left + self.width / 2, self.top + self.height / 2

    def shrunk(self, by: float) -> Box:
        """Return the box with `by` taken off on every side."""
        return Box(self.left + by, self.top + by, self.width - 2 * by, self.height - 2 * by)

    def scaled(self, across: float, down: float) -> Box:
        """Return the box about the same middle, with its sides such shares of what they were."""
        (x, y), width, height = self.middle, self.width * across, self.height * down
        return Box(x - width / 2, y - height / 2, width, height)
