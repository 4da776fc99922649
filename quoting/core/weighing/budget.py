"""From what a buyer can spend: which sizes fit, and what would bring the price down."""

from __future__ import annotations

from collections.abc import Iterator, Sequence
from dataclasses import dataclass, replace
from datetime import date
from decimal import Decimal
from enum import StrEnum
from itertools import islice, permutations

from quoting.core.estimate.estimate import work_of
from quoting.core.ground.codes import MistakeCode
from quoting.core.ground.errors import Refused, refuse
from quoting.core.ground.money import round_money_down
from quoting.core.order.design import Design, EndsBecome
from quoting.core.order.order import Order
from quoting.core.order.resizing import Size
from quoting.core.price.price import Price
from quoting.core.quote.advice import MANY_ENDS
from quoting.core.quote.quote import Quote, quote_order
from quoting.core.weighing.alternatives import check_size
from quoting.core.weighing.calmer_designs import calmer_designs
from quoting.core.weighing.comparison import (
    Compared,
    Comparison,
    at_the_target,
    compare_sizes,
    price_at,
)
from quoting.core.weighing.other_joins import other_joins
from quoting.core.weighing.variations import with_border_rounds
from quoting.core.workshop.queue import NOTHING_AHEAD, Ahead
from quoting.core.workshop.selling import MOST_MONEY
from quoting.core.workshop.workshop import Workshop

OTHER_YARNS = 30
"""Other yarns of the workshop that are tried."""

RECOLOURED = 60
"""How many ways of doing without a colour are tried, the colours of fewest rows first."""

PASSES_TRIED = 5_000
"""Rows and rounds that all tries of one change together may have, so that an answer is quick."""


class Change(StrEnum):
    """What could be changed in an order to bring its price down."""

    FEWER_COLOURS = "fewer-colours"
    CALMER_STRIPES = "calmer-stripes"
    SMALLER_BORDER = "smaller-border"
    MIXED_BALLS = "mixed-balls"
    OTHER_JOIN = "other-join"
    ENDS_WORKED_OVER = "ends-worked-over"
    OTHER_YARN = "other-yarn"


@dataclass(frozen=True, slots=True, kw_only=True)
class Saving:
    """One change, the quote it leads to, and what it takes off the total at the target.

    `subject` is the colour left out, the join or the yarn taken instead, empty where there is none.
    """

    change: Change
    subject: str
    quote: Quote
    saved: Decimal


@dataclass(frozen=True, slots=True, kw_only=True)
class Fit:
    """One size under a budget.

    `fits` says whether its total, as compared, is within it; `at_budget` is what the buyer's
    paying just the budget would come to.
    """

    compared: Compared
    fits: bool
    at_budget: Price | None
    pays_the_hour: bool


@dataclass(frozen=True, slots=True, kw_only=True)
class BudgetAnswer:
    """The sizes under a budget. `largest` is the index of the largest whose hour is still paid."""

    budget: Decimal
    fits: tuple[Fit, ...]
    comparison: Comparison
    largest: int | None
    savings: tuple[Saving, ...]


def within_budget(
    order: Order,
    workshop: Workshop,
    sizes: Sequence[Size],
    *,
    budget: Decimal,
    today: date,
    ahead: Ahead = NOTHING_AHEAD,
) -> BudgetAnswer:
    """Return how an order's design fares under a budget for all that the buyer pays.

    A price that the order gives is for its own size; the target says what the others must cost,
    and what a change to the order would save.
    Errors: `not-above`, `too-large` or `too-large-to-vary` at `budget`; as `compare_sizes`, and
    as `quote_order` where the order itself cannot be made.
    """
    if not budget.is_finite() or budget <= 0:
        raise refuse("budget", MistakeCode.NOT_ABOVE, read=budget, limit=0)
    if budget > MOST_MONEY:
        raise refuse("budget", MistakeCode.TOO_LARGE, read=budget, limit=MOST_MONEY)
    asked = quote_order(at_the_target(order), workshop, today=today, ahead=ahead)
    check_size(asked, "budget")
    comparison = compare_sizes(order, workshop, sizes, today=today, ahead=ahead)
    fits = tuple(_fit(compared, budget) for compared in comparison.sizes)
    paying = [number for number, fit in enumerate(fits) if fit.pays_the_hour]
    return BudgetAnswer(
        budget=budget,
        fits=fits,
        comparison=comparison,
        largest=max(paying, key=lambda n: fits[n].compared.area_cm2, default=None),
        savings=savings(asked, today=today),
    )


