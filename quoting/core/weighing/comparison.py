"""The same design over several sizes: which of them pays.

At given prices the best size earns most for an hour. At a target every size earns about the same
by construction, so none is named.
"""

from __future__ import annotations

from collections.abc import Mapping, Sequence
from dataclasses import dataclass, replace
from datetime import date
from decimal import Decimal
from enum import StrEnum

from quoting.core.estimate.estimate import work_of
from quoting.core.ground.codes import MistakeCode
from quoting.core.ground.errors import Checks, Mistake, Refused, refuse
from quoting.core.ground.measures import CM_PER_INCH
from quoting.core.ground.money import exact, round_money
from quoting.core.ground.place import at
from quoting.core.order.order import Order, Terms
from quoting.core.order.resizing import Size, own_size, resize_order
from quoting.core.plan.plan import plan_order
from quoting.core.price.cost_lines import LineKind
from quoting.core.price.price import Price, price_estimate
from quoting.core.price.sale import Sold
from quoting.core.quote.quote import Quote, quote_order
from quoting.core.weighing.best_size import Reason as Reason
from quoting.core.weighing.best_size import best_of, why_best
from quoting.core.workshop.queue import NOTHING_AHEAD, Ahead
from quoting.core.workshop.selling import MOST_MONEY, Target
from quoting.core.workshop.workshop import Workshop

MOST_SIZES = 50

MOST_COMPARED = 12_000
"""Of work, as `work_of` has it: the order and all sizes together."""


class Rule(StrEnum):
    """The trade's rules of thumb for a price (common practice)."""

    THREE_TIMES_MATERIALS = "three-times-materials"
    BY_AREA = "by-area"
    BY_SKEIN = "by-skein"


@dataclass(frozen=True, slots=True, kw_only=True)
class RuleOfThumb:
    """The price of one blanket by a rule of thumb, the sale at it, and what an hour would earn."""

    rule: Rule
    price: Decimal
    sold: Sold
    earned_per_hour: Decimal


@dataclass(frozen=True, slots=True, kw_only=True)
class Compared:
    """One size, quoted."""

    size: Size
    quote: Quote
    rules: tuple[RuleOfThumb, ...]

    @property
    def area_cm2(self) -> float:
        """The area that comes out."""
        return self.quote.plan.area_cm2

    @property
    def price_per_100_cm2(self) -> Decimal:
        """The price of one blanket for each 100 cm², in whole minor units."""
        return price_of_area(self.quote, Decimal(100))

    @property
    def price_per_100_in2(self) -> Decimal:
        """The price of one blanket for each 100 square inches, in whole minor units."""
        return price_of_area(self.quote, 100 * exact(CM_PER_INCH) ** 2)


@dataclass(frozen=True, slots=True, kw_only=True)
class Refusal:
    """A size that the design cannot make, or that has no price, and why."""

    size: Size
    mistakes: tuple[Mistake, ...]


@dataclass(frozen=True, slots=True, kw_only=True)
class Comparison:
    """The sizes that can be made, in the order asked, and those that cannot.

    At a target the order's own size keeps a price that the order gives. `best` is an index into
    `sizes` and `reason` says why, both None at a target. `base` is the order's own quote, which
    two rules of thumb carry over; None where its own size has none.
    """

    sizes: tuple[Compared, ...]
    refused: tuple[Refusal, ...]
    best: int | None = None
    reason: Reason | None = None
    base: Quote | None = None


def compare_sizes(
    order: Order,
    workshop: Workshop,
    sizes: Sequence[Size],
    *,
    today: date,
    ahead: Ahead = NOTHING_AHEAD,
    prices: Mapping[Size, Decimal] | None = None,
) -> Comparison:
    """Return the order's design quoted at every size, at the target or at `prices` for each.

    A price that the order gives is for its own size, which keeps it: with no `prices`, the other
    sizes are priced by the workshop's target. Errors: `too-many` or `missing` sizes at `sizes`,
    and `too-much-at-once` for blankets that take too many rows together; `size-not-compared` at
    `prices` for a price whose size is not among them. What is wrong with one size is only listed.
    """
    _check(sizes, prices or {})
    room = Room(MOST_COMPARED)
    base = _try_quote(order, workshop, today, ahead, room)
    made: list[Compared] = []
    refused: list[Refusal] = []
    for size in dict.fromkeys(sizes):
        try:
            sized = _sized_order(order, size, prices)
            room.take(sized, workshop)
            quote = quote_order(sized, workshop, today=today, ahead=ahead)
            rules = rules_of_thumb(quote, base or quote)
            made.append(Compared(size=size, quote=quote, rules=rules))
        except Refused as refusal:
            room.check()
            refused.append(Refusal(size=size, mistakes=refusal.mistakes))
    quotes = [compared.quote for compared in made]
    earned = [quote.price.earned_per_hour for quote in quotes]
    best = best_of(earned) if prices is not None and made else None
    return Comparison(
        sizes=tuple(made),
        refused=tuple(refused),
        best=best,
        reason=None if best is None else why_best(quotes, best),
        base=base,
    )


