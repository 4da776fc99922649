"""Stripes near the ones asked for that leave at most half the ends, of a body in rows."""

from __future__ import annotations

import math
from collections.abc import Iterator
from contextlib import suppress
from dataclasses import dataclass, replace
from datetime import date
from itertools import groupby, islice

from quoting.core.estimate.estimate import estimate_plan
from quoting.core.ground.errors import Refused
from quoting.core.ground.sameness import HAIR
from quoting.core.order.design import Design
from quoting.core.order.in_rows import InRows, Section, Stripe
from quoting.core.order.order import Order
from quoting.core.plan.passes import Plan
from quoting.core.plan.plan import plan_order
from quoting.core.quote.advice import MANY_ENDS
from quoting.core.quote.quote import Quote, quote_order
from quoting.core.weighing.alternatives import (
    OFFERED,
    Alternative,
    check_size,
    keeps_colours,
    rows_elsewhere,
)
from quoting.core.weighing.stripe_search import (
    RUN_GROWS,
    TRIES_IN_ALL,
    Repeat,
    calmer_repeats,
    cuts_of,
)

PLANNED = 80
"""Nearby designs that are unrolled, at the most."""

ROWS_PLANNED = 16_000
"""Rows that all of them together may have."""

WALKED = 10
"""Of those that keep the shape, how many are walked to count their ends."""


@dataclass(frozen=True, slots=True, kw_only=True)
class _Trial:
    """A nearby order, and the ends of one blanket of it."""

    order: Order
    distance: float
    ends: int


def calmer_stripes(quote: Quote, *, today: date) -> tuple[Alternative, ...]:
    """Return up to three designs with at most half a quote's ends, the fewest ends first.

    Every colour keeps its rows within a tenth, no run of one colour is longer than twice the
    longest asked, and the height stays within one repeat. Nothing is offered where the ends are
    few. Errors: as `check_size`.
    """
    check_size(quote)
    if quote.estimate.ends < MANY_ENDS:
        return ()
    offered = []
    for trial in sorted(islice(_trials(quote), WALKED), key=_trial_rank)[:OFFERED]:
        with suppress(Refused):
            other = quote_order(trial.order, quote.workshop, today=today, ahead=quote.ahead)
            if 2 * other.estimate.ends <= quote.estimate.ends:
                offered.append(Alternative(quote=other, distance=trial.distance))
    return tuple(sorted(offered, key=_rank))


def _rank(found: Alternative) -> tuple[int, float, int]:
    """Return what puts alternatives in order: ends, distance, then the simpler striping."""
    return found.quote.estimate.ends, round(found.distance, 2), _stripes(found.design)


def _trial_rank(trial: _Trial) -> tuple[int, float, int]:
    return trial.ends, round(trial.distance, 2), _stripes(trial.order.design)


def _stripes(design: Design) -> int:
    return sum(len(section.stripes) for section in _rows_of(design).sections)


def _rows_of(design: Design) -> InRows:
    assert isinstance(design.body, InRows), "only rows are striped here"  # noqa: S101
    return design.body


