"""A construction that stands in one folder goes the whole way from a file to a price."""

from __future__ import annotations

from io import BytesIO

import pytest
from openpyxl import load_workbook

from exports.comparison_workbook import comparison_bytes
from exports.costing_workbook import workbook_bytes
from exports.drawing import draw_blanket
from exports.records.comparison_record import comparison_record
from exports.records.quote_record import quote_record
from quoting.cli.quote_table import quote_table
from quoting.core.ground.errors import Refused
from quoting.core.order.order import Order
from quoting.core.order.resizing import Size
from quoting.core.plan.passes import Work
from quoting.core.plan.plan import plan_order
from quoting.core.quote.quote import quote_order
from quoting.core.weighing.budget import savings
from quoting.core.weighing.calmer_designs import calmer_designs, can_be_calmed
from quoting.core.weighing.comparison import compare_sizes
from quoting.core.workshop.stitches import Vocabulary
from quoting.core.workshop.workshop import Workshop
from quoting.schema import load_order_text, order_text
from quoting.schema.notation import RECORD
from quoting.schema.order_shape import ORDER
from quoting.schema.reading import read_order
from quoting.wording import body_words, speech_of
from quoting.wording.guide import guide_paper
from tests.examples import TODAY, changed_design, sample_order
from tests.web.conftest import Maker
from tests.web.pages import Page

WORD_KEY, COLOUR = 'construction = "square"\n', 'colour = "teal"\n'
ROUNDS = 32
"""Of 0.9 cm, which come nearest to half of 60 cm less a border of 0.9."""


def test_it_is_planned_round_by_round_to_the_size(order: Order, workshop: Workshop) -> None:
    plan = plan_order(order, workshop)
    assert [worked.work for worked in plan.rows] == [Work.ROUND] * ROUNDS
    assert sum(worked.stitches["sc"] for worked in plan.rows) == 4 * ROUNDS * (ROUNDS + 1)
    assert plan.width_cm == pytest.approx(2 * 0.9 * (ROUNDS + 1))
    (border,) = plan.rounds
    assert (border.stitches["sc"], border.number) == (8 * ROUNDS, 1)


def test_its_guide_has_a_step_for_each_round_and_no_row_to_turn(
    order: Order, workshop: Workshop
) -> None:
    paper = guide_paper(quote_order(order, workshop, today=TODAY))
    steps = next(block for block in paper.blocks if getattr(block, "ticks", False))
    told = [step for step, _ in steps.rows]
    assert told[0].startswith("Round 1, teal: 8 sc. Start it ")
    assert told[-1].startswith(
        f"Border round 1, oat: {8 * ROUNDS} sc; {2 * ROUNDS} along each side;"
    )
    assert len(told) == ROUNDS + 1
    assert "turned" not in " ".join(str(block) for block in paper.blocks)


def test_it_is_estimated_and_priced(order: Order, workshop: Workshop) -> None:
    quote = quote_order(order, workshop, today=TODAY)
    price = quote.price
    assert quote.estimate.ends == 2 * len(quote.estimate.strands)
    assert price.total == price.cost + price.fees + price.tax + price.profit
    assert quote.estimate.hours.total > 0


def test_its_keys_are_a_table_of_their_own_in_the_file(order: Order, workshop: Workshop) -> None:
    text = order_text(order, Vocabulary.US)
    assert WORD_KEY in text
    assert f"[blanket.square]\n{COLOUR}" in text
    assert load_order_text(text, workshop) == order


def test_it_is_read_again_from_a_record(order: Order, workshop: Workshop) -> None:
    assert read_order(ORDER.write(order, RECORD), workshop, RECORD) == order


@pytest.mark.parametrize(
    ("old", "new", "place", "code"),
    [
        (WORD_KEY, f'{WORD_KEY}stop_at = "row"\n', "blanket.stop_at", "key-not-chosen"),
        (WORD_KEY, "", "blanket.construction", "choice-not-said"),
        (WORD_KEY, 'construction = "rows"\n', "blanket.square", "key-not-chosen"),
        (WORD_KEY, 'construction = "sqare"\n', "blanket.construction", "not-one-of"),
        (COLOUR, "", "blanket.square.colour", "missing"),
        (f"[blanket.square]\n{COLOUR}", "", "blanket.square", "missing"),
        (COLOUR, 'colour = "teel"\n', "blanket.square.colour", "unknown-colour"),
        (COLOUR, f"{COLOUR}rounds = 0\n", "blanket.square.rounds", "too-small"),
        (COLOUR, f"{COLOUR}round = 9\n", "blanket.square.round", "unknown-key"),
    ],
)
def test_a_wrong_key_of_it_is_told_at_its_place(
    order: Order, workshop: Workshop, old: str, new: str, place: str, code: str
) -> None:
    text = order_text(order, Vocabulary.US)
    assert old in text
    with pytest.raises(Refused) as refused:
        load_order_text(text.replace(old, new, 1), workshop)
    assert code in {m.code for m in refused.value.mistakes if m.path == place}


