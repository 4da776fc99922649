"""What paid: finished orders of one size, one stitch or one buyer together."""

from __future__ import annotations

from collections.abc import Callable, Hashable, Sequence
from dataclasses import dataclass
from decimal import Decimal
from typing import Generic, TypeVar

from quoting.core.making.case import Case

Key = TypeVar("Key", bound=Hashable)


@dataclass(frozen=True, slots=True, kw_only=True)
class Group(Generic[Key]):
    """Orders that have `key` in common and were quoted in one currency, and what they earned.

    `hours` are all their hours, and what an hour of them earned is all that they earned by these:
    an order of forty hours counts for more than one of four.
    """

    key: Key
    currency: str
    orders: int
    hours: Decimal
    earned: Decimal
    was_to_earn: Decimal


def groups_by(cases: Sequence[Case], key: Callable[[Case], Key]) -> tuple[Group[Key], ...]:
    """Return the groups, by currency and in each what paid best first; what is not known is out."""
    found: dict[tuple[str, Key], list[Case]] = {}
    for case in cases:
        if case.earned is not None and case.hours is not None:
            found.setdefault((case.currency, key(case)), []).append(case)
    groups = [_group(*named, together) for named, together in found.items()]
    return tuple(sorted(groups, key=lambda group: (group.currency, -group.earned)))


def _group(currency: str, key: Key, cases: Sequence[Case]) -> Group[Key]:
    hours = [Decimal(str(case.hours.real)) for case in cases if case.hours is not None]
    earned = [case.earned for case in cases if case.earned is not None]
    stated = [case.was_to_earn for case in cases]
    return Group(
        key=key,
        currency=currency,
        orders=len(cases),
        hours=sum(hours, Decimal(0)),
        earned=_by_the_hour(earned, hours),
        was_to_earn=_by_the_hour(stated, hours),
    )


def _by_the_hour(rates: Sequence[Decimal], hours: Sequence[Decimal]) -> Decimal:
    """Return the mean of what an hour earns, by the hours."""
    earned = sum((rate * some for rate, some in zip(rates, hours, strict=True)), Decimal(0))
    return earned / sum(hours, Decimal(0))
