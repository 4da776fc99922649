"""Lines copied, put in, filled and taken out as in a maker's own program, and what is typed wrong.

All amounts are sums by hand of what the plain workbook says.
"""

from __future__ import annotations

from dataclasses import replace
from decimal import Decimal

import pytest
from openpyxl.workbook import Workbook

from exports.costing_workbook import workbook_bytes
from quoting.core.ground.money import exact
from quoting.core.order.order import Extra
from quoting.core.workshop.selling import Fee, FeeBase
from tests.examples import sample_order, sample_quote, sample_workshop
from tests.workbook.edited import Edit, broken_cells, edited
from tests.workbook.recalculation import named, opened, place_of
from tests.workbook.test_recalculation import main_figures, shown

BOX = Extra(what="Gift box", cost=Decimal("3.20"))
CARD = Extra(what="Card", cost=Decimal("1.75"))
BOXED = sample_order(extras=(BOX,))
STALL = Fee(name="Market stall", rate=0.05, fixed=Decimal("0.10"), on=FeeBase.PRICE)
PLAIN = workbook_bytes(sample_quote(BOXED))
WITH_CARD = sample_quote(sample_order(extras=(BOX, CARD)))
WITH_STALL = sample_quote(BOXED, sample_workshop(fees=(*sample_workshop().fees, STALL)))
ALL_WELL = "All checks are well."


def row_of(label: str, sheet: str = "Costing", column: str = "A") -> int:
    """Return the first row of that label: where it is told what it costs."""
    rows = (cell.row for cell in opened(PLAIN)[sheet][column] if cell.value == label)
    return next(int(row) for row in rows if row)


def at(name: str) -> str:
    """Return the address of a named cell of the costing."""
    return place_of(opened(PLAIN), name)[1].replace("$", "")


def _edits() -> dict[str, list[Edit]]:
    box, packaging, card_fee = row_of("Gift box"), row_of("Packaging"), row_of("Card payment")
    cost, making = "Costing", row_of("Making")
    return {
        "a spare line filled": [
            ("set", cost, f"A{box + 1}", "Card"),
            ("set", cost, f"E{box + 1}", 1.75),
        ],
        "a copied extra": [
            ("copy", cost, box, packaging),
            ("set", cost, f"E{packaging}", 1.75),
        ],
        "a copied extra above all": [
            ("copy", cost, box, row_of("Yarn, oat")),
            ("set", cost, f"E{row_of('Yarn, oat')}", 1.75),
        ],
        "a copied extra under all": [
            ("copy", cost, box, row_of("Delivery and post") + 1),
            ("set", cost, f"E{row_of('Delivery and post') + 1}", 1.75),
        ],
        "a yarn line copied under the others": [
            ("copy", cost, row_of("Yarn, oat"), row_of("Yarn, rust") + 1)
        ],
        "a yarn line taken out": [("delete", cost, row_of("Yarn, oat"))],
        "all yarn lines taken out": [("delete", cost, row_of("Yarn, oat"))] * 3,
        "a spare fee filled": [
            ("set", cost, f"A{card_fee + 1}", "Market stall"),
            ("set", cost, f"B{card_fee + 1}", "price"),
            ("set", cost, f"D{card_fee + 1}", 0.05),
            ("set", cost, f"E{card_fee + 1}", 0.1),
        ],
        "a copied fee": [
            ("copy", cost, card_fee, card_fee + 1),
            ("set", cost, f"B{card_fee + 1}", "price"),
            ("set", cost, f"D{card_fee + 1}", 0.05),
            ("set", cost, f"E{card_fee + 1}", 0.1),
        ],
        "an extra taken out": [("delete", cost, box)],
        "a fee taken out": [("delete", cost, card_fee)],
        "packaging taken out": [("delete", cost, packaging)],
        "overhead taken out": [("delete", cost, row_of("Overhead"))],
        "an empty line between": [("insert", cost, making)],
        "a line of no known kind": [("set", cost, f"H{box}", "ribbon")],
        "20 for 20%": [("set", cost, at("margin"), 20)],
        "a share in words": [("set", cost, at("margin"), "Margin 20%")],
        "nothing for a share": [("set", cost, at("margin"), "")],
        "a word that is none of them": [("set", cost, at("target"), "Margin 20%")],
        "a margin out of reach": [("set", cost, at("margin"), 0.99)],
        "pay under nothing": [("set", cost, f"E{making}", -14)],
        "an amount in words": [("set", cost, f"E{making}", "fourteen")],
        "an extra without its price": [("set", cost, f"A{box + 1}", "Card")],
    }


