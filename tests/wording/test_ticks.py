"""What is ticked off is called by its name: a row, a round, a motif of so many, a seam."""

from __future__ import annotations

from dataclasses import replace

import pytest

from quoting.core.estimate.chores import Part
from quoting.core.estimate.strands import Point
from quoting.core.guide.guide import guide_of
from quoting.core.making.log_lines import Doing
from quoting.core.making.made_rows import made_rows
from quoting.core.making.progress import progress_of
from quoting.core.making.session_motifs import MotifTold
from quoting.core.making.yarn_left import yarn_left
from quoting.core.order.design import EndsBecome
from quoting.core.order.joined_squares import JoinMethod
from quoting.core.plan.passes import Edge
from quoting.core.quote.quote import Quote, quote_order
from quoting.core.workshop.habits import Habits, Join
from quoting.core.workshop.motifs import MotifTiming
from quoting.wording import part_words, point_words
from quoting.wording.ends import FATES
from quoting.wording.learnt_words import motif_words
from quoting.wording.log_words import doing_words, log_words
from quoting.wording.making_words import (
    ends_done_words,
    next_row_words,
    rows_again_words,
    rows_done_words,
    yarn_left_words,
    yarn_ratio_words,
)
from quoting.wording.row_at_hand import RowAtHand, row_at_hand
from quoting.wording.ticks import log_name, log_names, ticks_words
from tests.constructed import constructed_quote, from_centre, squares
from tests.core.making.logs import DAY, hook, log, reached, used, woven
from tests.examples import TODAY, sample_design, sample_order, sample_quote, sample_workshop
from tests.wording.speeches import UK_NAMES

SAY = UK_NAMES
SQUARES = constructed_quote(squares(JoinMethod.SINGLE_CROCHET))
CENTRE = constructed_quote(from_centre())


def plain(said: str) -> str:
    return said.replace("\u00a0", " ")


def at_hand(quote: Quote, number: int) -> RowAtHand:
    return row_at_hand(guide_of(quote), made_rows(quote), number, SAY)


@pytest.mark.parametrize(
    ("number", "name", "colours", "stitches"),
    [
        (1, "Motif 1 of 12, layout 1", ("teal", "rust", "plum", "moss", "oat"), "5 rounds"),
        (5, "Motif 5 of 12, layout 2", ("rust", "teal", "oat"), "5 rounds"),
        (13, "Seam 1 of 5", ("oat",), "84 dc"),
        (15, "Seam 3 of 5", ("oat",), "63 dc"),
        (18, "Border round 1", ("oat",), "230 dc"),
    ],
)
def test_a_motif_and_a_seam_are_told_at_once(
    number: int, name: str, colours: tuple[str, ...], stitches: str
) -> None:
    row = at_hand(SQUARES, number)
    assert (row.name, row.colours) == (name, colours)
    assert row.stitches == stitches or number == 18


def test_a_motif_is_told_round_by_round_with_its_ends() -> None:
    row = at_hand(SQUARES, 5)
    assert row.details[0] == ("Rust, round 1: 12 tr in 4 clusters; round 2: 24 tr in 8 clusters.")
    assert row.yarn == ("It leaves 6 ends to weave in.",)
    assert at_hand(SQUARES, 13).details == ("It joins 4 edges between two columns.",)
    assert at_hand(SQUARES, 15).details == ("It joins 3 edges between two rows.",)


def test_a_round_tells_how_it_is_worked() -> None:
    first, second = at_hand(CENTRE, 1), at_hand(CENTRE, 2)
    assert (first.name, second.name) == ("Round 1", "Round 2")
    assert first.details[0].startswith("Chain ")
    assert second.details == (
        "One tr in each stitch, (2 tr, ch 2, 2 tr) in each corner space.",
        "It has 8 chains besides.",
    )
    assert second.side == "Right side facing."
    turned = constructed_quote(from_centre(turned=True))
    assert at_hand(turned, 2).side == "Wrong side facing."
    assert at_hand(turned, 3).side == "Right side facing."


