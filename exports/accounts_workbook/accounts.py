"""What the accounts are told: orders with what they brought in and cost, and money by day."""

from __future__ import annotations

from dataclasses import dataclass
from datetime import date
from decimal import Decimal

from quoting.core.workshop.workshop import Workshop


@dataclass(frozen=True, slots=True, kw_only=True)
class Booked:
    """One finished order, all amounts in its `currency`; `done` is when it was handed over.

    One that was not yet is booked on the day it was finished. `other_costs` are all but yarn and
    the maker's own hours; `hours` are None where they are not known.
    """

    number: str
    agreed: date
    done: date
    buyer: str
    currency: str
    total: Decimal
    tax: Decimal
    fees: Decimal
    yarn: Decimal
    other_costs: Decimal
    hours: Decimal | None
    earned: Decimal | None


@dataclass(frozen=True, slots=True, kw_only=True)
class Received:
    """Money that came on a day, or was paid back; `number` is of its order's quote, if it has one.

    The order, `title`, may be at any stage.
    """

    day: date
    number: str
    title: str
    buyer: str
    amount: Decimal
    currency: str


@dataclass(frozen=True, slots=True, kw_only=True)
class Accounts:
    """The accounts of a `year`, or of all years, as they stood on a day."""

    workshop: Workshop
    day: date
    year: int | None
    orders: tuple[Booked, ...]
    payments: tuple[Received, ...]
