"""Every boxed figure of a comparison, changed in turn, gives what the program gives for it.

Where the program counts anew and a formula cannot, one of the checks says so.
"""

from __future__ import annotations

from collections.abc import Mapping
from dataclasses import replace
from decimal import Decimal
from typing import Any

import pytest
from openpyxl.workbook import Workbook

from exports.comparison_workbook import comparison_bytes
from quoting.core.order.order import Extra, Terms
from quoting.core.quote.quote import Quote
from quoting.core.weighing.comparison import Compared, Comparison, rules_of_thumb
from quoting.core.workshop.selling import Fee, FeeBase, Tax
from quoting.core.workshop.timings import Timing
from tests.examples import sample_minutes, sample_order, sample_workshop
from tests.workbook.comparison.figures import figures, shown
from tests.workbook.comparisons import COT, PRAM, compared
from tests.workbook.inputs import Input, inputs_of
from tests.workbook.jobs import ALL_WELL, TERMS, TWO_FEES, Change, Job, as_it_was, money, pay_of
from tests.workbook.recalculation import named, opened
from tests.workbook.retyped import Typed, retyped

REST = 0.1
SHEETS = {"Sizes": "A", "Terms": "A", "Yarn": "B", "Hours": "B"}
"""The column that says what a line is about, by the sheet."""

JOB = Job(
    order=sample_order(
        quantity=2,
        extras=(Extra(what="Gift box", cost=Decimal("3.20"), minutes=5),),
        terms=Terms(rush=0.1, discount=0.05),
    ),
    shop=sample_workshop(
        tax=Tax(registered=True, rate=0.2),
        fees=TWO_FEES,
        delivery=replace(sample_workshop().delivery, bands=()),
        pay=replace(sample_workshop().pay, rest_allowance=REST),
        minutes=sample_minutes(rip_back=0.05, swatch=(30.0,)),
    ),
)
"""An order and a workshop in which every input moves something."""


def of(job: Job) -> Comparison:
    """Return two sizes of a job, of which the second is the order's own."""
    return compared(PRAM, COT, order=job.order, workshop=job.shop)


def _pace(job: Job, minutes_of_one: float) -> Job:
    """Return what a timing of 500 stitches gives that took so long for each, rest and turns in."""
    minutes = minutes_of_one * 500 / (1 + REST)
    timing = Timing(stitch="hdc", stitches=500, minutes=minutes, rows=5, hands_on=True)
    return job.shop_with(timings=(timing,))


def _minutes(what: str) -> Change:
    return lambda job, v: job.part("minutes", **{what: (v,)})


CHORES = {
    "changing colour": "change_colour",
    "joining a skein": "join",
    "weaving in an end": "weave_in_end",
    "starting and finishing": "start_and_finish",
    "blocking": "wash",
    "swatching": "swatch",
    "photos": "photograph",
    "packing": "pack",
    "messages with the buyer": "letters",
}
ASKED: Mapping[tuple[str, str, str], Change] = {
    **{("Terms", *place): change for place, change in (TERMS | pay_of("F")).items()},
    **{("Hours", said, "E"): _minutes(what) for said, what in CHORES.items()},
    ("Hours", "", "C"): _minutes("turn"),
    ("Hours", "1", "C"): _pace,
    ("Hours", "", "E"): lambda job, v: job.part("minutes", rip_back=v),
    ("Hours", "times as wide as measured", "E"): lambda job, v: job.part("ranges", hours=v),
    ("Hours", "extras", "E"): lambda job, v: job.extra(minutes=v / 2),
    **{("Sizes", size, "D"): as_it_was for size in ("60x75cm", "80x100cm")},
}
"""What the program is asked for instead of a figure, by its sheet, its line and its column."""

OF_ONE_SIZE: Mapping[str, Change] = {
    "B": lambda job, v: job.part("delivery", paid=money(v)),
    "C": lambda job, v: job.part("delivery", charged=money(v)),
}
"""The same of what is put in for one size, by its column."""

SMALL_BALLS, LARGE_BALLS = "100\u00a0g skeins", "400\u00a0g skeins"
COUNTED_ANEW = {("Yarn", SMALL_BALLS, "E"), ("Yarn", LARGE_BALLS, "E")}
"""What the choice of balls hangs on."""


def _place(each: Input) -> tuple[str, str, str]:
    return each.sheet, each.label, each.column


def _spare(each: Input) -> bool:
    """Return whether it is of a line for a further extra or fee."""
    return each.sheet == "Terms" and each.label == ""


def _of_one_size(changed: Comparison, size: str) -> Comparison:
    """Return the comparison of which one size, or the order's own, is as it is in another."""
    was, names = of(JOB), ("60x75cm", "80x100cm")
    now = {name: some.quote for name, some in zip(names, changed.sizes, strict=True)}
    base = changed.base if size not in names else was.base
    assert base is not None
    quotes = [
        now[name] if name == size else some.quote
        for name, some in zip(names, was.sizes, strict=True)
    ]
    return replace(was, base=base, sizes=tuple(_rated(was, quotes, base)))


def _rated(was: Comparison, quotes: list[Quote], base: Quote) -> list[Compared]:
    return [
        replace(some, quote=quote, rules=rules_of_thumb(quote, base))
        for some, quote in zip(was.sizes, quotes, strict=True)
    ]


def expected(each: Input) -> Comparison | None:
    """Return what the program gives for a change; None where it is said that it counts anew."""
    if each.sheet == "Sizes" and each.column in OF_ONE_SIZE:
        return _of_one_size(of(OF_ONE_SIZE[each.column](JOB, each.other)), each.label)
    ask = ASKED.get(_place(each))
    return of(ask(JOB, each.other)) if ask else None


