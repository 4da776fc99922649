"""Moments of the tests, and who writes."""

from __future__ import annotations

from datetime import UTC, datetime, timedelta

NOW = datetime(2026, 11, 25, 9, 30, 15, 250_000, tzinfo=UTC)
TABLET, DESK = "tablet", "desk"


def later(**how_much: float) -> datetime:
    """Return a moment after the first."""
    return NOW + timedelta(**how_much)
