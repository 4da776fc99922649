"""Every boxed figure of the costing, changed in turn, gives what the program gives for it.

What the program cannot be asked for leaves its figures as they are, or moves them by what it says.
"""

from __future__ import annotations

from collections.abc import Callable
from dataclasses import replace
from decimal import Decimal
from typing import Any

import pytest
from openpyxl.workbook import Workbook

from exports.costing_workbook import workbook_bytes
from quoting.core.ground.money import exact
from quoting.core.order.order import Extra, Order, Terms
from quoting.core.quote.quote import Quote
from quoting.core.workshop.exchange import ExchangeRate
from quoting.core.workshop.selling import Deposit, Fee, FeeBase, Target, Tax, TaxShown
from quoting.core.workshop.workshop import Workshop
from tests.examples import TODAY, sample_order, sample_quote, sample_workshop
from tests.workbook.inputs import Input, inputs_of
from tests.workbook.recalculation import named, opened, recalculated, saved
from tests.workbook.test_recalculation import main_figures, shown

TWO_FEES = (
    Fee(name="Card payment", rate=0.015, fixed=Decimal("0.20")),
    Fee(name="Market stall", rate=0.05, fixed=Decimal("0.10"), on=FeeBase.PRICE),
)
CROWNS = ExchangeRate(
    currency="SEK", rate=Decimal("13.12"), per=Decimal(1), day=TODAY, cushion=0.02
)
ALL_WELL = "All checks are well."


def shop() -> Workshop:
    """Return a workshop in which every term moves something."""
    sample = sample_workshop()
    return sample_workshop(
        tax=Tax(registered=True, rate=0.2),
        fees=TWO_FEES,
        exchange={"SEK": CROWNS},
        delivery=replace(sample.delivery, bands=()),
        pricing=replace(sample.pricing, minimum=Decimal(60)),
    )


def order() -> Order:
    """Return two blankets with an extra, a rush and a discount, paid in another currency."""
    return sample_order(
        quantity=2,
        extras=(Extra(what="Gift box", cost=Decimal("3.20")),),
        terms=Terms(rush=0.1, discount=0.05),
        pays_in="SEK",
    )


def quote(asked: Order | None = None, **changes: Any) -> Quote:
    """Return the quote of the order, with some of it or of the workshop changed."""
    return sample_quote(asked or order(), replace(shop(), **changes))


def _money(value: Any) -> Decimal:
    return Decimal(str(value))


def _terms(**changes: Any) -> Quote:
    return quote(replace(order(), terms=replace(order().terms, **changes)))


def _fee(label: str, **changes: Any) -> Quote:
    fees = tuple(replace(fee, **changes) if fee.name == label else fee for fee in TWO_FEES)
    return quote(fees=fees)


def _pricing(**changes: Any) -> Quote:
    return quote(pricing=replace(shop().pricing, **changes))


def _tax(**changes: Any) -> Quote:
    return quote(tax=replace(shop().tax, **changes))


def _pay(**changes: Any) -> Quote:
    return quote(pay=replace(shop().pay, **changes))


def _delivery(**changes: Any) -> Quote:
    return quote(delivery=replace(shop().delivery, **changes))


def _rate(**changes: Any) -> Quote:
    return quote(exchange={"SEK": replace(CROWNS, **changes)})


Asked = Callable[[Any], Quote]
AS_IT_WAS: Asked = lambda _: quote()  # noqa: E731 - one of a table

