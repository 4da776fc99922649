"""Every input of the sheet of yarn, changed, emptied and spoiled; its lines copied and cleared."""

from __future__ import annotations

import re
from collections.abc import Callable, Iterator, Mapping
from dataclasses import replace
from decimal import Decimal
from typing import Any

import pytest
from openpyxl.cell.cell import Cell
from openpyxl.formula.translate import Translator
from openpyxl.workbook.workbook import Workbook

from exports.costing_workbook import workbook_bytes
from exports.sheets.cells import Look
from exports.sheets.checks import ALL_WELL
from exports.sheets.lines import FURTHER
from quoting.core.ground.money import exact
from quoting.core.quote.quote import Quote
from quoting.core.workshop.habits import Habits
from tests.examples import SMALL, sample_quote, sample_workshop, sample_yarn
from tests.workbook.orders import quotes
from tests.workbook.reading import block
from tests.workbook.recalculation import named, opened, place_of, recalculated, saved
from tests.workbook.retyped import Typed, retyped

ONE_WAY = sample_yarn(put_ups=(SMALL,), stock=())
DEARER = replace(SMALL, price=Decimal("5.75"))


def one_way(price: Decimal = SMALL.price) -> Quote:
    """Return a quote whose yarn is sold in one way only, at a price."""
    yarn = replace(ONE_WAY, put_ups=(replace(SMALL, price=price),))
    return sample_quote(None, sample_workshop(yarns=(yarn,), habits=Habits(allowance=0.1)))


def inputs(book: Workbook) -> list[Cell]:
    """Return all inputs of the sheet, found by their look."""
    cells = [cell for row in book["Yarn"].iter_rows() for cell in row]
    return [c for c in cells if isinstance(c, Cell) and c.style.startswith(Look.INPUT.value)]


def more(value: float) -> float:
    """Return another figure that the input takes, too."""
    return value + 2 if isinstance(value, int) and value >= 1 else value * 0.8 + 0.05


SPOILED: Mapping[str, Callable[[float], Any]] = {
    "changed": more,
    "emptied": lambda _: None,
    "in words": lambda _: "plenty",
}


def spoiled(name: str, content: bytes) -> Iterator[tuple[str, Typed]]:
    """Yield each input of a workbook changed, one at a time; of one, spoiled too."""
    ways = SPOILED if name == "one way" else {"changed": more}
    for cell in inputs(opened(content)):
        for way, change in ways.items():
            yield f"{name} {cell.coordinate} {way}", {("Yarn", cell.coordinate): change(cell.value)}


def row_of(book: Workbook, *words: str) -> int:
    """Return the row of the sheet whose first words are these."""
    sheet = book["Yarn"]
    return next(
        row
        for row in range(1, sheet.max_row + 1)
        if tuple(sheet.cell(row, 2 + place).value for place in range(len(words))) == words
    )


def copied(content: bytes, *words: str) -> bytes:
    """Return a workbook with a line copied onto the one that closes its list."""
    book = opened(content)
    sheet, row = book["Yarn"], row_of(book, *words)
    below = next(r for r in range(row, sheet.max_row) if sheet.cell(r, 2).value == FURTHER)
    for cell in sheet[row]:
        to = f"{cell.column_letter}{below}"
        formula = cell.data_type == "f"
        moved = Translator(cell.value, cell.coordinate).translate_formula(to) if formula else None
        sheet[to].value = moved or cell.value
    return saved(book)


def cleared(content: bytes, *words: str) -> bytes:
    """Return a workbook with a line emptied."""
    book = opened(content)
    for cell in book["Yarn"][row_of(book, *words)]:
        cell.value = None
    return saved(book)


def with_packs(content: bytes, packs: int, *words: str) -> Typed:
    """Return other packs in a line of a workbook."""
    return {("Yarn", f"E{row_of(opened(content), *words)}"): packs}


TEAL = ("teal", "moor aran", "100\u00a0g skeins")


@pytest.fixture(scope="module")
def as_written() -> dict[str, bytes]:
    chosen = {name: quotes()[name] for name in ("mixed, used",)}
    return {
        name: workbook_bytes(quote) for name, quote in (chosen | {"one way": one_way()}).items()
    }


@pytest.fixture(scope="module")
def anew(
    as_written: dict[str, bytes], tmp_path_factory: pytest.TempPathFactory
) -> dict[str, Workbook]:
    plain = as_written["one way"]
    changes = {name: dict(spoiled(name, content)) for name, content in as_written.items()}
    changes["one way"] |= {
        "dearer": {place_of(opened(plain), "ball_price_1"): float(DEARER.price)},
        "teal of one": with_packs(plain, 1, *TEAL),
        "teal of nine": with_packs(plain, 9, *TEAL),
    }
    moved = {"teal twice": copied(plain, *TEAL), "no teal": cleared(plain, *TEAL)}
    found = recalculated(as_written | moved, tmp_path_factory.mktemp("yarn"))
    for name, typed in changes.items():
        found |= retyped(as_written[name], typed, tmp_path_factory.mktemp("typed"))
    return found


