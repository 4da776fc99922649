"""Every construction stands in every table, and goes through all that is made of an order."""

from __future__ import annotations

import ast
from collections.abc import Iterator
from functools import partial
from io import BytesIO
from pathlib import Path
from typing import Any, get_args

import pytest
from openpyxl import load_workbook

from exports.comparison_workbook import comparison_bytes
from exports.costing_workbook import workbook_bytes
from exports.drawing import draw_blanket
from exports.drawing.bodies import DRAWN
from exports.records.construction_record import OWN
from exports.records.near_record import near_record
from exports.records.quote_record import quote_record
from quoting.cli.body_facts import FACTS
from quoting.cli.near_table import near_table
from quoting.cli.quote_table import quote_table
from quoting.core.order import bodies
from quoting.core.order.bodies import Body
from quoting.core.order.in_rows import InRows
from quoting.core.order.resizing import Size
from quoting.core.plan.body_plans import PLANS
from quoting.core.quote.offer import offer_of
from quoting.core.quote.quote import Quote
from quoting.core.weighing.budget import savings
from quoting.core.weighing.calmer_designs import CALMER, calmer_designs
from quoting.core.weighing.closing import closing_of
from quoting.core.weighing.comparison import compare_sizes
from quoting.core.weighing.neighbours import NEAR, neighbours
from quoting.core.workshop.stitches import Vocabulary
from quoting.schema import load_order_text, order_text
from quoting.schema.blanket_shapes import SHAPES
from quoting.schema.notation import RECORD
from quoting.schema.offer_shape import offer_record, read_offer
from quoting.schema.order_shape import ORDER
from quoting.schema.reading import read_order
from quoting.web.orders.body_forms import FORMS
from quoting.wording import body_words, change_words, closed_words, counts_words, speech_of
from quoting.wording.bodies import TOLD
from quoting.wording.calmer import CALMER_WORDS, calmer_words
from quoting.wording.guide import guide_paper
from tests.constructed import from_centre, motif_workshop, squares
from tests.constructions.conftest import maker_with
from tests.constructions.plain_square import PlainSquare
from tests.examples import TODAY, sample_design, sample_order, sample_quote

PROJECT = Path(__file__).parents[2]
OWN_BODIES = {*get_args(Body)}
IN_ALL = {"PLANS", "SHAPES", "TOLD", "DRAWN", "FORMS"}
ASKED_FOR = {"NEAR", "CALMER", "CALMER_WORDS", "FACTS", "OWN"}

ALONE = {
    "quoting.core.plan",
    "quoting.core.weighing",
    "quoting.schema.blanket_shapes",
    "quoting.wording.bodies",
    "quoting.wording.calmer",
    "quoting.wording.closing",
    "quoting.cli.body_facts",
    "quoting.web.orders",
    "exports.drawing.bodies",
    "exports.records.construction_record",
}
"""Where a construction is planned, varied, or told by a table; nothing else names one."""


def sources() -> Iterator[tuple[str, ast.Module]]:
    """Yield every module of the program by its name."""
    for part in ("quoting", "exports"):
        for file in (PROJECT / part).rglob("*.py"):
            name = ".".join(file.relative_to(PROJECT).with_suffix("").parts)
            yield name, ast.parse(file.read_text("utf-8"))


def test_every_construction_stands_in_every_table() -> None:
    of_shapes: dict[Any, Any] = dict.fromkeys(shape.value for shape in SHAPES.values())
    for table in (PLANS, of_shapes, TOLD, DRAWN, FORMS):
        assert set(table) == OWN_BODIES | {PlainSquare}
    for asked in (NEAR, CALMER, CALMER_WORDS, FACTS):
        assert set(asked) == OWN_BODIES
    assert set(OWN) == OWN_BODIES - {InRows}, "all keys of rows are keys of every blanket"


def test_every_table_by_construction_is_told_where_the_constructions_are() -> None:
    tables = {
        f"{module}.{node.target.id}".removeprefix("quoting.")
        for module, tree in sources()
        for node in ast.walk(tree)
        if isinstance(node, ast.AnnAssign) and isinstance(node.target, ast.Name)
        if "type[Body]" in ast.unparse(node.annotation)
    } | {"schema.blanket_shapes.SHAPES"}
    assert {table.rsplit(".", 1)[1] for table in tables} == IN_ALL | ASKED_FOR
    assert [table for table in tables if f"`{table}`" not in (bodies.__doc__ or "")] == []


def test_nothing_else_asks_which_construction_it_is() -> None:
    names = {body.__name__ for body in OWN_BODIES}
    asking = {
        module
        for module, tree in sources()
        for node in ast.walk(tree)
        if isinstance(node, ast.ImportFrom) and names & {alias.name for alias in node.names}
        if not module.startswith("quoting.core.order.")
    }
    known = {module for module in asking if any(f"{module}.".startswith(f"{m}.") for m in ALONE)}
    assert asking == known


