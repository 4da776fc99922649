"""A fee base that is one line more: price, files, JSON and workbook take fees of it unchanged."""

from __future__ import annotations

from collections.abc import Iterator
from decimal import Decimal
from pathlib import Path

import pytest
from openpyxl.worksheet.worksheet import Worksheet

from exports.comparison_workbook import comparison_bytes
from exports.costing_workbook import workbook_bytes
from exports.records.quote_record import quote_record
from quoting.core.ground.money import exact
from quoting.core.order.order import Terms
from quoting.core.quote.quote import Quote
from quoting.core.weighing.comparison import compare_sizes
from quoting.core.workshop.selling import Deposit, Fee, FeeBase, Pricing, Target, Tax, TaxShown
from quoting.core.workshop.workshop import Workshop
from quoting.places import demo_workshop
from quoting.schema import load_workshop_text
from tests.examples import TODAY, sample_order, sample_quote, sample_workshop
from tests.workbook.comparisons import COT, PRAM
from tests.workbook.recalculation import differing, named, opened, recalculated, saved

WORD = "delivery"
COURIER = "Courier's collection"


@pytest.fixture(scope="module")
def delivery() -> Iterator[FeeBase]:
    """Yield what the line `DELIVERY = "delivery", 0, 1, 0` would be among the bases.

    An enumeration is closed once it is defined, so its tables are reached for by their names.
    """
    base = FeeBase._new_member_(FeeBase, WORD, 0, 1, 0)
    base._name_ = "DELIVERY"
    base._sort_order_ = len(FeeBase)
    with pytest.MonkeyPatch.context() as patch:
        patch.setitem(FeeBase._member_map_, "DELIVERY", base)
        patch.setitem(FeeBase._value2member_map_, WORD, base)
        patch.setattr(FeeBase, "_member_names_", [*FeeBase._member_names_, "DELIVERY"])
        assert list(FeeBase)[-1] is base
        yield base


def shop(on: FeeBase, **pricing: object) -> Workshop:
    terms = {"target": Target(margin=0.15), "deposit": Deposit(share=0.3)} | pricing
    return sample_workshop(
        tax=Tax(registered=True, rate=0.2, shown=TaxShown.ADDED),
        fees=(
            Fee(name=COURIER, rate=0.1, fixed=Decimal("0.25"), on=on),
            Fee(name="Card payment", rate=0.02, on=FeeBase.TOTAL),
        ),
        pricing=Pricing(**terms),  # type: ignore[arg-type]
    )


@pytest.fixture(scope="module")
def quote(delivery: FeeBase) -> Quote:
    """Return the quote of a blanket at 200, with 5 to send it; 20 % are added to both."""
    order = sample_order(terms=Terms(target=Target(given=Decimal(200))))
    return sample_quote(order, shop(delivery))


def test_its_fee_is_taken_of_the_delivery_alone(quote: Quote) -> None:
    """By hand: a tenth of 5, and a quarter for each of two payments; 2 % of 246."""
    lines = [(line.subject, line.quantity, line.amount) for line in quote.lines[-3:]]
    assert lines == [
        (COURIER, 5, Decimal("0.50")),
        (COURIER, 2, Decimal("0.50")),
        ("Card payment", 246, Decimal("4.92")),
    ]
    assert quote.price.fees == Decimal("5.92")


def test_a_solved_price_bears_it(delivery: FeeBase) -> None:
    """By hand: what is left of P and D after fees, net of a tax that is only passed on."""
    quote = sample_quote(None, shop(delivery))
    price, equation = quote.price, quote.price.equation
    solved, sent = price.asking.asked, price.delivery
    fees = Decimal("0.1") * sent + Decimal("0.50") + Decimal("0.024") * (solved + sent)
    left = solved + sent - fees - price.cost
    assert left == pytest.approx(Decimal("0.15") * (solved + sent), abs=Decimal("1e-9"))
    assert equation.factors.price_fees == Decimal("0.024")
    assert equation.factors.delivery_fees == Decimal("0.124")


def test_a_file_may_name_it(delivery: FeeBase) -> None:
    text = demo_workshop().read_text("utf-8")
    assert 'on = "total"' in text
    workshop = load_workshop_text(text.replace('on = "total"', f'on = "{WORD}"', 1))
    assert delivery in [fee.on for fee in workshop.fees]


def test_json_tells_its_lines(quote: Quote) -> None:
    lines = [line for line in quote_record(quote)["price"]["lines"] if line["kind"] == "fee"]
    assert [(line["quantity"], line["rate"], line["amount"]) for line in lines[:2]] == [
        ("5.00", "0.1", "0.50"),
        (2, "0.25", "0.50"),
    ]


def test_a_workbook_offers_it_and_reckons_with_it(
    delivery: FeeBase, quote: Quote, tmp_path: Path
) -> None:
    """One that is written for it, and one for a fee on the total whose cell is set to it."""
    at_target = sample_quote(None, shop(delivery))
    sizes = compare_sizes(sample_order(), shop(delivery), [PRAM, COT], today=TODAY)
    changed = opened(workbook_bytes(sample_quote(None, shop(FeeBase.TOTAL))))
    cell = next(row[1] for row in changed["Costing"].iter_rows() if row[0].value == COURIER)
    assert WORD in choices_of(changed["Costing"], cell.coordinate)
    cell.value = WORD
    written = {
        "given": workbook_bytes(quote),
        "solved": workbook_bytes(at_target),
        "sizes": comparison_bytes(sizes),
    }
    anew = recalculated({**written, "changed": saved(changed)}, tmp_path)
    assert {name: differing(content, anew[name]) for name, content in written.items()} == {
        name: {} for name in written
    }
    figures = {"fees": at_target.price.fees, "total": at_target.price.total}
    assert {name: exact(named(anew["changed"], name)) for name in figures} == figures


def choices_of(sheet: Worksheet, address: str) -> str:
    """Return the words that a cell may hold."""
    rules = sheet.data_validations.dataValidation
    return next(rule.formula1 for rule in rules if address in rule.sqref)