BY_COLUMN: dict[tuple[str, str], Asked] = {
    ("Making", "E"): lambda v: _pay(making_per_hour=_money(v)),
    ("Photographs, packing, letters", "E"): lambda v: _pay(office_per_hour=_money(v)),
    ("Overhead", "E"): lambda v: _pay(overhead_per_hour=_money(v)),
    ("Packaging", "E"): lambda v: _delivery(packaging=_money(v)),
    ("Delivery and post", "E"): lambda v: _delivery(paid=_money(v)),
    ("Gift box", "E"): lambda v: quote(
        replace(order(), extras=(Extra(what="Gift box", cost=_money(v)),))
    ),
    ("Card payment", "B"): lambda v: _fee("Card payment", on=FeeBase(v)),
    ("Card payment", "D"): lambda v: _fee("Card payment", rate=v),
    ("Card payment", "E"): lambda v: _fee("Card payment", fixed=_money(v)),
    ("Market stall", "B"): lambda v: _fee("Market stall", on=FeeBase(v)),
    ("Market stall", "D"): lambda v: _fee("Market stall", rate=v),
    ("Market stall", "E"): lambda v: _fee("Market stall", fixed=_money(v)),
    ("The price follows", "F"): lambda _: _pricing(target=Target(markup=0.0)),
    ("Margin", "F"): lambda v: _pricing(target=Target(margin=v)),
    ("Markup", "F"): AS_IT_WAS,
    ("Given price", "F"): AS_IT_WAS,
    ("Round up to", "F"): lambda v: _pricing(round_up_to=_money(v)),
    ("Rush", "F"): lambda v: _terms(rush=v),
    ("Discount", "F"): lambda v: _terms(discount=v),
    ("Least price", "F"): lambda v: _pricing(minimum=_money(v)),
    ("Delivery charged", "F"): lambda v: _delivery(charged=_money(v)),
    ("Deposit", "F"): lambda _: _pricing(deposit=None),
    ("Deposit, share of the total", "F"): lambda v: _pricing(deposit=Deposit(share=v)),
    ("Registered for it", "F"): lambda _: _tax(registered=False),
    ("Rate", "F"): lambda v: _tax(rate=v),
    ("In the price shown", "F"): lambda _: _tax(shown=TaxShown.ADDED),
    ("On delivery too", "F"): lambda _: _tax(on_delivery=False),
    ("SEK paid", "F"): lambda v: _rate(rate=_money(v)),
    ("for GBP", "F"): lambda v: _rate(per=_money(v)),
    ("Cushion", "F"): lambda v: _rate(cushion=v),
}
"""What the program is asked for instead of each figure, by its line and its column."""


def expected(changed: Input) -> Quote | None:
    """Return what the program gives for a change; None where it has no such figure."""
    if changed.kind == "textLength" or (changed.label == "" and changed.column in "BC"):
        return quote()
    if changed.label == "":
        return None
    ask = BY_COLUMN.get((changed.label, changed.column))
    return ask(changed.other) if ask else None


@pytest.fixture(scope="module")
def every_input() -> list[Input]:
    return list(inputs_of(opened(workbook_bytes(quote())), "Costing"))


@pytest.fixture(scope="module")
def changed(
    every_input: list[Input], tmp_path_factory: pytest.TempPathFactory
) -> dict[str, Workbook]:
    """Return the workbook with each input changed in turn, by its address, reckoned anew."""
    books = {}
    for each in every_input:
        book = opened(workbook_bytes(quote()))
        book[each.sheet][each.address].value = each.other  # type: ignore[assignment]
        books[each.address] = saved(book)
    return recalculated(books, tmp_path_factory.mktemp("costing"))


def test_every_figure_that_may_be_changed_is_one_that_this_test_knows(
    every_input: list[Input],
) -> None:
    lines = {(each.label, each.column) for each in every_input if each.label}
    pieces = {("Gift box", "C"), ("Packaging", "C")}
    names = {(name, "A") for name in ("Card payment", "Market stall")}
    assert lines == set(BY_COLUMN) | pieces | names


def test_each_gives_what_the_program_gives(
    every_input: list[Input], changed: dict[str, Workbook]
) -> None:
    wrong = {}
    for each in every_input:
        wanted = expected(each)
        if wanted is None:
            continue
        figures = main_figures(wanted)
        found = shown(changed[each.address], figures)
        buyer = exact(named(changed[each.address], "buyer_total"))
        if (found, buyer) != (figures, wanted.price.buyer_total):
            wrong[each.label, each.column, str(each.other)] = {
                name: (found[name], figure)
                for name, figure in figures.items()
                if found[name] != figure
            }
    assert wrong == {}


def test_more_of_an_extra_or_of_packaging_costs_what_the_line_says(
    every_input: list[Input], changed: dict[str, Workbook]
) -> None:
    """By hand: a third box at 3.20, a third wrapping at 1.10."""
    for each in every_input:
        if each.column == "C" and each.label:
            more = exact(each.other) - 2
            one = {"Gift box": Decimal("3.20"), "Packaging": Decimal("1.10")}[each.label]
            cost = exact(named(changed[each.address], "cost"))
            assert abs(cost - quote().price.cost - more * one) <= Decimal("0.01")


def test_none_of_these_changes_is_wrong_by_itself(
    every_input: list[Input], changed: dict[str, Workbook]
) -> None:
    states = {
        (each.label, each.column): named(changed[each.address], "state") for each in every_input
    }
    told = {place: said for place, said in states.items() if said != ALL_WELL}
    assert {place[0] for place in told} <= {""}, told
    assert all("not given" in str(said) for said in told.values())