@pytest.mark.parametrize("become", [EndsBecome.ENCLOSED, EndsBecome.FRINGE])
def test_motifs_and_seams_have_no_end_at_an_edge_so_theirs_are_woven_in(become: EndsBecome) -> None:
    quote = constructed_quote(squares(JoinMethod.SINGLE_CROCHET), ends=become)
    assert at_hand(quote, 1).yarn == ("It leaves 10 ends to weave in.",)
    assert at_hand(quote, 13).yarn == ("It leaves 2 ends to weave in.",)


@pytest.mark.parametrize(
    ("method", "number", "name", "stitches"),
    [
        (JoinMethod.MATTRESS, 13, "Seam 1 of 5", "1 needleful of 1.2 m"),
        (JoinMethod.FLAT_BRAID, 14, "Edging 2 of 12", "40 dc and 120 chains"),
        (JoinMethod.CONTINUOUS, 14, "Joining row 2", "180 tr"),
    ],
)
def test_every_join_has_its_name(method: JoinMethod, number: int, name: str, stitches: str) -> None:
    body = squares(method, layouts=squares().layouts[1:])
    row = at_hand(constructed_quote(body), number)
    assert (row.name, plain(row.stitches)) == (name, stitches)


def test_a_ball_that_may_end_in_a_motif_is_told_with_it() -> None:
    quote = constructed_quote(squares(columns=12, rows=12))
    told = [
        ball
        for number in range(1, made_rows(quote).all + 1)
        for ball in at_hand(quote, number).balls
    ]
    assert any("motif" in ball for ball in told)


def test_how_far_squares_are_is_counted_in_motifs_and_seams() -> None:
    progress = progress_of(SQUARES, log(reached(6)))
    assert plain(rows_done_words(progress, SQUARES.plan, SAY)).startswith(
        "6 of 18 motifs, seams and rounds done, "
    )
    rows = made_rows(SQUARES)
    assert next_row_words(rows, 11, SAY) == "Next: motif 12 of 12, rust, teal, oat"
    assert next_row_words(rows, 14, SAY) == "Next: seam 3 of 5, oat"
    assert next_row_words(rows, 17, SAY).startswith("Next: border round 1, oat, ")
    assert next_row_words(rows, 18, SAY) == "All motifs, seams and rounds are done."


def test_how_far_a_piece_from_the_centre_is_is_counted_in_rounds() -> None:
    progress = progress_of(CENTRE, log(reached(6)))
    assert " rounds done, " in rows_done_words(progress, CENTRE.plan, SAY)
    assert ticks_words(CENTRE.plan) == "rounds"
    assert log_words(reached(6), made_rows(CENTRE), SAY) == "6 rounds done"
    assert log_words(reached(1), made_rows(CENTRE), SAY) == "1 round done"


@pytest.mark.parametrize(
    ("line", "said"),
    [
        (reached(7), "Done up to motif 7"),
        (reached(0), "0 motifs done"),
        (hook(3, 9, 60), "At the hook, laying out and joining, 1 h, motifs 3 to 9"),
        (hook(3, 3, 60), "At the hook, laying out and joining, 1 h, motif 3"),
        (hook(12, 14, 60), "At the hook, laying out and joining, 1 h, motif 12 to seam 2"),
        (used("teal", 12, 14), "teal: 12 g used, up to seam 2"),
        (woven(10), "10 ends woven in"),
    ],
)
def test_the_log_of_squares_has_their_words(line: object, said: str) -> None:
    assert plain(log_words(line, made_rows(SQUARES), SAY)) == said  # type: ignore[arg-type]


def test_of_a_second_blanket_the_log_says_so() -> None:
    two = quote_order(replace(SQUARES.order, quantity=2), SQUARES.workshop, today=TODAY)
    rows = made_rows(two)
    assert log_name(rows, 19, SAY) == "motif 1 of blanket 2"
    assert log_names(rows, 18, 20, SAY) == "border round 1 to motif 2 of blanket 2"
    assert next_row_words(rows, 18, SAY).startswith("Next: motif 1 of 12 of blanket 2, ")


