"""Long tables, of which a page shows only the beginning."""

from __future__ import annotations

from collections.abc import Sequence
from typing import Generic, NamedTuple, TypeVar

T = TypeVar("T")

MOST_SHOWN = 400
"""Lines of a table on a page."""


class Beginning(NamedTuple, Generic[T]):
    """What is shown of a long table, and how many more lines it has."""

    shown: Sequence[T]
    more: int


def beginning(lines: Sequence[T], most: int = MOST_SHOWN) -> Beginning[T]:
    """Return the first lines of a table, and how many are left out."""
    return Beginning(lines[:most], max(0, len(lines) - most))