@pytest.fixture(scope="module")
def content() -> bytes:
    return comparison_bytes(of(JOB))


@pytest.fixture(scope="module")
def every_input(content: bytes) -> list[Input]:
    book = opened(content)
    return [each for sheet, labels in SHEETS.items() for each in inputs_of(book, sheet, labels)]


@pytest.fixture(scope="module")
def changed(
    content: bytes, every_input: list[Input], tmp_path_factory: pytest.TempPathFactory
) -> dict[str, Workbook]:
    """Return the workbook with each input changed in turn, and some others, reckoned anew."""
    changes: dict[str, Typed] = {
        f"{each.sheet}-{each.address}": {(each.sheet, each.address): each.other}
        for each in every_input
    }
    at = {_place(each): (each.sheet, each.address) for each in every_input}
    changes["dearer balls"] = {
        at["Yarn", SMALL_BALLS, "E"]: 4.60 * 1.5,
        at["Yarn", LARGE_BALLS, "E"]: 17.00 * 1.5,
    }
    changes["too much asked"] = {at["Terms", "Margin", "F"]: 0.99}
    changes["a word of nobody's"] = {at["Terms", "The price follows", "F"]: "Margin 20%"}
    changes["emptied"] = {at["Hours", "packing", "E"]: None}
    return retyped(content, changes, tmp_path_factory.mktemp("inputs"))


def test_every_figure_that_may_be_changed_is_one_that_this_test_knows(
    every_input: list[Input],
) -> None:
    names = ("60x75cm", "80x100cm", "the order's own size")
    sizes = {("Sizes", name, column) for name in names for column in OF_ONE_SIZE}
    found = {_place(each) for each in every_input if not _spare(each)}
    assert found == set(ASKED) | COUNTED_ANEW | sizes


def test_each_gives_what_the_program_gives_or_says_that_it_cannot(
    every_input: list[Input], changed: dict[str, Workbook]
) -> None:
    wrong = {}
    for each in every_input:
        book, wanted = changed[f"{each.sheet}-{each.address}"], expected(each)
        if wanted is None:
            continue
        found = shown(book, len(wanted.sizes))
        if (found, named(book, "state")) != (figures(wanted), ALL_WELL):
            wrong[_place(each)] = named(book, "state"), found, figures(wanted)
    assert wrong == {}


def test_a_price_of_one_ball_alone_is_said_to_ask_for_another_choice(
    every_input: list[Input], changed: dict[str, Workbook]
) -> None:
    for each in every_input:
        if _place(each) in COUNTED_ANEW:
            book = changed[f"{each.sheet}-{each.address}"]
            assert "the program chooses anew" in str(named(book, "state"))


def test_balls_that_all_cost_more_by_the_same_share_cost_what_the_program_says(
    changed: dict[str, Workbook],
) -> None:
    yarns = tuple(
        replace(
            yarn,
            put_ups=tuple(
                replace(put_up, price=put_up.price * Decimal("1.5")) for put_up in yarn.put_ups
            ),
        )
        for yarn in JOB.shop.yarns
    )
    wanted, book = of(JOB.shop_with(yarns=yarns)), changed["dearer balls"]
    assert shown(book, 2) == figures(wanted)
    assert named(book, "state") == ALL_WELL


def test_where_no_price_meets_the_target_the_price_says_so(changed: dict[str, Workbook]) -> None:
    book = changed["too much asked"]
    assert [row["price of one"] for row in _answers(book)] == ["no price", "no price"]
    assert "no price meets the target" in str(named(book, "state"))
    assert str(book["Sizes"]["A2"].value).startswith("Look here: ")


def _answers(book: Workbook) -> list[dict[str, Any]]:
    sheet = book["Sizes"]
    heads = next(cell.row for cell in sheet["A"] if cell.value == "In short") + 1
    titles = [cell.value for cell in sheet[heads]]
    return [
        dict(zip(titles, (cell.value for cell in sheet[heads + at]), strict=True)) for at in (1, 2)
    ]


@pytest.mark.parametrize(
    ("name", "said"), [("a word of nobody's", "wanted"), ("emptied", "a number, not below 0")]
)
def test_what_cannot_stand_in_an_input_is_told_on_top_of_every_sheet(
    name: str, said: str, changed: dict[str, Workbook]
) -> None:
    book = changed[name]
    for title in (*SHEETS, "Working"):
        assert str(book[title]["A2"].value).startswith("Look here: "), title
    assert said in str(named(book, "state")) or "one of margin" in str(named(book, "state"))


def test_an_extra_and_a_fee_on_lines_that_wait_for_them_are_reckoned_with(
    content: bytes, every_input: list[Input], tmp_path: Any
) -> None:
    spare = [each for each in every_input if _spare(each)]
    extra = next(each for each in spare if each.column == "E")
    fee = next(each for each in spare if each.column == "D")
    cells = {
        ("Terms", f"A{extra.address[1:]}"): "Ribbon",
        ("Terms", extra.address): 2.5,
        ("Terms", f"A{fee.address[1:]}"): "Listing",
        ("Terms", fee.address): 0.03,
    }
    ribbon = Extra(what="Ribbon", cost=Decimal("2.50"))
    listing = Fee(name="Listing", rate=0.03, on=FeeBase.TOTAL)
    more = replace(JOB.order, extras=(*JOB.order.extras, ribbon))
    wanted = of(replace(JOB, order=more).shop_with(fees=(*TWO_FEES, listing)))
    book = retyped(content, {"more": cells}, tmp_path)["more"]
    assert shown(book, 2) == figures(wanted)
    assert named(book, "state") == ALL_WELL
