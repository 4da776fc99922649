"""From cost to price on the sheet of the costing: the equation solved, moves, tax, total."""

from __future__ import annotations

from dataclasses import dataclass
from decimal import Decimal

from exports.workbook.cells import (
    Cell,
    Formula,
    Look,
    Ref,
    Value,
    heads,
    reckoned,
    rounded,
    words,
)
from exports.workbook.grid import Grid
from exports.workbook.shapes import COUNT, SHARE, Shapes
from exports.workbook.solving import (
    charged_rate,
    costs_to_cover,
    delivery_fees,
    delivery_rate,
    fixed_fees,
    kept_share,
    net_factor,
    payments,
    price_fees,
    sale_of,
    tax_factors,
)
from exports.workbook.terms_block import GIVEN, TermRefs
from quoting.core.costing import LineKind
from quoting.core.quote import Quote
from quoting.core.sale import solve_price
from quoting.core.terms import TaxShown

OF_ALL = "of all blankets"
CANNOT = "No price can meet this: fees, tax and target take all of it."


@dataclass(frozen=True, slots=True, kw_only=True)
class PriceRefs:
    """What the buyer pays, and the count of payments."""

    payments: Ref
    price: Ref
    tax: Ref
    total: Ref


class _Writer:
    """Writes lines of one figure, with what is said of it."""

    def __init__(self, grid: Grid, shapes: Shapes) -> None:
        self.grid = grid
        self.shapes = shapes

    def figure(
        self, label: str, formula: Formula, shape: str, note: str = "", *, name: str = ""
    ) -> Ref:
        """Write one figure and return its cell."""
        look = Look.STRONG if name in ("price", "total") else Look.PLAIN
        ref = self.grid.line(
            words(label), words(note), None, None, None, Cell(formula, look, shape)
        )[-1]
        return self.grid.name(name, ref) if name else ref

    def money(
        self, label: str, expression: str, value: Value, note: str = "", *, name: str = ""
    ) -> Ref:
        """Write an amount of money."""
        return self.figure(label, Formula(expression, value), self.shapes.money, note, name=name)


def price_block(
    grid: Grid, quote: Quote, terms: TermRefs, cost: Ref, quantity: Ref, shapes: Shapes
) -> PriceRefs:
    """Write how the price follows from the costs and the terms; return what is paid."""
    writer, sale = _Writer(grid, shapes), sale_of(quote)
    grid.block("From cost to price")
    count = writer.figure("Payments", payments(terms, sale), COUNT, "two with a deposit")
    rate = writer.figure("Tax charged", charged_rate(terms, sale), SHARE)
    on_delivery = writer.figure("Tax charged on delivery", delivery_rate(terms, rate, sale), SHARE)
    solved = _solved(writer, quote, terms, cost, (count, rate, on_delivery))
    listed = _listed(writer, quote, terms, solved, quantity)
    price = _moved(writer, quote, terms, listed, quantity)
    tax = _tax(writer, quote, terms, price, (rate, on_delivery))
    added = f'IF({terms.shown}="{TaxShown.ADDED.value}",{tax},0)'
    total = writer.money(
        "The buyer pays",
        rounded(f"{price}+{terms.delivery}+{added}", shapes.digits),
        quote.price.total,
        "with delivery and tax",
        name="total",
    )
    return PriceRefs(payments=count, price=price, tax=tax, total=total)


def _solved(
    writer: _Writer, quote: Quote, terms: TermRefs, cost: Ref, parts: tuple[Ref, Ref, Ref]
) -> Ref:
    """Write the equation's factors and the price that solves it, unrounded."""
    sale, (count, rate, on_delivery) = sale_of(quote), parts
    g, _ = tax_factors(sale).net
    fee = writer.figure("Fees on each unit of the price", price_fees(terms, rate, sale), SHARE)
    delivery_fee = writer.figure(
        "Fees on each unit of delivery", delivery_fees(terms, on_delivery, sale), SHARE
    )
    fixed = writer.figure(
        "Fixed fees", fixed_fees(terms, count, sale), writer.shapes.money, "of all payments"
    )
    kept = writer.figure(
        "For costs and fees", kept_share(terms, quote), SHARE, "of what is left after tax"
    )
    cover = writer.figure(
        "Costs to cover", costs_to_cover(terms, cost, quote), writer.shapes.money, "with the markup"
    )
    left = writer.figure(
        "For costs, of each unit of the price",
        Formula(f"{kept}/{net_factor(terms, rate)}-{fee}", _number(kept) / g - _number(fee)),
        SHARE,
        "after tax and fees",
    )
    delivered = f"{kept}*{terms.delivery}/{net_factor(terms, on_delivery)}"
    solved = f"({cover}+{fixed}+{delivery_fee}*{terms.delivery}-{delivered})/{left}"
    given = quote.price.target.given
    return writer.money(
        "Price before rounding",
        f'IF({terms.target}="{GIVEN}",{terms.given},IF({left}>0,MAX(0,{solved}),0))',
        solve_price(sale, quote.price.target) if given is None else given,
        "of all blankets, or the given price of one",
    )


