"""The queue: orders that were agreed, one after another, and the days on which each is made."""

from __future__ import annotations

import math
from collections.abc import Iterator, Mapping, Sequence
from dataclasses import dataclass, replace
from datetime import date
from types import MappingProxyType

from quoting.core.workshop.calendar import DAYS_A_WEEK, later, work_through
from quoting.core.workshop.workshop import Workshop


@dataclass(frozen=True, slots=True, kw_only=True)
class AgreedOrder:
    """An order that was agreed and is not finished.

    `hours` are the most that it may take, or may still take where it is on the hook. Its yarn is
    bought on the day it is agreed, unless all of it is on the shelf. `promised_by` is the day that
    the buyer was told, `wanted_by` the one that she asked for.
    """

    order_id: int
    title: str
    buyer: str
    on_the_hook: bool
    agreed_on: date
    hours: float
    yarn_bought: bool
    promised_by: date
    wanted_by: date | None = None


@dataclass(frozen=True, slots=True, kw_only=True)
class Turn:
    """An order's turn: the first and the last day that it is worked on, and when it is there.

    From the end of `waits_until` on nothing keeps it from being worked on.
    """

    order: AgreedOrder
    waits_until: date
    starts_on: date
    made_by: date
    ready_by: date

    @property
    def days_past_promise(self) -> int:
        """How many days after the one that she was told it is with its buyer."""
        return _days_past(self.order.promised_by, self.ready_by)

    @property
    def days_past_wish(self) -> int:
        """How many days after the one that she asked for it is with its buyer."""
        return _days_past(self.order.wanted_by, self.ready_by)


def _days_past(day: date | None, ready_by: date) -> int:
    return 0 if day is None else max(0, (ready_by - day).days)


@dataclass(frozen=True, slots=True, kw_only=True)
class Ahead:
    """What is made before an order: how many that were agreed, their hours, their last day."""

    orders: int = 0
    hours: float = 0.0
    made_by: date | None = None


NOTHING_AHEAD = Ahead()
NOTHING_BEGUN: Mapping[int, float] = MappingProxyType({})


@dataclass(frozen=True, slots=True, kw_only=True)
class Queue:
    """The turns of all agreed orders, the first first, as they stand on a day."""

    turns: tuple[Turn, ...] = ()

    def turn_of(self, order_id: int) -> Turn | None:
        """Return an order's turn; None where it is not in the queue."""
        return next((turn for turn in self.turns if turn.order.order_id == order_id), None)

    def ahead_of(self, order_id: int | None) -> Ahead:
        """Return what is made before an order: of one in the queue what stands before it."""
        before = self.turns
        for at, turn in enumerate(self.turns):
            if turn.order.order_id == order_id:
                before = self.turns[:at]
        if not before:
            return NOTHING_AHEAD
        hours = math.fsum(turn.order.hours for turn in before)
        return Ahead(orders=len(before), hours=hours, made_by=before[-1].made_by)


def queue_orders(
    orders: Sequence[AgreedOrder],
    workshop: Workshop,
    *,
    today: date,
    left: Mapping[int, float] = NOTHING_BEGUN,
) -> Queue:
    """Return the turns of agreed orders, reckoned from the day after `today`.

    `left` has the hours that some may still take, by their ids; the others take all of theirs.
    What is on the hook comes first, then each order in its place; before all of them come the
    hours promised outside of the book. An order begins on a day of its own, when its yarn is there
    and what stands before it is made; none goes ahead of one that waits for its yarn.
    """
    waiting = sorted(orders, key=lambda order: not order.on_the_hook)
    to_do = [replace(each, hours=left.get(each.order_id, each.hours)) for each in waiting]
    return Queue(turns=tuple(_turns(to_do, workshop, today)))


def _turns(orders: Sequence[AgreedOrder], workshop: Workshop, today: date) -> Iterator[Turn]:
    calendar, daily = workshop.calendar, workshop.hours_per_week / DAYS_A_WEEK
    off = calendar.days_off
    free = work_through(today, calendar.hours_promised / daily, off)
    for order in orders:
        begin = max(free, _yarn_arrives(order, workshop))
        free = work_through(begin, order.hours / daily, off)
        yield Turn(
            order=order,
            waits_until=begin,
            starts_on=min(free, work_through(begin, 1, off)),
            made_by=free,
            ready_by=later(free, calendar.days_after_making),
        )


def _yarn_arrives(order: AgreedOrder, workshop: Workshop) -> date:
    """Return the day from whose end on the yarn is there; it is, once the work has begun."""
    waits = order.yarn_bought and not order.on_the_hook
    return later(order.agreed_on, workshop.calendar.yarn_arrives_days if waits else 0)
