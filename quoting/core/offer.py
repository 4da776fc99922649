"""What is asked of the buyer: the price in whole steps, what moved it there, and the deposit."""

from __future__ import annotations

from collections.abc import Iterator
from dataclasses import dataclass, replace
from decimal import Decimal

from quoting.core.costing import Line, LineKind, Unit
from quoting.core.currencies import minor_digits
from quoting.core.errors import refuse
from quoting.core.money import exact, round_money, round_up_to_step
from quoting.core.order import Order
from quoting.core.place import at
from quoting.core.sale import Sale, sale_tax, solve_price
from quoting.core.terms import MOST_MONEY, Pricing, Target


@dataclass(frozen=True, slots=True, kw_only=True)
class Offer:
    """A sale at a price. `asked` is that of one blanket, unrounded and before the moves.

    `listed` is the price of all blankets before the moves.
    """

    sale: Sale
    asked: Decimal
    listed: Decimal
    moves: tuple[Line, ...]
    tax: Decimal
    deposit: Decimal

    @property
    def price(self) -> Decimal:
        """The price of all blankets, without delivery."""
        return moved(self.listed, self.moves)

    @property
    def total(self) -> Decimal:
        """All that the buyer pays."""
        return self.sale.total(self.price, self.tax)


def make_offer(sale: Sale, target: Target, order: Order, pricing: Pricing, yarn: Decimal) -> Offer:
    """Return the offer of a sale whose yarn costs so much, to be paid at once or in two payments.

    Each payment bears the fixed fees, so the total follows from how many there are, and that from
    whether the deposit is a part of the total. Two payments never make a total less, and a deposit
    that is a part of the lesser total is one of the greater: so it is asked once, of the total
    that is paid at once. Errors: as `solve_price`; `price-too-large` at the target's place,
    `price-not-positive` at the discount's.
    """
    at_once = offer_in(replace(sale, payments=1), target, order, pricing, yarn)
    if payments_for(at_once.deposit, at_once.total) == 1:
        return at_once
    return offer_in(replace(sale, payments=2), target, order, pricing, yarn)


def offer_in(sale: Sale, target: Target, order: Order, pricing: Pricing, yarn: Decimal) -> Offer:
    """Return the offer of a sale in as many payments as it says; errors as `make_offer`."""
    asked = target.given or solve_price(sale, target) / order.quantity
    if asked > MOST_MONEY:
        raise refuse(target.place, "price-too-large", most=Decimal(MOST_MONEY))
    coins = _Coins(currency=sale.currency, step=None if target.given else _step(sale, pricing))
    listed = coins.shown(asked) * order.quantity
    moves = tuple(_moves(asked, order, pricing, coins))
    price = moved(listed, moves)
    if price <= 0:
        raise refuse(at("price", "discount"), "price-not-positive", price=price)
    tax = sale_tax(sale, price)
    deposit = deposit_of(sale.total(price, tax), yarn, pricing, sale.currency)
    return Offer(sale=sale, asked=asked, listed=listed, moves=moves, tax=tax, deposit=deposit)


def payments_for(deposit: Decimal, total: Decimal) -> int:
    """Return how many payments there are: two where the deposit is a part of the total."""
    return 2 if 0 < deposit < total else 1


def deposit_of(total: Decimal, yarn: Decimal, pricing: Pricing, currency: str) -> Decimal:
    """Return what is paid when the order is agreed: a share of the total, or the yarn up to it."""
    deposit = pricing.deposit
    if deposit is None:
        return round_money(Decimal(0), currency)
    if deposit.share is not None:
        return round_money(total * exact(deposit.share), currency)
    return min(round_money(yarn, currency), total)


def moved(listed: Decimal, moves: tuple[Line, ...]) -> Decimal:
    """Return a price after all that moves it."""
    return listed + sum((line.amount for line in moves), Decimal(0))


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