def state(book: Workbook) -> str:
    return str(named(book, "state"))


def test_as_written_all_is_well(as_written: dict[str, bytes], anew: dict[str, Workbook]) -> None:
    assert {state(anew[name]) for name in as_written} == {ALL_WELL}


def test_every_changed_input_is_followed_exactly_or_told_at_the_top(
    anew: dict[str, Workbook],
) -> None:
    """A price follows exactly where the yarn is sold in one way only: nothing is told there."""
    exactly = {"one way " + place for place in price_places(anew["one way"])}
    found = {name: state(book) for name, book in anew.items() if name.endswith(" changed")}
    quiet = {name.removesuffix(" changed") for name, said in found.items() if said == ALL_WELL}
    assert len(found) >= 50
    assert quiet == exactly
    assert [said for said in found.values() if said.startswith(("#", "Err"))] == []


def price_places(book: Workbook) -> list[str]:
    return [place_of(book, "ball_price_1")[1]]


@pytest.mark.parametrize("way", ["emptied", "in words"])
def test_what_no_input_takes_is_told_at_the_top_and_breaks_no_figure(
    way: str, anew: dict[str, Workbook]
) -> None:
    books = {name: book for name, book in anew.items() if name.endswith(f" {way}")}
    well = [name for name, book in books.items() if not state(book).startswith("Look here: ")]
    broken = [
        (name, cell.coordinate, cell.value)
        for name, book in books.items()
        for row in book["Yarn"].iter_rows()
        for cell in row
        if re.match(r"#|Err:", str(cell.value))
    ]
    assert (well, broken) == ([], [])


def test_a_dearer_yarn_that_is_sold_in_one_way_gives_the_programs_costs(
    anew: dict[str, Workbook],
) -> None:
    price = one_way(DEARER.price).price
    assert exact(named(anew["dearer"], "cost")) == price.cost
    assert exact(named(anew["dearer"], "total")) == price.total


def yarn_cost(book: Workbook) -> float:
    lines = block(book["Costing"], "What it costs you")
    return sum(line["amount"] for line in lines if str(line.get("A")).startswith("Yarn"))


def test_a_line_of_packs_that_is_copied_is_paid_and_one_that_is_cleared_is_not(
    anew: dict[str, Workbook],
) -> None:
    packs = next(c for c in one_way().estimate.colours if c.colour == "teal").choice.bought[0].packs
    paid = yarn_cost(anew["one way"])
    assert yarn_cost(anew["teal twice"]) == pytest.approx(paid + packs * 4.6)
    assert yarn_cost(anew["no teal"]) == pytest.approx(paid - packs * 4.6)
    assert state(anew["teal twice"]).startswith("Look here: The lines of Yarn. teal, ")


def test_too_few_packs_are_told_with_what_is_short_and_how_many_would_do(
    anew: dict[str, Workbook],
) -> None:
    """A ball more has 200 m, and takes two tails of 15 cm for its join."""
    teal = next(c for c in one_way().estimate.colours if c.colour == "teal")
    packs = teal.choice.bought[0].packs
    assert packs == 2
    short = teal.metres_to_buy - 2 * 0.15 - 200
    book = anew["teal of one"]
    line = next(row for row in book["Yarn"].iter_rows(values_only=True) if row[1] == "teal")
    assert line[15] == pytest.approx(short)
    assert re.search(r"teal, \d+\.\d m short: 2 packs wanted$", state(book))


def test_too_many_packs_are_told_with_how_many_would_do(anew: dict[str, Workbook]) -> None:
    lines = list(anew["teal of nine"]["Yarn"].iter_rows(values_only=True))
    to_buy = next(row for row in lines if row[1:4] == TEAL)
    assert to_buy[5] == 2
    assert "2 wanted" in to_buy
    assert "ends and joins were counted for 2 skeins to buy" in state(anew["teal of nine"])


@pytest.mark.parametrize("name", ["mixed, used", "one way"])
def test_no_line_of_a_list_is_read_by_its_address(name: str, as_written: dict[str, bytes]) -> None:
    """A line that is taken out would leave `#REF!` where a formula names one of its cells."""
    book = opened(as_written[name])
    sheet = book["Yarn"]
    ranges = re.compile(r"\$[A-Z]+\$\d+:\$[A-Z]+\$\d+|\b(?!Yarn!)[A-Z][a-z]+!\$[A-Z]+\$\d+")
    single = re.compile(r"\$[A-Z]+\$\d+")
    read = {
        at.replace("$", "")
        for other in book
        for row in other.iter_rows()
        for cell in row
        if cell.data_type == "f" and (other is sheet or "Yarn!" in cell.value)
        for at in single.findall(ranges.sub("", cell.value))
        if other is sheet or f"Yarn!{at}" in cell.value
    }
    assumed = {a.attr_text.split("!")[1].replace("$", "") for a in book.defined_names.values()}
    headings = (Look.HEADING.value, Look.ASIDE_HEADING.value)
    assert {at for at in read - assumed if not sheet[at].style.startswith(headings)} == set()
