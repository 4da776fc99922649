"""A finished order: what was quoted for it, and what came of it."""

from __future__ import annotations

from dataclasses import dataclass
from datetime import date
from decimal import Decimal

from quoting.core.making.outturn import Outturn


@dataclass(frozen=True, slots=True, kw_only=True)
class Case:
    """One finished order that was agreed by a quote, `number`.

    `finished` is the day on which it was. Hours and grams are None where what was written down
    does not tell them, and so is what an hour really `earned`, in the quote's currency.
    """

    order_id: int
    number: str
    agreed: date
    finished: date
    title: str
    buyer: str
    width_cm: float
    height_cm: float
    stitch: str
    currency: str
    hours: Outturn | None
    grams: Outturn | None
    was_to_earn: Decimal
    earned: Decimal | None