def rules_of_thumb(quote: Quote, base: Quote) -> tuple[RuleOfThumb, ...]:
    """Return what the rules of thumb ask for a quote, and what each would pay.

    A rule that asks for nothing, or for more than any price may be, is left out.
    By area and by skein carry the price of `base` over, in proportion; skeins are counted by
    weight, as sizes may be made from balls of different weights.
    """
    price, other = quote.price, base.price
    materials = price.amount(LineKind.YARN) + price.amount(LineKind.EXTRA)
    asked = {Rule.THREE_TIMES_MATERIALS: 3 * materials / price.quantity}
    area = exact(quote.plan.area_cm2)
    base_area = exact(base.plan.area_cm2)
    asked[Rule.BY_AREA] = other.each * area / base_area
    asked[Rule.BY_SKEIN] = other.each * ball_grams(quote) / ball_grams(base)
    return tuple(
        _rule_at(rule, each, price)
        for rule, unrounded in asked.items()
        if 0 < (each := round_money(unrounded, price.currency)) <= MOST_MONEY
    )


def _rule_at(rule: Rule, each: Decimal, price: Price) -> RuleOfThumb:
    sold = price.sold_at(each)
    return RuleOfThumb(rule=rule, price=each, sold=sold, earned_per_hour=price.earned_by(sold))


def price_of_area(quote: Quote, area_cm2: Decimal) -> Decimal:
    """Return the price of so much of one blanket, in whole minor units."""
    price, whole_cm2 = quote.price, exact(quote.plan.area_cm2)
    return round_money(price.each * area_cm2 / whole_cm2, price.currency)


def ball_grams(quote: Quote) -> Decimal:
    """Return the weight of all balls a quote needs, bought or from stock."""
    colours = quote.estimate.colours
    grams = sum(sum(colour.balls_m) / colour.metres_per_gram for colour in colours)
    return exact(grams)


def price_at(quote: Quote, each: Decimal) -> Price:
    """Return a quote's price were each blanket sold at `each`, with no rush or discount."""
    order = replace(quote.order, terms=Terms(target=Target(given=each)))
    return price_estimate(order, quote.estimate, quote.workshop)


def _check(sizes: Sequence[Size], prices: Mapping[Size, Decimal]) -> None:
    checks = Checks()
    if not sizes:
        checks.add("sizes", MistakeCode.MISSING)
    if len(sizes) > MOST_SIZES:
        checks.add("sizes", MistakeCode.TOO_MANY, read=len(sizes), limit=MOST_SIZES)
    for number, size in enumerate(prices, 1):
        if size not in sizes:
            checks.add(at("prices", number, "size"), MistakeCode.SIZE_NOT_COMPARED, read=str(size))
    checks.done()


def at_the_target(order: Order) -> Order:
    """Return the order with no price of its own, so that a target fixes it."""
    target = order.terms.target
    if target is None or target.given is None:
        return order
    return replace(order, terms=replace(order.terms, target=None))


def _try_quote(
    order: Order, workshop: Workshop, today: date, ahead: Ahead, room: Room
) -> Quote | None:
    """Return the order's own quote, or None where its own size cannot be made."""
    try:
        room.take(order, workshop)
        return quote_order(order, workshop, today=today, ahead=ahead)
    except Refused:
        room.check()
        return None


class Room:
    """How much is still to be worked out in one answer: in rows and rounds of one blanket."""

    def __init__(self, passes: int) -> None:
        self.left = passes

    def take(self, order: Order, workshop: Workshop) -> None:
        """Take the work of an order. Errors: as `plan_order`, and as `check`."""
        self.left -= work_of(plan_order(order, workshop), order.quantity)
        self.check()

    def check(self) -> None:
        """Refuse to go on once more were asked for. Errors: `too-much-at-once` at `sizes`."""
        if self.left < 0:
            raise refuse("sizes", MistakeCode.TOO_MUCH_AT_ONCE)


def _sized_order(order: Order, size: Size, prices: Mapping[Size, Decimal] | None) -> Order:
    """Return the order at one size and its price. Errors: `size-without-price` at `prices`."""
    sized = resize_order(order, size)
    if prices is None:
        return sized if size == own_size(order) else at_the_target(sized)
    if size not in prices:
        raise refuse("prices", MistakeCode.SIZE_WITHOUT_PRICE, read=str(size))
    return replace(sized, terms=replace(sized.terms, target=Target(given=prices[size])))
