"""The workbook of a comparison, read by its headings: what comes out, what is put in, the notes."""

from __future__ import annotations

import pytest
from openpyxl.workbook import Workbook

from quoting.core.ground.cautions import Reader
from quoting.core.ground.measures import Units
from quoting.core.ground.money import exact, round_money
from quoting.core.price.cost_lines import LineKind
from quoting.core.quote.quote import Quote
from quoting.core.weighing.comparison import Comparison
from quoting.wording import caution_sentence, speech_of
from tests.workbook.comparisons import comparisons
from tests.workbook.reading import Line, block, sentences
from tests.workbook.recalculation import opened

CM_PER_INCH, M_PER_YARD = 2.54, 0.9144
"""Both exact (NIST Handbook 44, appendix C)."""


def read(content: bytes) -> Workbook:
    return opened(content, values=True)


def every(found: Comparison) -> list[Quote]:
    """Return the quotes of the sizes asked, then of the order's own size."""
    sizes = [some.quote for some in found.sizes]
    return sizes if found.base is None else [*sizes, found.base]


@pytest.mark.parametrize("name", list(comparisons()))
def test_what_comes_out_of_each_size_is_the_plans_in_the_workshops_units(
    name: str, all_comparisons: dict[str, Comparison], written: dict[str, bytes]
) -> None:
    found = all_comparisons[name]
    lines = block(read(written[name])["Sizes"], "What comes out of each size")
    inches = found.sizes[0].quote.workshop.units is Units.INCHES
    unit, per, yarn, long = (
        ("in", CM_PER_INCH, "yd", M_PER_YARD) if inches else ("cm", 1.0, "m", 1.0)
    )
    for line, quote in zip(lines, every(found), strict=False):
        plan, estimate = quote.plan, quote.estimate
        assert line[f"width, {unit}"] == pytest.approx(plan.width_cm / per)
        assert line[f"length, {unit}"] == pytest.approx(plan.height_cm / per)
        assert line[f"area, {unit}²"] == pytest.approx(plan.width_cm * plan.height_cm / per**2)
        counts = {"stitches in a row": plan.stitches, "rows": len(plan.rows)}
        if plan.grid is not None:
            counts = {"motifs across": plan.grid.columns, "motifs down": plan.grid.rows}
        elif plan.rows[0].grows:
            counts = {"stitches in the last round": plan.stitches, "rounds": len(plan.rows)}
        assert {heading: line[heading] for heading in counts} == counts
        assert [line[head] for head in line if head.startswith("ends")] == [estimate.ends]
        assert line["skeins to buy"] == estimate.skeins
        assert line[f"yarn left, {yarn}"] == pytest.approx(estimate.metres_left / long)
    assert len(lines) >= len(found.sizes)


def test_sizes_in_inches_are_higher_than_wide_as_they_were_asked(
    all_comparisons: dict[str, Comparison], written: dict[str, bytes]
) -> None:
    """80 × 100 cm and 90 × 120 cm are about 31½ × 39⅜ and 35⅜ × 47¼ in."""
    cot, bed, *_ = block(read(written["inches"])["Sizes"], "What comes out of each size")
    assert (cot["width, in"], cot["length, in"]) == pytest.approx((31.5, 39.4), abs=0.6)
    assert (bed["width, in"], bed["length, in"]) == pytest.approx((35.4, 47.2), abs=0.6)
    assert [some.size.height_cm for some in all_comparisons["inches"].sizes] == [100, 120]


@pytest.mark.parametrize("name", list(comparisons()))
def test_what_is_put_in_for_each_size_stands_under_its_heading(
    name: str, all_comparisons: dict[str, Comparison], written: dict[str, bytes]
) -> None:
    found = all_comparisons[name]
    lines = block(read(written[name])["Sizes"], "What you put in for each size")
    for line, quote in zip(lines, every(found), strict=False):
        price = quote.price
        amounts = {
            "delivery paid": price.amount(LineKind.DELIVERY),
            "delivery charged": price.delivery,
        }
        shown = {heading: exact(line[heading]) for heading in amounts}
        shown["delivery paid"] = round_money(shown["delivery paid"], price.currency)
        assert shown == amounts


def sales(book: Workbook) -> list[Line]:
    return block(book["Working"], "What the buyer pays, and what is left")


@pytest.mark.parametrize("name", list(comparisons()))
def test_every_sale_is_reckoned_from_price_to_profit_under_its_headings(
    name: str, all_comparisons: dict[str, Comparison], written: dict[str, bytes]
) -> None:
    for line, some in zip(sales(read(written[name])), all_comparisons[name].sizes, strict=False):
        price = some.quote.price
        amounts = {
            "price of one": price.each,
            "price of all": price.price,
            "delivery": price.delivery,
            "sales tax": price.tax,
            "the buyer pays": price.total,
            "deposit": price.deposit,
            "part payment": price.parts.at_half,
            "payments": price.payments,
            "fees": price.fees,
            "costs": price.cost,
            "profit": price.profit,
            "an hour earns": price.earned_per_hour,
        }
        assert str(line["size"]).startswith(str(some.size))
        assert {heading: exact(line[heading]) for heading in amounts} == amounts


def test_sizes_that_were_called_alike_are_told_apart(written: dict[str, bytes]) -> None:
    names = [line["size"] for line in sales(read(written["called alike"]))]
    assert names[:3] == ["Pram", "Pram (2)", "Pram (2) (2)"]
    assert len(set(names)) == len(names)


@pytest.mark.parametrize("name", ["plain", "in three payments", "three of each, tax added"])
def test_deposit_and_balance_of_each_size_stand_under_their_headings(
    name: str, all_comparisons: dict[str, Comparison], written: dict[str, bytes]
) -> None:
    lines = block(read(written[name])["Working"], "What each sale comes to")
    for line, some in zip(lines, all_comparisons[name].sizes, strict=True):
        price, pay = some.quote.price, some.quote.workshop.pay
        assert exact(line["deposit"]) == price.deposit
        assert exact(line["balance"]) == price.balance
        assert exact(line["of it at half"]) == price.parts.at_half
        assert exact(line["hourly pay"]) == pay.making_per_hour
        assert exact(line["margin"]) == price.margin
        assert exact(line["price of 100 cm²"]) == some.price_per_100_cm2


@pytest.mark.parametrize("name", ["plain", "inches"])
def test_the_makers_cautions_and_the_buyers_are_not_mixed(
    name: str, all_comparisons: dict[str, Comparison], written: dict[str, bytes]
) -> None:
    found, sheet = all_comparisons[name], read(written[name])["Notes"]
    for title, reader in (("For you to note", Reader.MAKER), ("To tell the buyer", Reader.BUYER)):
        own = {
            caution_sentence(caution, speech_of(some.quote.workshop))
            for some in found.sizes
            for caution in some.quote.cautions
            if caution.reader is reader
        }
        said = sentences(sheet, title)
        assert own
        assert len(said) == len(own)
        assert all(any(each.endswith(sentence) for sentence in own) for each in said)
