"""Every boxed figure of the costing, changed in turn, gives what the program gives for it.

What the program cannot be asked for leaves its figures as they are, or moves them by what it says.
"""

from __future__ import annotations

from collections.abc import Mapping
from dataclasses import replace
from decimal import Decimal
from typing import Any

import pytest
from openpyxl.workbook import Workbook

from exports.costing_workbook import workbook_bytes
from quoting.core.ground.money import exact
from quoting.core.order.order import Extra, Terms
from quoting.core.quote.quote import Quote
from quoting.core.workshop.exchange import ExchangeRate
from quoting.core.workshop.selling import Tax
from tests.examples import TODAY, sample_order, sample_quote, sample_workshop
from tests.workbook.inputs import Input, inputs_of
from tests.workbook.jobs import (
    ALL_WELL,
    TERMS,
    TWO_FEES,
    Change,
    Job,
    Place,
    as_it_was,
    money,
    pay_of,
)
from tests.workbook.recalculation import named, opened
from tests.workbook.retyped import retyped
from tests.workbook.test_recalculation import main_figures, shown

CROWNS = ExchangeRate(
    currency="SEK", rate=Decimal("13.12"), per=Decimal(1), day=TODAY, cushion=0.02
)
JOB = Job(
    order=sample_order(
        quantity=2,
        extras=(Extra(what="Gift box", cost=Decimal("3.20")),),
        terms=Terms(rush=0.1, discount=0.05),
        pays_in="SEK",
    ),
    shop=sample_workshop(
        tax=Tax(registered=True, rate=0.2),
        fees=TWO_FEES,
        exchange={"SEK": CROWNS},
        delivery=replace(sample_workshop().delivery, bands=()),
    ),
)
"""Two blankets with an extra, paid in another currency, in a workshop whose every term counts."""


def quoted(job: Job) -> Quote:
    return sample_quote(job.order, job.shop)


def _rate(job: Job, **changes: Any) -> Job:
    return job.shop_with(exchange={"SEK": replace(CROWNS, **changes)})


ASKED: Mapping[Place, Change] = {
    **TERMS,
    **pay_of("E"),
    ("Delivery and post", "E"): lambda job, v: job.part("delivery", paid=money(v)),
    ("Delivery charged", "F"): lambda job, v: job.part("delivery", charged=money(v)),
    ("Given price", "F"): as_it_was,
    ("SEK paid", "F"): lambda job, v: _rate(job, rate=money(v)),
    ("for GBP", "F"): lambda job, v: _rate(job, per=money(v)),
    ("Cushion", "F"): lambda job, v: _rate(job, cushion=v),
}
"""What the program is asked for instead of each figure, by its line and its column."""


def expected(changed: Input) -> Quote | None:
    """Return what the program gives for a change; None where it has no such figure."""
    if changed.kind == "textLength" or (changed.label == "" and changed.column in "BC"):
        return quoted(JOB)
    if changed.label == "":
        return None
    ask = ASKED.get((changed.label, changed.column))
    return quoted(ask(JOB, changed.other)) if ask else None


@pytest.fixture(scope="module")
def every_input() -> list[Input]:
    return list(inputs_of(opened(workbook_bytes(quoted(JOB))), "Costing"))


@pytest.fixture(scope="module")
def changed(
    every_input: list[Input], tmp_path_factory: pytest.TempPathFactory
) -> dict[str, Workbook]:
    """Return the workbook with each input changed in turn, by its address, reckoned anew."""
    changes = {each.address: {(each.sheet, each.address): each.other} for each in every_input}
    return retyped(workbook_bytes(quoted(JOB)), changes, tmp_path_factory.mktemp("costing"))


def test_every_figure_that_may_be_changed_is_one_that_this_test_knows(
    every_input: list[Input],
) -> None:
    lines = {(each.label, each.column) for each in every_input if each.label}
    pieces = {("Gift box", "C"), ("Packaging", "C")}
    assert lines == set(ASKED) | pieces


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
            assert abs(cost - quoted(JOB).price.cost - more * one) <= Decimal("0.01")


def test_none_of_these_changes_is_wrong_by_itself(
    every_input: list[Input], changed: dict[str, Workbook]
) -> None:
    states = {
        (each.label, each.column): named(changed[each.address], "state") for each in every_input
    }
    told = {place: said for place, said in states.items() if said != ALL_WELL}
    assert {place[0] for place in told} <= {""}, told
    assert all("not given" in str(said) for said in told.values())