def test_the_table_of_a_construction_that_is_not_chosen_is_a_mistake(workshop: Workshop) -> None:
    text = order_text(sample_order(), Vocabulary.US) + f"\n[blanket.square]\n{COLOUR}"
    with pytest.raises(Refused) as refused:
        load_order_text(text, workshop)
    told = [(m.path, m.code) for m in refused.value.mistakes]
    assert told == [("blanket.square", "key-not-chosen")]


def test_a_square_too_small_for_its_border_is_refused(order: Order, workshop: Workshop) -> None:
    small = changed_design(order.design, width_cm=1.0)
    with pytest.raises(Refused, match="width-too-small"):
        plan_order(sample_order(design=small), workshop)


def test_it_comes_in_several_sizes(order: Order, workshop: Workshop) -> None:
    sizes = [Size(width_cm=side, height_cm=side) for side in (40, 80)]
    comparison = compare_sizes(order, workshop, sizes, today=TODAY)
    counts = [len(compared.quote.plan.rows) for compared in comparison.sizes]
    assert counts == sorted(counts)
    assert counts[0] < ROUNDS < counts[-1]
    record = comparison_record(comparison, speech_of(workshop))
    assert [size["rows"] for size in record["sizes"]] == counts
    assert load_workbook(BytesIO(comparison_bytes(comparison))).sheetnames


def test_it_can_be_saved_on_but_has_no_stripes_to_calm(order: Order, workshop: Workshop) -> None:
    quote = quote_order(order, workshop, today=TODAY)
    assert savings(quote, today=TODAY)
    assert not can_be_calmed(order.design.body)
    assert calmer_designs(quote, today=TODAY) == ()


def test_it_is_told_in_rounds(order: Order, workshop: Workshop) -> None:
    quote = quote_order(order, workshop, today=TODAY)
    page = quote_table(quote)
    assert "Rounds" in page
    assert "chain" not in page
    assert body_words(order.design.body) == ("all teal",)
    blanket = quote_record(quote)["blanket"]
    assert (blanket["rows"], blanket["rows_by_section"]) == (ROUNDS, [])
    assert (blanket["foundation_chain"], blanket["rows_by_colour"]) == (0, {"teal": ROUNDS})


def test_it_is_drawn_as_frames_in_each_other(order: Order, workshop: Workshop) -> None:
    quote = quote_order(order, workshop, today=TODAY)
    picture = draw_blanket(quote, speech_of(workshop))
    assert picture.count('class="round"') == ROUNDS + 1
    assert "round 1 in the middle" in picture
    assert picture.count('class="tail"') == quote.estimate.ends


def test_its_costing_is_a_workbook(order: Order, workshop: Workshop) -> None:
    quote = quote_order(order, workshop, today=TODAY)
    book = load_workbook(BytesIO(workbook_bytes(quote)))
    labels = [cell.value for sheet in book for row in sheet.iter_rows() for cell in row]
    assert {"round 1", "border round 1"} <= set(labels)


def test_its_fields_stand_on_the_form_and_its_counts_in_the_answer(maker: Maker) -> None:
    page = maker.open()
    assert page.typed()["blanket.construction"] == "square"
    assert page.typed()["blanket.square.colour"] == "teal"
    assert not [name for name in page.typed() if name.startswith("blanket.sections")]
    assert f"{ROUNDS} rounds, {8 * ROUNDS} stitches in the last." in page.with_id("answer").text


def test_a_mistake_in_it_is_told_beside_its_field(maker: Maker) -> None:
    page = maker.send("/", blanket__square__rounds="many")
    assert page.said_of("blanket.square.rounds")
    assert "Rounds" in page.with_id("mistakes").text


def test_another_construction_can_be_taken_on_the_form(maker: Maker) -> None:
    page = maker.send("/", blanket__construction="rows", do="construction")
    assert "Colour of the square" not in page.with_id("order").text
    assert "Add a section" in page.with_id("order").text


def test_what_was_typed_of_it_rests_while_another_is_chosen(maker: Maker) -> None:
    page = maker.send(
        "/", blanket__construction="rows", blanket__square__colour="rust", do="construction"
    )
    assert page.with_id("mistakes").text == ""
    again = page.typed() | {"blanket.construction": "square", "do": "construction"}
    page = Page(maker.client.post("/", data=again).text)
    assert page.typed()["blanket.square.colour"] == "rust"
    assert page.labelled("Colour of the square")


def test_a_word_for_no_construction_is_told_and_shows_the_first(maker: Maker) -> None:
    page = maker.send("/", blanket__construction="../rows")
    assert maker.status == 200
    assert page.said_of("blanket.construction")
    assert "Add a section" in page.with_id("order").text