@pytest.fixture(scope="module")
def books(tmp_path_factory: pytest.TempPathFactory) -> dict[str, tuple[Workbook, Workbook]]:
    jobs = {name: (PLAIN, edits) for name, edits in _edits().items()}
    return edited(jobs, tmp_path_factory.mktemp("lines"))


@pytest.mark.parametrize(
    ("name", "wanted"),
    [
        ("a spare line filled", WITH_CARD),
        ("a copied extra", WITH_CARD),
        ("a copied extra above all", WITH_CARD),
        ("a copied extra under all", WITH_CARD),
        ("a spare fee filled", WITH_STALL),
        ("a copied fee", WITH_STALL),
        ("an extra taken out", sample_quote(sample_order(extras=()))),
        ("a fee taken out", sample_quote(BOXED, sample_workshop(fees=()))),
        (
            "packaging taken out",
            sample_quote(
                BOXED,
                sample_workshop(delivery=replace(sample_workshop().delivery, packaging=Decimal(0))),
            ),
        ),
        (
            "overhead taken out",
            sample_quote(
                BOXED,
                sample_workshop(pay=replace(sample_workshop().pay, overhead_per_hour=Decimal(0))),
            ),
        ),
        ("an empty line between", sample_quote(BOXED)),
        ("a yarn line copied under the others", sample_quote(BOXED)),
        ("a yarn line taken out", sample_quote(BOXED)),
        ("all yarn lines taken out", sample_quote(BOXED)),
    ],
)
def test_the_price_is_the_one_that_the_program_gives(
    name: str, wanted: object, books: dict[str, tuple[Workbook, Workbook]]
) -> None:
    figures = main_figures(wanted)  # type: ignore[arg-type]
    values, formulas = books[name]
    assert shown(values, figures) == figures
    assert named(values, "state") == ALL_WELL
    assert list(broken_cells(values, formulas)) == []


@pytest.mark.parametrize(
    ("name", "where", "what"),
    [
        ("a line of no known kind", "The costs by kind", "nothing that is known"),
        ("20 for 20%", "Margin", "a share"),
        ("a share in words", "Margin", "20%"),
        ("nothing for a share", "Margin", "a share"),
        ("a word that is none of them", "The price follows", "margin, markup, given price"),
        ("a margin out of reach", "Price of one before rounding", "No price can meet this"),
        ("pay under nothing", "Making", "not below 0"),
        ("an amount in words", "Making", "an amount"),
        ("an extra without its price", "Card", "not given"),
    ],
)
def test_what_is_wrong_is_said_on_top_of_every_sheet_with_where_it_stands(
    name: str, where: str, what: str, books: dict[str, tuple[Workbook, Workbook]]
) -> None:
    values, _ = books[name]
    said = str(named(values, "state"))
    assert said.startswith("Look here: ")
    assert where in said
    assert what in said
    for sheet in ("Summary", "Costing", "Yarn", "Hours", "Rows", "Actuals", "Notes"):
        head = values[sheet].iter_rows(max_row=4, max_col=2, values_only=True)
        assert said in [text for row in head for text in row], sheet


def test_where_no_price_meets_the_target_it_says_so_beside_the_price_and_asks_nothing(
    books: dict[str, tuple[Workbook, Workbook]],
) -> None:
    values, _ = books["a margin out of reach"]
    assert named(values, "price") == 0
    row = place_of(values, "price")[1].removeprefix("F")
    assert "No price can meet this" in str(values["Costing"][f"B{row}"].value)


def test_what_was_quoted_stays_beside_what_follows(
    books: dict[str, tuple[Workbook, Workbook]],
) -> None:
    values, _ = books["a spare line filled"]
    was, now = sample_quote(BOXED).price, WITH_CARD.price
    lines = {row[0].value: row for row in values["Summary"].iter_rows()}
    _, stands, quoted, difference = lines["All costs, your pay with them"][:4]
    assert (exact(stands.value), exact(quoted.value)) == (now.cost, was.cost)
    assert difference.value == pytest.approx(1.75)
