"""From cost to price: what a blanket must be sold for, and what is left of that.

Margin is profit over net revenue, markup profit over cost: m = k/(1 + k) (textbook).
"""

from __future__ import annotations

from collections.abc import Iterator, Sequence
from dataclasses import dataclass
from decimal import Decimal

from quoting.core.costing import Line, LineKind, Unit, cost_lines, delivery_of
from quoting.core.currencies import minor_digits
from quoting.core.errors import refuse
from quoting.core.estimate import Estimate
from quoting.core.exchange import ExchangeRate
from quoting.core.money import exact, round_half_up, round_money, round_up_to_step
from quoting.core.order import Order
from quoting.core.place import at
from quoting.core.sale import Sale, fee_lines, sale_tax, solve_price
from quoting.core.terms import MOST_MONEY, Target
from quoting.core.workshop import Workshop

MARGIN_DIGITS = 4
ADJUSTMENTS = frozenset({LineKind.RUSH, LineKind.DISCOUNT, LineKind.MINIMUM})
"""Lines that move the price; they are no costs."""


@dataclass(frozen=True, slots=True, kw_only=True)
class Price:
    """What the buyer pays and where it goes, all in whole minor units of `currency`.

    `price` is the blankets without delivery, `each` one of them; `listed` is `price` before rush,
    discount and minimum. total = cost + fees + tax + profit, by construction.
    """

    currency: str
    target: Target
    lines: tuple[Line, ...]
    quantity: int
    listed: Decimal
    price: Decimal
    delivery: Decimal
    cost: Decimal
    fees: Decimal
    tax: Decimal
    total: Decimal
    deposit: Decimal
    payments: int
    hours: Decimal
    delivery_band_found: bool
    exchange: ExchangeRate | None

    @property
    def each(self) -> Decimal:
        """The price of one blanket."""
        return self.price / self.quantity

    @property
    def balance(self) -> Decimal:
        """What is left to pay after the deposit."""
        return self.total - self.deposit

    @property
    def profit(self) -> Decimal:
        """What is left after every cost, pay included."""
        return self.total - self.tax - self.fees - self.cost

    @property
    def margin(self) -> Decimal:
        """Profit over net revenue; nothing where there is none."""
        revenue = self.total - self.tax
        return round_half_up(self.profit / revenue, MARGIN_DIGITS) if revenue else Decimal(0)

    @property
    def own_pay(self) -> Decimal:
        """What the cost pays the maker, in making and in the office."""
        return self.amount(LineKind.MAKING) + self.amount(LineKind.OFFICE)

    @property
    def earned_per_hour(self) -> Decimal:
        """The maker's pay and profit over all hours; nothing where there are none."""
        if not self.hours:
            return Decimal(0)
        return round_money((self.profit + self.own_pay) / self.hours, self.currency)

    @property
    def buyer_total(self) -> Decimal | None:
        """The total in the buyer's currency, where that is another one."""
        return None if self.exchange is None else self.exchange.convert(self.total)

    def amount(self, kind: LineKind) -> Decimal:
        """Return the sum of the lines of one kind."""
        return sum((line.amount for line in self.lines if line.kind is kind), Decimal(0))


def price_estimate(order: Order, estimate: Estimate, workshop: Workshop) -> Price:
    """Return the price of an order at its target, or at the price given.

    Errors: `no-price` at the target's place when fees, tax and target leave nothing to solve;
    `price-too-large`; `price-not-positive` when the answer is nothing or less.
    """
    costs = cost_lines(order, estimate, workshop)
    grams = round_half_up(estimate.grams, 0)
    delivery, _, band_found = delivery_of(order, grams, workshop)
    sale = Sale(
        cost=sum((line.amount for line in costs), Decimal(0)),
        delivery=round_money(delivery, workshop.currency),
        tax=workshop.tax,
        fees=workshop.fees,
        payments=2 if workshop.pricing.deposit else 1,
        currency=workshop.currency,
    )
    target = order.terms.target or workshop.pricing.target
    listed_each = list_price(sale, target, order.quantity, workshop)
    moves = tuple(_moves(listed_each, order, workshop, given=target.given is not None))
    listed = listed_each * order.quantity
    price = _moved(listed, moves)
    tax = sale_tax(sale, price)
    fees = tuple(fee_lines(sale, price, tax))
    total = sale.total(price, tax)
    return Price(
        currency=workshop.currency,
        target=target,
        lines=(*costs, *moves, *fees),
        quantity=order.quantity,
        listed=listed,
        price=price,
        delivery=sale.delivery,
        cost=sale.cost,
        fees=sum((line.amount for line in fees), Decimal(0)),
        tax=tax,
        total=total,
        deposit=_deposit(total, costs, workshop),
        payments=sale.payments,
        hours=estimate.hours.total,
        delivery_band_found=band_found,
        exchange=_exchange(order, workshop),
    )


def list_price(sale: Sale, target: Target, quantity: int, workshop: Workshop) -> Decimal:
    """Return the price of one blanket, before rush, discount and minimum.

    Errors: as `solve_price`, and `price-too-large` at the target's place.
    """
    if target.given is not None:
        return round_money(target.given, sale.currency)
    minor = Decimal(1).scaleb(-minor_digits(sale.currency))
    step = workshop.pricing.round_up_to or minor
    solved = solve_price(sale, target) / quantity
    if solved > MOST_MONEY:
        raise refuse(target.place, "price-too-large", most=Decimal(MOST_MONEY))
    return round_up_to_step(solved, step)


def _moves(each: Decimal, order: Order, workshop: Workshop, *, given: bool) -> Iterator[Line]:
    """Yield what moves the listed price: a rush, a discount, and the least the maker takes.

    Each is rounded once, for one blanket, so that one has a price of its own.
    """
    shares = ((LineKind.RUSH, order.terms.rush), (LineKind.DISCOUNT, -order.terms.discount))
    for kind, share in shares:
        if share:
            rate = round_money(each * exact(share), workshop.currency)
            each += rate
            yield _move(kind, rate, order.quantity, exact(abs(share)))
    least = workshop.pricing.minimum
    if least is not None and each < least and not given:
        rise = round_money(least, workshop.currency) - each
        yield _move(LineKind.MINIMUM, rise, order.quantity)


def _moved(listed: Decimal, moves: Sequence[Line]) -> Decimal:
    """Return the price after all moves: only a discount can leave nothing of it."""
    price = listed + sum((line.amount for line in moves), Decimal(0))
    if price <= 0:
        raise refuse(at("price", "discount"), "price-not-positive", price=price)
    return price


def _move(kind: LineKind, rate: Decimal, quantity: int, share: Decimal | None = None) -> Line:
    return Line(
        kind=kind,
        quantity=Decimal(quantity),
        unit=Unit.PIECE,
        rate=rate,
        amount=rate * quantity,
        share=share,
    )


def _deposit(total: Decimal, costs: Sequence[Line], workshop: Workshop) -> Decimal:
    deposit = workshop.pricing.deposit
    if deposit is None:
        return round_money(Decimal(0), workshop.currency)
    if deposit.share is not None:
        return round_money(total * exact(deposit.share), workshop.currency)
    yarn = sum((line.amount for line in costs if line.kind is LineKind.YARN), Decimal(0))
    return min(round_money(yarn, workshop.currency), total)


def _exchange(order: Order, workshop: Workshop) -> ExchangeRate | None:
    pays_in = order.pays_in or workshop.currency
    return None if pays_in == workshop.currency else workshop.exchange[pays_in]