def test_a_class_of_body_is_asked_for_only_where_the_constructions_say_so() -> None:
    names = {body.__name__ for body in OWN_BODIES}
    asking = {
        module.removeprefix("quoting.")
        for module, tree in sources()
        for node in asked_in(tree)
        if names & {name.id for name in ast.walk(node.args[1]) if isinstance(name, ast.Name)}
    }
    assert asking == {"core.weighing.other_joins", "wording.closing"}
    assert [module for module in asking if f"`{module}`" not in (bodies.__doc__ or "")] == []


def asked_in(tree: ast.Module) -> Iterator[ast.Call]:
    """Yield where a module asks for the class of a value, but for what it only makes sure of."""
    sure = {
        id(node)
        for each in ast.walk(tree)
        if isinstance(each, ast.Assert)
        for node in ast.walk(each)
    }
    for node in ast.walk(tree):
        if (
            isinstance(node, ast.Call)
            and ast.unparse(node.func) == "isinstance"
            and id(node) not in sure
        ):
            yield node


BODIES: dict[str, Any] = {
    "rows": sample_design().body,
    "centre": from_centre(),
    "squares": squares(columns=None, rows=None),
    "a construction of the tests": PlainSquare(colour="teal"),
}


@pytest.fixture(params=list(BODIES))
def quote(request: pytest.FixtureRequest) -> Quote:
    """Return a small blanket of each construction in turn."""
    design = sample_design(body=BODIES[request.param], width_cm=34, height_cm=50, stitch="dc")
    return sample_quote(sample_order(design=design), motif_workshop())


def test_every_construction_is_the_same_after_a_file_a_record_and_its_offer(quote: Quote) -> None:
    order, workshop = quote.order, quote.workshop
    assert load_order_text(order_text(order, Vocabulary.US), workshop) == order
    assert read_order(ORDER.write(order, RECORD), workshop, RECORD) == order
    offer = offer_of(quote)
    assert read_offer(offer_record(offer)) == offer


def test_every_construction_is_typed_in_and_answered_on_the_form(quote: Quote) -> None:
    page = maker_with(quote.workshop, quote.order).send("/", quantity="2")
    assert page.with_id("mistakes").text == ""
    assert "in all" in page.with_id("answer").text


def test_every_construction_is_drawn_guided_and_told(quote: Quote) -> None:
    speech, body = speech_of(quote.workshop), quote.order.design.body
    assert draw_blanket(quote, speech).startswith("<svg")
    assert guide_paper(quote).blocks
    assert "teal" in quote_table(quote)
    assert "teal" in " ".join(body_words(body))


def test_every_count_that_a_construction_closes_on_is_told(quote: Quote) -> None:
    said = counts_words(quote, speech_of(quote.workshop))
    assert all(str(count) in said for count in closing_of(quote).counts.values() if count)


def test_every_construction_has_its_table_in_the_json(quote: Quote) -> None:
    blanket, body = quote_record(quote)["blanket"], quote.order.design.body
    assert blanket["parts"]
    own = blanket.get(blanket["construction"])
    assert isinstance(own, dict) == (type(body) in OWN)


def test_every_construction_comes_in_other_sizes(quote: Quote) -> None:
    sizes = [Size(width_cm=34, height_cm=50), Size(width_cm=50, height_cm=66)]
    comparison = compare_sizes(quote.order, quote.workshop, sizes, today=TODAY)
    small, large = (each.quote.plan for each in comparison.sizes)
    assert small.width_cm < large.width_cm
    assert load_workbook(BytesIO(comparison_bytes(comparison))).sheetnames


def test_every_construction_is_costed_in_a_workbook(quote: Quote) -> None:
    assert load_workbook(BytesIO(workbook_bytes(quote))).sheetnames


def test_every_construction_is_saved_on_and_calmed_in_its_own_words(quote: Quote) -> None:
    speech = speech_of(quote.workshop)
    said = [change_words(saving, speech) for saving in savings(quote, today=TODAY)]
    assert all("{" not in words for words in said)
    calmer = partial(calmer_designs, quote, today=TODAY)
    assert all(each.quote.estimate.ends < quote.estimate.ends for each in calmer())
    body = quote.order.design.body
    assert calmer_words(body) is CALMER_WORDS[type(body) if type(body) in CALMER else InRows]


def test_every_construction_has_neighbours_or_none_at_all(quote: Quote) -> None:
    speech, body = speech_of(quote.workshop), quote.order.design.body
    found = neighbours(quote, today=TODAY)
    assert {each.more for each in found} == ({True, False} if type(body) in NEAR else set())
    assert all(closed_words(each.quote, each.closing, speech) for each in found)
    assert "As it is" in near_table(quote, found)
    assert len(near_record(found)) == len(found)