def _fit(compared: Compared, budget: Decimal) -> Fit:
    quote = compared.quote
    each = each_for_total(quote, budget)
    at_budget = price_at(quote, each) if each is not None else None
    return Fit(
        compared=compared,
        fits=quote.price.total <= budget,
        at_budget=at_budget,
        pays_the_hour=at_budget is not None and at_budget.pays_the_hour,
    )


def each_for_total(quote: Quote, total: Decimal) -> Decimal | None:
    """Return the price of one blanket at which the buyer pays no more than a total.

    None where delivery and tax alone take all of it.
    """
    price, factors = quote.price, quote.price.equation.factors
    delivery = price.delivery * factors.delivery_multiplier
    left = round_money_down(total, price.currency) - delivery
    each = round_money_down(left / factors.price_multiplier / price.quantity, price.currency)
    return each if each > 0 else None


def savings(quote: Quote, *, today: date) -> tuple[Saving, ...]:
    """Return the changes that would lower a quote's total, the largest saving first.

    Of changes of one kind only the best is given.
    """
    best: dict[Change, Saving] = {}
    for change, subject, order in _changes(quote, today):
        try:
            other = quote_order(order, quote.workshop, today=today, ahead=quote.ahead)
        except Refused:
            continue
        saved = quote.price.total - other.price.total
        if saved > 0 and (change not in best or saved > best[change].saved):
            best[change] = Saving(change=change, subject=subject, quote=other, saved=saved)
    return tuple(sorted(best.values(), key=lambda saving: -saving.saved))


def _changes(quote: Quote, today: date) -> Iterator[tuple[Change, str, Order]]:
    order, design = quote.order, quote.order.design
    most = max(1, PASSES_TRIED // work_of(quote.plan, order.quantity))
    for colour, other in islice(_pairs(quote), min(RECOLOURED, most)):
        yield Change.FEWER_COLOURS, colour, _with(order, _recoloured(design, colour, other))
    for alternative in calmer_designs(quote, today=today):
        yield Change.CALMER_STRIPES, "", alternative.quote.order
    smaller = with_border_rounds(design, -1) if design.border else None
    if smaller is not None:
        yield Change.SMALLER_BORDER, "", _with(order, smaller)
    if not design.mix_lots:
        yield Change.MIXED_BALLS, "", _with(order, replace(design, mix_lots=True))
    for method, body in other_joins(design.body, quote.plan):
        yield Change.OTHER_JOIN, method.value, _with(order, replace(design, body=body))
    if design.ends is EndsBecome.WOVEN_IN and quote.estimate.ends >= MANY_ENDS:
        over = replace(design, ends=EndsBecome.WORKED_OVER)
        yield Change.ENDS_WORKED_OVER, "", _with(order, over)
    others = (yarn.name for yarn in quote.workshop.yarns if yarn.name != design.yarn)
    for name in islice(others, min(OTHER_YARNS, most)):
        yield Change.OTHER_YARN, name, _with(order, replace(design, yarn=name))


def _with(order: Order, design: Design) -> Order:
    return replace(order, design=design)


def _pairs(quote: Quote) -> Iterator[tuple[str, str]]:
    """Yield a colour of the body and another to work in its place."""
    rows = quote.plan.rows_by_colour
    main = quote.order.design.body.main_colours
    colours = sorted(main, key=lambda colour: rows.get(colour, 0))
    return permutations(colours, 2)


def _recoloured(design: Design, colour: str, other: str) -> Design:
    """Return the design with all that is of one colour, border too, worked in another."""
    border = tuple(
        replace(band, colour=other) if band.colour == colour else band for band in design.border
    )
    return replace(design, body=design.body.recoloured(colour, other), border=border)
