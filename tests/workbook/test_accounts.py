"""The accounts: every sum by formula, and the same when another program reckons it."""

from __future__ import annotations

from dataclasses import replace
from datetime import date
from decimal import Decimal

import pytest
from openpyxl.workbook import Workbook

from exports.accounts_workbook import Accounts, Booked, Received, accounts_bytes
from tests.examples import TODAY, sample_workshop
from tests.workbook.recalculation import differing, formula_cells, opened, recalculated, saved

POUNDS = Booked(
    number="2026-001",
    agreed=date(2026, 1, 7),
    done=date(2026, 2, 12),
    buyer="Rosalind Quill",
    currency="GBP",
    total=Decimal("289.00"),
    tax=Decimal("48.17"),
    fees=Decimal("4.54"),
    yarn=Decimal("27.60"),
    other_costs=Decimal("38.20"),
    hours=Decimal("17.53"),
    earned=Decimal("9.73"),
)
LATER = replace(
    POUNDS,
    number="2026-002/2",
    buyer='=HYPERLINK("x")',
    total=Decimal("310.00"),
    hours=Decimal("12.00"),
    earned=Decimal("15.96"),
)
UNTOLD = replace(POUNDS, number="2026-003", buyer="", hours=None, earned=None)
YEN = replace(
    POUNDS,
    number="2026-004",
    currency="JPY",
    total=Decimal(52_000),
    tax=Decimal(0),
    fees=Decimal(780),
    yarn=Decimal(5_100),
    other_costs=Decimal(6_000),
    hours=Decimal("16.00"),
    earned=Decimal(2_508),
)


def received(number: str, amount: str, currency: str = "GBP") -> Received:
    return Received(
        day=TODAY,
        number=number,
        title="Cot blanket",
        buyer="Rosalind Quill",
        amount=Decimal(amount),
        currency=currency,
    )


FULL = Accounts(
    workshop=sample_workshop(),
    day=TODAY,
    year=2026,
    orders=(POUNDS, LATER, UNTOLD, YEN),
    payments=(
        received("2026-001", "144.50"),
        received("2026-001", "144.50"),
        received("2026-002/2", "155.00"),
        received("2026-002/2", "-20.00"),
        received("2026-004", "52000", "JPY"),
        received("", "60.00"),
    ),
)
EMPTY = replace(FULL, year=None, orders=(), payments=())


@pytest.fixture(scope="module")
def written() -> dict[str, bytes]:
    return {"full": accounts_bytes(FULL), "empty": accounts_bytes(EMPTY)}


@pytest.fixture(scope="module")
def anew(
    written: dict[str, bytes], tmp_path_factory: pytest.TempPathFactory
) -> dict[str, Workbook]:
    further = opened(written["full"])
    further["Orders"]["F5"].value = 300
    further["Payments"]["E5"].value = 100
    changed = {"changed": saved(further)}
    return recalculated(written | changed, tmp_path_factory.mktemp("accounts"))


def row_of(book: Workbook, sheet: str, first: str, currency: str = "GBP") -> tuple[object, ...]:
    rows = book[sheet].iter_rows(values_only=True)
    return next(row for row in rows if row[0] == first and currency in row)


@pytest.mark.parametrize("name", ["full", "empty"])
def test_every_formula_comes_to_the_value_that_is_kept_beside_it(
    name: str, written: dict[str, bytes], anew: dict[str, Workbook]
) -> None:
    assert bool(list(formula_cells(written[name]))) is (name == "full")
    assert differing(written[name], anew[name]) == {}


def test_sums_are_by_currency_and_earnings_by_the_hours_that_are_known(
    anew: dict[str, Workbook],
) -> None:
    """By hand: (289 + 310 less twice 48.17, 4.54, 27.60 and 38.20) / 29.53 h = 12.26."""
    pounds = row_of(anew["full"], "Orders", "all orders")
    assert pounds[5:10] == pytest.approx((888.0, 144.51, 13.62, 82.8, 114.6))
    assert pounds[10:] == pytest.approx((29.53, 12.26, 424.0))
    yen = row_of(anew["full"], "Orders", "all orders", "JPY")
    assert yen[5:] == (52_000, 0, 780, 5_100, 6_000, 16, 2_508, 52_000)


def test_money_of_an_order_that_is_not_finished_is_received_all_the_same(
    anew: dict[str, Workbook],
) -> None:
    assert row_of(anew["full"], "Payments", "all payments")[4] == 484
    assert row_of(anew["full"], "Payments", "all payments", "JPY")[4] == 52_000


def test_what_is_changed_is_followed(anew: dict[str, Workbook]) -> None:
    """11 more asked, by hand: 181.49 / 17.53 h = 10.35; and 44.50 less received."""
    changed = row_of(anew["changed"], "Orders", "2026-001")
    assert changed[11:] == pytest.approx((10.35, 244.5))
    assert row_of(anew["changed"], "Orders", "all orders")[5] == 899


def test_no_text_is_a_formula(written: dict[str, bytes]) -> None:
    sheet = opened(written["full"])["Orders"]
    cell = next(c for row in sheet.iter_rows() for c in row if "HYPERLINK" in str(c.value))
    assert (cell.data_type, cell.quotePrefix) == ("s", True)


def test_the_same_accounts_are_the_same_bytes() -> None:
    assert accounts_bytes(FULL) == accounts_bytes(FULL)
