"""The payments that a log tells of, line by line."""

from __future__ import annotations

from dataclasses import dataclass
from datetime import date
from decimal import Decimal

from quoting.core.making.log_lines import LogEntry, Payment, standing


@dataclass(frozen=True, slots=True, kw_only=True)
class Paid:
    """Money that came on a day, in whole minor units of a currency (ISO 4217).

    What is less than nothing was paid back.
    """

    day: date
    amount: Decimal
    currency: str


def payments_in(entries: tuple[LogEntry, ...]) -> dict[int, Paid]:
    """Return the payments that hold by the number of their line, in the order of their days."""
    told = [
        (entry.line.day, entry.id, entry.line)
        for entry in standing(entries)
        if isinstance(entry.line, Payment)
    ]
    return {
        number: Paid(day=day, amount=line.amount, currency=line.currency)
        for day, number, line in sorted(told, key=lambda found: found[:2])
    }