def test_rows_keep_their_words() -> None:
    rows = made_rows(sample_quote())
    assert rows_again_words(rows, 3, 9, SAY) == "rows 3 to 9 worked again"
    assert ticks_words(rows.plan) == "rows"
    assert log_name(rows, 104, SAY) == "row 104"


def test_yarn_that_is_left_is_told_in_what_it_is_worked_in() -> None:
    left = {some.colour: some for some in yarn_left(SQUARES, log(used("teal", 10, 6)))}
    assert " motifs to come" in yarn_left_words(left["teal"], SQUARES.plan, SAY)
    assert " motifs, seams and rounds to come" in yarn_left_words(left["oat"], SQUARES.plan, SAY)
    ratio = yarn_ratio_words(left["teal"], made_rows(SQUARES), SAY)
    assert "up to motif 6: " in ratio
    assert " a motif" in ratio


@pytest.mark.parametrize("become", EndsBecome)
def test_ends_are_called_by_what_becomes_of_them(become: EndsBecome) -> None:
    order = sample_order(design=sample_design(ends=become))
    workshop = sample_workshop(habits=Habits(join=Join.AT_AN_EDGE))
    quote = sample_quote(order, workshop)
    rows, doing = made_rows(quote), FATES[become].doing
    assert part_words(Part.WEAVING_IN, SAY, quote) == doing
    assert doing_words(Doing.WEAVING_IN, quote, SAY) == doing
    done = {
        EndsBecome.WOVEN_IN: "woven in",
        EndsBecome.WORKED_OVER: "worked over",
        EndsBecome.ENCLOSED: "enclosed",
        EndsBecome.FRINGE: "left as fringe",
    }[become]
    assert log_words(woven(12), rows, SAY) == f"12 ends {done}"
    assert ends_done_words(progress_of(quote, ()), become, SAY).endswith(f" ends {done}.")


@pytest.mark.parametrize("become", EndsBecome)
def test_ends_of_rounds_are_worked_over_or_woven_in(become: EndsBecome) -> None:
    quote = constructed_quote(from_centre(), ends=become)
    over = become is EndsBecome.WORKED_OVER
    fate = EndsBecome.WORKED_OVER if over else EndsBecome.WOVEN_IN
    assert part_words(Part.WEAVING_IN, SAY, quote) == FATES[fate].doing


def test_rows_are_turned_and_rounds_begun() -> None:
    growing = constructed_quote(from_centre())
    assert part_words(Part.TURNING, SAY, growing) == "Beginning rounds"
    assert part_words(Part.TURNING, SAY, sample_quote()) == "Turning rows"


@pytest.mark.parametrize(
    ("method", "index", "copy", "said"),
    [
        (JoinMethod.MATTRESS, 2, 1, "at the end of round 3 of motif 2 of layout 1"),
        (JoinMethod.MATTRESS, 7, 7, "at the end of round 3 of motif 8 of layout 2"),
        (JoinMethod.MATTRESS, 10, 1, "at the end of needleful 1 of seam 2"),
        (JoinMethod.SINGLE_CROCHET, 11, 0, "at the end of seam 3"),
        (JoinMethod.FLAT_BRAID, 10, 4, "at the end of the edging of motif 5"),
    ],
)
def test_a_place_says_in_which_copy_it_is(
    method: JoinMethod, index: int, copy: int, said: str
) -> None:
    plan = constructed_quote(squares(method)).plan
    point = Point(0, index, Edge.FAR, plan.passes[index].part, copy)
    assert point_words(point, plan) == said


def test_a_timing_of_a_motif_is_offered_in_words() -> None:
    told = MotifTold(motif="sun", timing=MotifTiming(motifs=6, minutes=135, day=DAY))
    assert plain(motif_words(told, SAY)) == "6 of sun in 2 h 15 min, 1 December 2026"
    bare = MotifTold(motif="sun", timing=MotifTiming(motifs=6, minutes=135))
    assert plain(motif_words(bare, SAY)) == "6 of sun in 2 h 15 min"