def _listed(writer: _Writer, quote: Quote, terms: TermRefs, solved: Ref, quantity: Ref) -> Ref:
    """Write the list price of all blankets: rounded up to the step for each."""
    digits, price = writer.shapes.digits, quote.price
    steps = f"ROUNDUP(ROUND({solved}/{quantity}/{terms.step},6),0)*{terms.step}"
    up = f"IF({terms.step}>0,{steps},{solved}/{quantity})"
    each = writer.money(
        "List price of one",
        rounded(f'IF({terms.target}="{GIVEN}",{terms.given},{up})', digits),
        price.listed / price.quantity,
        "rounded up to the step",
        name="list_price_each",
    )
    said = f'IF({each}>0,"{OF_ALL}","{CANNOT}")'
    listed = reckoned(f"{each}*{quantity}", price.listed, writer.shapes.money)
    note = Cell(Formula(said, OF_ALL), Look.LABEL)
    return writer.grid.line(words("List price"), note, None, None, None, listed)[-1]


def _moved(writer: _Writer, quote: Quote, terms: TermRefs, listed: Ref, quantity: Ref) -> Ref:
    """Write rush, discount and least price, each rounded for one blanket, and the price."""
    digits, money = writer.shapes.digits, writer.shapes.money
    amounts = {kind: quote.price.amount(kind) for kind in LineKind}
    rush, discount = amounts[LineKind.RUSH], amounts[LineKind.DISCOUNT]
    writer.grid.line(*heads("", "", "blankets", "", "for one", "amount", figures_from=2))
    shares = (("Rush", str(terms.rush), rush), ("Discount", f"-{terms.discount}", discount))
    moved = str(listed)
    for label, share, amount in shares:
        row = writer.grid.next_row
        ref = writer.grid.line(
            words(label),
            words("as a share of the price so far"),
            reckoned(str(quantity), quantity.value, COUNT),
            None,
            reckoned(
                rounded(f"({moved})/{quantity}*{share}", digits),
                amount / quote.price.quantity,
                money,
            ),
            reckoned(f"Costing!C{row}*Costing!E{row}", amount, money),
        )[-1]
        moved = f"{moved}+{ref}"
    rise = _rise(writer, quote, terms, moved, quantity)
    return writer.money(
        "Price",
        rounded(f"{moved}+{rise}", digits),
        quote.price.price,
        "of all blankets, without delivery",
        name="price",
    )


def _rise(writer: _Writer, quote: Quote, terms: TermRefs, moved: str, quantity: Ref) -> Ref:
    """Write what brings the price up to the least one; a given price stays as it is."""
    digits, money = writer.shapes.digits, writer.shapes.money
    each = rounded(f"({moved})/{quantity}", digits)
    under = f'AND({terms.target}<>"{GIVEN}",{each}<{terms.minimum})'
    up = rounded(f"{rounded(str(terms.minimum), digits)}-{each}", digits)
    amount = quote.price.amount(LineKind.MINIMUM)
    row = writer.grid.next_row
    return writer.grid.line(
        words("Up to the least price"),
        None,
        reckoned(str(quantity), quantity.value, COUNT),
        words(""),
        reckoned(f"IF({under},{up},0)", amount / quote.price.quantity, money),
        reckoned(f"Costing!C{row}*Costing!E{row}", amount, money),
    )[-1]


def _tax(writer: _Writer, quote: Quote, terms: TermRefs, price: Ref, rates: tuple[Ref, Ref]) -> Ref:
    rate, _ = rates
    taxed = f'({price}+IF({terms.on_delivery}="yes",{terms.delivery},0))*{rate}'
    inside = f'/IF({terms.shown}="{TaxShown.INCLUDED.value}",1+{rate},1)'
    return writer.money(
        "Sales tax",
        rounded(f"{taxed}{inside}", writer.shapes.digits),
        quote.price.tax,
        "inside the price, or added to it",
        name="tax",
    )


def _number(ref: Ref) -> Decimal:
    assert isinstance(ref.value, Decimal), "the equation is solved in decimals"  # noqa: S101
    return ref.value