def _trials(quote: Quote) -> Iterator[_Trial]:
    """Yield nearby orders that keep the shape, walked for one blanket as the others are alike."""
    most = max(OFFERED, min(PLANNED, ROWS_PLANNED // len(quote.plan.rows)))
    for order in islice(_nearby(quote), most):
        yield from _tried(order, quote)


def _tried(order: Order, quote: Quote) -> Iterator[_Trial]:
    """Yield a nearby order if it can be made and keeps the shape."""
    with suppress(Refused):
        plan = plan_order(order, quote.workshop)
        if _keeps_shape(plan, quote):
            walked = estimate_plan(plan, replace(order, quantity=1), quote.workshop)
            yield _Trial(order=order, distance=rows_elsewhere(plan, quote.plan), ends=walked.ends)


def _nearby(quote: Quote) -> Iterator[Order]:
    """Yield orders with the striping exchanged for a calmer one: most promising first, and few.

    Where a section has several calmer repeats, each is tried beside the calmest of the others.
    """
    design, body = quote.order.design, _rows_of(quote.order.design)
    tries = TRIES_IN_ALL // len(body.sections)
    options = [
        _options(section, _carry_rows(quote, number), tries)
        for number, section in enumerate(body.sections)
    ]
    calmest = [found[0] if found else None for found in options]
    trials = {
        (*calmest[:number], repeat, *calmest[number + 1 :])
        for number, found in enumerate(options)
        for repeat in found
    }
    for repeats in sorted(trials, key=lambda trial: _promise(trial, body)):
        striped = replace(body, sections=tuple(map(_restriped, body.sections, repeats)))
        yield replace(quote.order, design=replace(design, body=striped))


def _carry_rows(quote: Quote, section: int) -> int:
    """Return over how many rows of a section the yarn is carried, by both of the limits."""
    tallest_cm = max(
        (row.height_cm for row in quote.plan.rows if row.section == section), default=math.inf
    )
    return quote.workshop.habits.rows_carried(tallest_cm)


def _options(section: Section, carry_rows: int, tries: int) -> list[Repeat]:
    """Return calmer repeats of a section that is worked in one stitch, the calmest first.

    Of those that are the same but for where they begin, only the first.
    """
    rows = _colours(section)
    if section.fitted:
        return []
    if len({stripe.stitch for stripe in section.stripes}) > 1 or not cuts_of(rows, carry_rows):
        return []
    found = sorted(
        calmer_repeats(rows, carry_rows, tries),
        key=lambda repeat: (repeat.cuts_a_row, repeat.distance_from(rows), repeat.colours),
    )
    return list({repeat.ring: repeat for repeat in reversed(found)}.values())[::-1]


def _promise(trial: tuple[Repeat | None, ...], body: InRows) -> tuple[float, float, int, str]:
    """Return what ranks a trial before it is quoted: its cuts, how near it is, its stripes."""
    pairs = [(r, s) for r, s in zip(trial, body.sections, strict=True) if r is not None]
    cuts = sum(repeat.cuts_a_row for repeat, _ in pairs)
    distance = sum(repeat.distance_from(_colours(section)) for repeat, section in pairs)
    return cuts, round(distance, 2), sum(repeat.stripes for repeat, _ in pairs), repr(trial)


def _colours(section: Section) -> list[str]:
    return [stripe.colour for stripe in section.stripes for _ in range(stripe.rows)]


def _restriped(section: Section, repeat: Repeat | None) -> Section:
    """Return a section with other stripes over about as many rows."""
    if repeat is None:
        return section
    stitch = section.stripes[0].stitch
    stripes = tuple(
        Stripe(colour=colour, rows=len(list(rows)), stitch=stitch)
        for colour, rows in groupby(repeat.colours)
    )
    rows = section.rows
    repeats = section.repeats and max(1, round(section.repeats * rows / len(repeat.colours)))
    return replace(section, stripes=stripes, repeats=repeats)


def _keeps_shape(plan: Plan, asked: Quote) -> bool:
    """Return whether a plan keeps its stripes, each colour's rows and the height, near enough."""
    return (
        keeps_colours(plan, asked.plan)
        and _longest_run(plan) <= RUN_GROWS * _longest_run(asked.plan)
        and abs(plan.height_cm - asked.plan.height_cm) <= _repeat_cm(asked) + HAIR
    )


def _longest_run(plan: Plan) -> int:
    """Return the rows of one colour together, at the most."""
    return max(len(list(run)) for _, run in groupby(row.colour for row in plan.rows))


def _repeat_cm(quote: Quote) -> float:
    """Return the height of the tallest repeat, at the mean height of a row."""
    rows = quote.plan.rows
    mean_cm = math.fsum(row.height_cm for row in rows) / len(rows)
    return mean_cm * max(section.rows for section in _rows_of(quote.order.design).sections)
