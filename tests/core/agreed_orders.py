"""Agreed orders and workshops of a plain pace, for the queue's tests."""

from __future__ import annotations

from dataclasses import replace
from datetime import date
from typing import Any

from quoting.core.workshop.calendar import WorkingCalendar
from quoting.core.workshop.queue import AgreedOrder
from quoting.core.workshop.workshop import Workshop
from tests.examples import sample_workshop

TODAY = date(2026, 11, 25)
"""A Wednesday."""


def agreed(order_id: int, hours: float, **changes: Any) -> AgreedOrder:
    """Return an order whose yarn is on the shelf, agreed today and promised for the year's end."""
    order = AgreedOrder(
        order_id=order_id,
        title=f"Blanket {order_id}",
        buyer="Tam Fell",
        on_the_hook=False,
        agreed_on=TODAY,
        hours=hours,
        yarn_bought=False,
        promised_by=date(2026, 12, 31),
    )
    return replace(order, **changes)


def working(hours_a_day: float = 2, **calendar: Any) -> Workshop:
    """Return a workshop with so many hours a day, and nothing in its calendar unless told."""
    plain = sample_workshop(hours_per_week=7 * hours_a_day)
    return replace(plain, calendar=WorkingCalendar(**calendar))
