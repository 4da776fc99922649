"""From cost to price: what a blanket must be sold for, and what is left of that.

Margin is profit over net revenue, markup profit over cost: m = k/(1 + k) (textbook).
"""

from __future__ import annotations

from dataclasses import dataclass
from decimal import Decimal

from quoting.core.estimate.estimate import Estimate
from quoting.core.ground.money import round_half_up, round_money
from quoting.core.order.order import Order
from quoting.core.price.asking_price import AskingPrice, PricedAsPaid, asking_price_as_paid
from quoting.core.price.cost_lines import Line, LineKind, cost_lines, delivery_of
from quoting.core.price.payments import Payments, PaymentTerms
from quoting.core.price.price_equation import Equation
from quoting.core.price.sale import Sale, Sold, sell
from quoting.core.workshop.exchange import ExchangeRate
from quoting.core.workshop.selling import Target
from quoting.core.workshop.workshop import Workshop

MARGIN_DIGITS = 4
MOVES = (LineKind.RUSH, LineKind.DISCOUNT, LineKind.MINIMUM)
"""What moves the price, in this order; the lines are no costs."""

ADJUSTMENTS = frozenset(MOVES)


@dataclass(frozen=True, slots=True, kw_only=True)
class Price:
    """What the buyer pays and where it goes, all in whole minor units of `currency`.

    `as_paid` is how it comes about, and in how many payments. total = cost + fees + tax + profit,
    by construction.
    """

    as_paid: PricedAsPaid
    lines: tuple[Line, ...]
    quantity: int
    hours: Decimal
    delivery_band_found: bool
    exchange: ExchangeRate | None

    @property
    def asking(self) -> AskingPrice:
        """How it comes about and the sale that it is."""
        return self.as_paid.asking

    @property
    def equation(self) -> Equation:
        """What it was solved by, where it was not given."""
        return self.asking.equation

    @property
    def sold(self) -> Sold:
        """The sale at this price."""
        return self.asking.sold

    @property
    def sale(self) -> Sale:
        """The terms that it was reckoned on."""
        return self.sold.sale

    @property
    def target(self) -> Target:
        """What fixes it: a margin, a markup, or the price given."""
        return self.equation.target

    @property
    def currency(self) -> str:
        """The workshop's currency (ISO 4217)."""
        return self.sale.currency

    @property
    def listed(self) -> Decimal:
        """The price of all blankets before rush, discount and minimum."""
        return self.asking.listed

    @property
    def listed_each(self) -> Decimal:
        """The price of one blanket before rush, discount and minimum."""
        return self.listed / self.quantity

    @property
    def price(self) -> Decimal:
        """The blankets without delivery."""
        return self.sold.price

    @property
    def each(self) -> Decimal:
        """The price of one blanket."""
        return self.price / self.quantity

    @property
    def delivery(self) -> Decimal:
        """What the buyer pays for delivery."""
        return self.sale.delivery

    @property
    def delivery_paid(self) -> Decimal:
        """What delivery costs the maker, unrounded."""
        paid = (line.rate for line in self.lines if line.kind is LineKind.DELIVERY)
        return next(paid, Decimal(0))

    @property
    def cost(self) -> Decimal:
        """All that the order costs the maker, pay included."""
        return self.sale.cost

    @property
    def fees(self) -> Decimal:
        """What all fees take."""
        return self.sold.fees

    @property
    def tax(self) -> Decimal:
        """The sales tax."""
        return self.sold.tax

    @property
    def total(self) -> Decimal:
        """All that the buyer pays."""
        return self.sold.total

    @property
    def deposit(self) -> Decimal:
        """What is paid when the order is agreed."""
        return self.parts.deposit

    @property
    def balance(self) -> Decimal:
        """What is left to pay after the deposit, in one payment or in two."""
        return self.parts.balance

    @property
    def parts(self) -> Payments:
        """What is paid when."""
        return self.sold.payments

    @property
    def payments(self) -> int:
        """How many payments there are."""
        return self.parts.count

    @property
    def profit(self) -> Decimal:
        """What is left after every cost, pay included."""
        return self.sold.profit

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
        return self.earned_by(self.sold)

    @property
    def buyer_total(self) -> Decimal | None:
        """The total in the buyer's currency, where that is another one."""
        return None if self.exchange is None else self.exchange.convert(self.total)

    def amount(self, *kinds: LineKind) -> Decimal:
        """Return the sum of the lines of some kinds."""
        return sum((line.amount for line in self.lines if line.kind in kinds), Decimal(0))

    def yarn_cost(self, colour: str) -> Decimal:
        """Return what the yarn of one colour costs."""
        yarn = (line for line in self.lines if line.kind is LineKind.YARN)
        return sum((line.amount for line in yarn if line.subject == colour), Decimal(0))

    def change_each(self, kind: LineKind) -> Decimal:
        """Return by how much a rush, a discount or the minimum moves the price of one blanket."""
        moves = (line.rate for line in self.asking.moves if line.kind is kind)
        return next(moves, Decimal(0))

    def each_after(self, kind: LineKind) -> Decimal:
        """Return the price of one blanket after all that moves it, up to moves of a kind."""
        kinds = MOVES[: MOVES.index(kind) + 1]
        return self.listed_each + sum(map(self.change_each, kinds), Decimal(0))

    def sold_at(self, each: Decimal) -> Sold:
        """Return the sale were each blanket sold at so much, with no rush or discount."""
        return sell(self.sale, each * self.quantity)

    def earned_by(self, sold: Sold) -> Decimal:
        """Return the maker's pay and the profit of a sale over all hours; nothing without any."""
        if not self.hours:
            return Decimal(0)
        return round_money((sold.profit + self.own_pay) / self.hours, self.currency)


def price_estimate(order: Order, estimate: Estimate, workshop: Workshop) -> Price:
    """Return the price of an order at its target, or at the price given.

    Errors: `no-price` at the target's place when fees, tax and target leave nothing to solve;
    `price-too-large`; `price-not-positive` when the answer is nothing or less.
    """
    costs, pricing = cost_lines(order, estimate, workshop), workshop.pricing
    grams = round_half_up(estimate.grams, 0)
    delivery, _, band_found = delivery_of(order, grams, workshop)
    sale = Sale(
        cost=sum((line.amount for line in costs), Decimal(0)),
        delivery=round_money(delivery, workshop.currency),
        tax=workshop.tax,
        fees=workshop.fees,
        payments=1,
        currency=workshop.currency,
        paid=PaymentTerms(
            deposit=pricing.deposit,
            at_half=pricing.at_half,
            yarn=sum((line.amount for line in costs if line.kind is LineKind.YARN), Decimal(0)),
        ),
    )
    as_paid = asking_price_as_paid(sale, order.terms.target or pricing.target, order, pricing)
    fees = (part for part in as_paid.asking.sold.fee_parts if part.rate)
    return Price(
        as_paid=as_paid,
        lines=(*costs, *as_paid.asking.moves, *fees),
        quantity=order.quantity,
        hours=estimate.hours.total,
        delivery_band_found=band_found,
        exchange=_exchange(order, workshop),
    )


def _exchange(order: Order, workshop: Workshop) -> ExchangeRate | None:
    pays_in = order.pays_in or workshop.currency
    return None if pays_in == workshop.currency else workshop.exchange[pays_in]
