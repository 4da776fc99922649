"""Tax that is added to price and delivery, and fees on all that is paid, against sums by hand."""

from __future__ import annotations

from dataclasses import replace
from decimal import Decimal

import pytest
from openpyxl.workbook import Workbook

from exports.costing_workbook import workbook_bytes
from quoting.core.ground.money import exact
from quoting.core.order.order import Terms
from quoting.core.workshop.selling import Deposit, Fee, FeeBase, Pricing, Target, Tax, TaxShown
from quoting.core.workshop.workshop import Workshop
from tests.examples import sample_order, sample_quote, sample_workshop
from tests.workbook.reading import block, last_figures
from tests.workbook.recalculation import named, opened


def read(content: bytes) -> Workbook:
    return opened(content, values=True)


ADDED_TO_ALL = Tax(registered=True, rate=0.2, shown=TaxShown.ADDED, on_delivery=True)
ON_THE_TOTAL = (
    Fee(name="Card payment", rate=0.02, fixed=Decimal("0.30"), on=FeeBase.TOTAL),
    Fee(name="Market stall", rate=0.05, on=FeeBase.PRICE),
    Fee(name="Listing", rate=0.01, fixed=Decimal("0.10"), on=FeeBase.PRICE_AND_DELIVERY),
)


def taxed(**pricing: object) -> Workshop:
    terms = {"target": Target(margin=0.15), "deposit": Deposit(share=0.3)} | pricing
    return sample_workshop(
        tax=ADDED_TO_ALL,
        fees=ON_THE_TOTAL,
        pricing=Pricing(**terms),  # type: ignore[arg-type]
    )


def test_tax_added_to_price_and_delivery_and_fees_of_three_kinds_at_a_given_price() -> None:
    """By hand: of 200 and 5 the tax is 41.00 and the total 246.00.

    2 % of 246.00 is 4.92, 5 % of 200 is 10.00, 1 % of 205 is 2.05; two payments take 0.60 and 0.20.
    """
    order = sample_order(terms=Terms(target=Target(given=Decimal(200))))
    book = read(workbook_bytes(sample_quote(order, taxed())))
    found = {name: exact(named(book, name)) for name in ("price", "tax", "total", "fees")}
    assert found == {
        "price": Decimal(200),
        "tax": Decimal(41),
        "total": Decimal(246),
        "fees": Decimal("17.77"),
    }
    taken = [line for line in block(book["Costing"], "Fees") if "rate" in line]
    assert {line["A"]: (line["of"], line["takes"], line["as quoted"]) for line in taken} == {
        "Card payment": (246, 5.52, 5.52),
        "Market stall": (200, 10, 10),
        "Listing": (205, 2.25, 2.25),
    }
    assert (exact(named(book, "deposit")), exact(named(book, "balance"))) == (
        Decimal("73.80"),
        Decimal("172.20"),
    )


@pytest.mark.parametrize("target", [Target(margin=0.15), Target(markup=0.25)])
def test_the_solved_price_leaves_the_margin_or_the_markup_after_added_tax_and_all_fees(
    target: Target,
) -> None:
    """By hand: what is left of P and D after fees, net of a tax that is only passed on."""
    quote = sample_quote(None, taxed(target=target))
    sheet = read(workbook_bytes(quote))["Costing"]
    lines = last_figures(sheet, "From cost to price")
    (unrounded,) = (value for label, value in lines.items() if "before rounding" in label)
    price, delivered = Decimal(repr(unrounded)), quote.price.delivery
    total = Decimal("1.2") * (price + delivered)
    fees = Decimal("0.02") * total + Decimal("0.05") * price
    fees += Decimal("0.01") * (price + delivered) + Decimal("0.80")
    profit = price + delivered - fees - quote.price.cost
    wanted = (
        Decimal("0.15") * (price + delivered)
        if target.margin is not None
        else Decimal("0.25") * quote.price.cost
    )
    assert profit == pytest.approx(wanted, abs=Decimal("1e-9"))
    assert lines["Tax charged"] == lines["Tax charged on delivery"] == 0.2
    assert lines["Fees on each unit of the price"] == pytest.approx(0.02 * 1.2 + 0.05 + 0.01)
    assert lines["Fees on each unit of delivery"] == pytest.approx(0.02 * 1.2 + 0.01)
    assert lines["Payments of that"] == 2


def test_tax_that_is_not_charged_on_delivery_leaves_it_out() -> None:
    shop = replace(taxed(), tax=replace(ADDED_TO_ALL, on_delivery=False))
    order = sample_order(terms=Terms(target=Target(given=Decimal(200))))
    book = read(workbook_bytes(sample_quote(order, shop)))
    assert exact(named(book, "tax")) == 40
    assert exact(named(book, "total")) == 245
    lines = last_figures(book["Costing"], "From cost to price")
    assert (lines["Tax charged"], lines["Tax charged on delivery"]) == (0.2, 0)
