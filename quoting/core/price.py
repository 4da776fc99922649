"""From cost to price: what a blanket must be sold for, and what is left of that.

Margin is profit over net revenue, markup profit over cost: m = k/(1 + k) (textbook).
"""

from __future__ import annotations

from dataclasses import dataclass
from decimal import Decimal

from quoting.core.costing import Line, LineKind, cost_lines, delivery_of
from quoting.core.estimate import Estimate
from quoting.core.exchange import ExchangeRate
from quoting.core.money import round_half_up, round_money
from quoting.core.offer import make_offer
from quoting.core.order import Order
from quoting.core.sale import Sale, fee_lines
from quoting.core.terms import Target
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
    def listed_each(self) -> Decimal:
        """The price of one blanket before rush, discount and minimum."""
        return self.listed / self.quantity

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
    def pays_the_hour(self) -> bool:
        """Whether it leaves all that the cost pays the maker: its profit is not under nothing."""
        return self.profit >= 0

    @property
    def pay_per_hour(self) -> Decimal:
        """What an hour would have to earn to be paid, whatever the pay of each kind of hour."""
        return round_money(self.own_pay / self.hours, self.currency) if self.hours else Decimal(0)

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
        payments=1,
        currency=workshop.currency,
    )
    target = order.terms.target or workshop.pricing.target
    yarn = sum((line.amount for line in costs if line.kind is LineKind.YARN), Decimal(0))
    offer = make_offer(sale, target, order, workshop.pricing, yarn)
    fees = tuple(fee_lines(offer.sale, offer.price, offer.tax))
    return Price(
        currency=workshop.currency,
        target=target,
        lines=(*costs, *offer.moves, *fees),
        quantity=order.quantity,
        listed=offer.listed,
        price=offer.price,
        delivery=sale.delivery,
        cost=sale.cost,
        fees=sum((line.amount for line in fees), Decimal(0)),
        tax=offer.tax,
        total=offer.total,
        deposit=offer.deposit,
        payments=offer.sale.payments,
        hours=estimate.hours.total,
        delivery_band_found=band_found,
        exchange=_exchange(order, workshop),
    )


def _exchange(order: Order, workshop: Workshop) -> ExchangeRate | None:
    pays_in = order.pays_in or workshop.currency
    return None if pays_in == workshop.currency else workshop.exchange[pays_in]
