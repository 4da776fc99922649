"""How a motif grows, and what its figures rest on, as a maker says it."""

from __future__ import annotations

from collections.abc import Mapping

from quoting.core.workshop.rounds import Counting

SHAPES: Mapping[Counting, str] = {
    Counting.CLUSTERS: "a square in clusters of three, with spaces",
    Counting.SOLID: "a solid square",
    Counting.CIRCLE: "a circle",
    Counting.HEXAGON: "a hexagon",
}
"""What each way of growing makes."""


def shape_words(counting: Counting) -> str:
    """Return what a motif that grows so is."""
    return SHAPES[counting]
