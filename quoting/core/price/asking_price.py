"""How the price that is shown comes about: in whole steps, and what moved it there."""

from __future__ import annotations

from collections.abc import Iterator
from dataclasses import dataclass, replace
from decimal import Decimal

from quoting.core.ground.codes import MistakeCode
from quoting.core.ground.currencies import minor_digits
from quoting.core.ground.errors import refuse
from quoting.core.ground.money import exact, round_money, round_up_to_step
from quoting.core.ground.place import at
from quoting.core.order.order import Order
from quoting.core.price.cost_lines import Line, LineKind, Unit
from quoting.core.price.price_equation import Equation, equation_of, solve_price
from quoting.core.price.sale import Sale, Sold, sell
from quoting.core.workshop.selling import MOST_MONEY, Pricing, Target


@dataclass(frozen=True, slots=True, kw_only=True)
class AskingPrice:
    """A sale at the price shown, and how that follows from what its equation asks.

    `asked` is that of one blanket, unrounded and before the moves; `listed` is the price of all
    blankets before the moves.
    """

    equation: Equation
    asked: Decimal
    listed: Decimal
    moves: tuple[Line, ...]
    sold: Sold


def asking_price(sale: Sale, target: Target, order: Order, pricing: Pricing) -> AskingPrice:
    """Return the price of a sale, solved for as many payments as it says.

    Errors: as `solve_price`; `price-too-large` at the target's place, `price-not-positive` at the
    discount's.
    """
    equation = equation_of(sale, target)
    asked = target.given or solve_price(equation) / order.quantity
    if asked > MOST_MONEY:
        raise refuse(target.place, MistakeCode.PRICE_TOO_LARGE, most=Decimal(MOST_MONEY))
    coins = _Coins(currency=sale.currency, step=None if target.given else _step(sale, pricing))
    listed = coins.shown(asked) * order.quantity
    moves = tuple(_moves(asked, order, pricing, coins))
    price = listed + sum((line.amount for line in moves), Decimal(0))
    if price <= 0:
        raise refuse(at("price", "discount"), MistakeCode.PRICE_NOT_POSITIVE, price=price)
    return AskingPrice(
        equation=equation, asked=asked, listed=listed, moves=moves, sold=sell(sale, price)
    )


@dataclass(frozen=True, slots=True, kw_only=True)
class PricedAsPaid:
    """A price in as many payments as its total makes, and the lesser ones that tell how many.

    `at_once` is what would be asked were all of it paid at once, `in_two` were it paid in two,
    and is `at_once` itself where that is one payment.
    """

    at_once: AskingPrice
    in_two: AskingPrice
    asking: AskingPrice


def asking_price_as_paid(
    sale: Sale, target: Target, order: Order, pricing: Pricing
) -> PricedAsPaid:
    """Return the price of a sale in as many payments as its total makes.

    Each payment bears the fixed fees, so the total follows from how many there are, and that from
    how the total is split. More payments never make a total less, and what makes two of a lesser
    total makes at least two of a greater: so it is asked of the total paid at once, and of that
    paid in two. A third that rounding takes away again leaves its fixed fees to the maker; she is
    never short of any. Errors: as `asking_price`.
    """

    def solved_for(payments: int, before: AskingPrice) -> AskingPrice:
        if payments == before.equation.sale.payments:
            return before
        return asking_price(replace(sale, payments=payments), target, order, pricing)

    at_once = asking_price(replace(sale, payments=1), target, order, pricing)
    in_two = solved_for(min(at_once.sold.payments.count, 2), at_once)
    asking = solved_for(in_two.sold.payments.count, in_two)
    return PricedAsPaid(at_once=at_once, in_two=in_two, asking=asking)


def _step(sale: Sale, pricing: Pricing) -> Decimal:
    return pricing.round_up_to or Decimal(1).scaleb(-minor_digits(sale.currency))


@dataclass(frozen=True, slots=True, kw_only=True)
class _Coins:
    """How the price of one blanket is shown: up to a whole step, or, if it was given, as it is."""

    currency: str
    step: Decimal | None

    def shown(self, amount: Decimal) -> Decimal:
        """Return an amount in the coins that it is asked in."""
        if self.step is None:
            return round_money(amount, self.currency)
        return round_up_to_step(amount, self.step)


def _moves(asked: Decimal, order: Order, pricing: Pricing, coins: _Coins) -> Iterator[Line]:
    """Yield what moves the price: a rush, a discount, and the least the maker takes for one.

    A rush and a discount move the price that was asked for one before it is rounded; each line is
    what that makes of the price shown, so that the lines add up to it.
    """
    shown = coins.shown(asked)
    shares = ((LineKind.RUSH, order.terms.rush), (LineKind.DISCOUNT, -order.terms.discount))
    for kind, share in shares:
        if share:
            asked *= 1 + exact(share)
            before, shown = shown, coins.shown(asked)
            yield _move(kind, shown - before, order.quantity, exact(abs(share)))
    if pricing.minimum is not None and coins.step is not None:
        rise = coins.shown(pricing.minimum) - shown
        if rise > 0:
            yield _move(LineKind.MINIMUM, rise, order.quantity)


def _move(kind: LineKind, rate: Decimal, quantity: int, share: Decimal | None = None) -> Line:
    return Line(
        kind=kind,
        quantity=Decimal(quantity),
        unit=Unit.PIECE,
        rate=rate,
        amount=rate * quantity,
        share=share,
    )
