"""One motif is one tick, and so is one seam; what is left, and what is learnt, goes by them."""

from __future__ import annotations

from dataclasses import replace
from decimal import Decimal

import pytest

from quoting.core.estimate.chores import ENDS_CHORES, Part
from quoting.core.ground.errors import Refused
from quoting.core.making.hours_left import hours_left, pooled_workshop
from quoting.core.making.learnt import Learnt, learnt_from, with_learnt
from quoting.core.making.line_checks import check_line
from quoting.core.making.log_lines import Doing, LogLine
from quoting.core.making.made_rows import made_rows
from quoting.core.making.money_due import dues_come
from quoting.core.making.outcome import outcome_of
from quoting.core.making.planned_yarn import planned_yarn
from quoting.core.making.progress import progress_of
from quoting.core.making.rows_work import rows_work
from quoting.core.making.yarn_left import yarn_left
from quoting.core.order.bodies import Body
from quoting.core.order.design import EndsBecome
from quoting.core.order.joined_squares import JoinMethod
from quoting.core.order.stage import Stage
from quoting.core.quote.offer_rows import Due
from quoting.core.quote.quote import Quote, quote_order
from quoting.core.workshop.habits import Habits, Join
from quoting.core.workshop.motifs import MotifTiming
from tests.constructed import SUN, constructed_quote, from_centre, motif_workshop, squares
from tests.core.making.logs import DAY, hook, log, reached, spent, woven
from tests.examples import TODAY, sample_design, sample_order, sample_quote, sample_workshop

MOTIFS = 12
SEAMS = 5
METHODS = list(JoinMethod)


def quoted(method: JoinMethod = JoinMethod.SINGLE_CROCHET, **changes: object) -> Quote:
    return constructed_quote(squares(method), **changes)  # type: ignore[arg-type]


def learnt(quote: Quote, *lines: LogLine) -> Learnt:
    return learnt_from(quote, log(*lines), quote.workshop)


def test_motifs_seams_and_rounds_are_counted_one_by_one() -> None:
    quote = quoted()
    assert made_rows(quote).all == MOTIFS + SEAMS + len(quote.plan.rounds)
    sewn = quoted(JoinMethod.MATTRESS)
    assert made_rows(sewn).all == MOTIFS + SEAMS + len(sewn.plan.rounds)


@pytest.mark.parametrize("method", METHODS)
@pytest.mark.parametrize("quantity", [1, 2])
def test_all_that_is_ticked_is_all_the_work_of_the_estimate(
    method: JoinMethod, quantity: int
) -> None:
    quote = quoted(method)
    if quantity > 1:
        order = replace(quote.order, quantity=quantity)
        quote = quote_order(order, quote.workshop, today=TODAY)
    left = hours_left(quote, log())
    for part in Part:
        assert left.hours.of(part) == quote.estimate.hours.of(part), part


def test_of_ninety_nine_motifs_the_hours_left_are_those_that_were_quoted_to_the_hundredth() -> None:
    """Laying them out takes 15 + 99 × 0.3 = 44.7 minutes, 0.745 hours: half a hundredth goes up."""
    quote = constructed_quote(squares(JoinMethod.SLIP_STITCH, columns=9, rows=11))
    assert quote.estimate.hours.of(Part.ASSEMBLING) == Decimal("0.75")
    assert hours_left(quote, log()).hours.of(Part.ASSEMBLING) == Decimal("0.75")


@pytest.mark.parametrize("method", METHODS)
def test_laying_out_and_joining_grow_less_with_every_tick(method: JoinMethod) -> None:
    quote = quoted(method)
    rows = made_rows(quote).all
    left = [hours_left(quote, log(reached(done))).of(Doing.AT_THE_HOOK) for done in range(rows + 1)]
    assert left == sorted(left, reverse=True)
    assert left[-1] == 0


@pytest.mark.parametrize("body", [squares(blocked=True), from_centre(turned=True)])
def test_blocking_and_turning_are_once_in_the_hours_that_are_left(body: Body) -> None:
    """Motifs are blocked when all are made, and a piece is turned with each round: no tick more."""
    quote = constructed_quote(body)
    rows = made_rows(quote).all
    left = hours_left(quote, log()).hours
    assert [left.of(part) for part in Part] == [quote.estimate.hours.of(part) for part in Part]
    assert hours_left(quote, log(reached(rows))).of(Doing.AT_THE_HOOK) == 0


def test_what_is_joined_as_you_go_is_joined_with_the_motifs() -> None:
    work = rows_work(quoted(JoinMethod.AS_YOU_GO))
    half = work.of(1, MOTIFS // 2).chores
    assert half["join_as_you_go"] == pytest.approx(work.of(1, MOTIFS).chores["join_as_you_go"] / 2)
    assert half["lay_out"] == pytest.approx(0.5)


def test_what_is_sewn_is_joined_with_the_seams_by_their_length() -> None:
    work = rows_work(quoted(JoinMethod.WHIPSTITCH))
    assert "sew_whipstitch" not in work.of(1, MOTIFS).chores
    seams = [work.of(MOTIFS + n, MOTIFS + n).chores["sew_whipstitch"] for n in range(1, SEAMS + 1)]
    assert seams == pytest.approx([60, 60, 45, 45, 45])


def test_half_of_a_piece_from_the_centre_is_made_when_half_of_its_stitches_are() -> None:
    """Of a square of n rounds half the stitches lie within about 0.7 n."""
    quote = constructed_quote(from_centre(rounds=40, starts_on=0), border=())
    come = [
        Due.AT_HALF in dues_come(progress_of(quote, log(reached(done))), Stage.ON_THE_HOOK)
        for done in range(41)
    ]
    assert come.index(True) == 29
    assert come == sorted(come)


def test_half_of_rows_is_half_of_their_number_and_of_squares_of_their_stitches() -> None:
    quote = quoted(JoinMethod.AS_YOU_GO, border=())
    for done in range(MOTIFS + 1):
        progress = progress_of(quote, log(reached(done)))
        assert progress.share == pytest.approx(done / MOTIFS)
        assert progress.passes_done == 5 * done


def test_no_more_can_be_told_than_there_is() -> None:
    quote = quoted()
    rows = made_rows(quote).all
    check_line(quote, log(), reached(rows), today=DAY)
    with pytest.raises(Refused, match="more-rows-than-there-are"):
        check_line(quote, log(), reached(rows + 1), today=DAY)


@pytest.mark.parametrize("method", METHODS)
def test_the_yarn_of_every_tick_is_all_the_yarn_of_the_estimate(method: JoinMethod) -> None:
    quote = quoted(method)
    rows = made_rows(quote)
    for colour in quote.estimate.colours:
        assert planned_yarn(colour, rows).all_m == pytest.approx(colour.metres)
        (left,) = (some for some in yarn_left(quote, log()) if some.colour == colour.colour)
        assert left.needed_m == pytest.approx(colour.metres)


def test_a_session_of_motifs_is_a_further_timing_of_the_motif() -> None:
    quote = quoted(JoinMethod.SINGLE_CROCHET)
    (told,) = learnt(quote, hook(1, 6, 150)).motifs
    assert (told.motif, told.timing.motifs, told.timing.day) == ("sun", 6, DAY)
    laid_out = 6 * 0.3 + 15 / 2
    assert told.timing.minutes == pytest.approx(150 - laid_out, abs=0.01)
    assert learnt(quote, hook(1, 6, 150)).timings == ()


def test_joins_and_laying_out_are_not_the_motifs_own() -> None:
    as_you_go = learnt(quoted(JoinMethod.AS_YOU_GO), hook(1, MOTIFS, 400)).motifs
    sewn = learnt(quoted(JoinMethod.MATTRESS), hook(1, MOTIFS, 400)).motifs
    edges = 17
    assert sewn[0].timing.minutes - as_you_go[0].timing.minutes == pytest.approx(edges * 1.0)


def test_of_a_session_of_motifs_and_seams_each_is_told_its_part() -> None:
    taught = learnt(quoted(), hook(MOTIFS, MOTIFS + 2, 60))
    assert [told.timing.motifs for told in taught.motifs] == [1]
    assert {timing.stitch for timing in taught.timings} == {"sc"}


def test_what_is_taken_in_makes_the_next_estimate_and_is_not_offered_again() -> None:
    quote, lines = quoted(), (hook(1, 6, 300), hook(7, 12, 280))
    shop = with_learnt(quote.workshop, learnt(quote, *lines))
    assert shop.motif("sun").timings[:1] == SUN.timings
    assert len(shop.motif("sun").timings) == 3
    assert learnt_from(quote, log(*lines), shop).is_nothing
    assert constructed_quote(squares(), shop).estimate.hours.total > quoted().estimate.hours.total


def test_a_motif_that_was_never_timed_is_by_a_session_that_made_nothing_else() -> None:
    shop = motif_workshop(replace(SUN, timings=()))
    quote = constructed_quote(squares(JoinMethod.SINGLE_CROCHET), shop)
    (told,) = learnt_from(quote, log(hook(1, 4, 100)), shop).motifs
    assert told.timing == MotifTiming(motifs=4, minutes=100 - 5 - 1.2, day=DAY)
    assert learnt_from(quote, log(hook(MOTIFS, MOTIFS + 1, 60)), shop).motifs == ()
    other = constructed_quote(squares(JoinMethod.CONTINUOUS, layouts=squares().layouts[1:]), shop)
    assert learnt_from(other, log(hook(1, 4, 100)), shop).motifs == ()


def test_other_rounds_than_were_timed_are_told_as_the_whole_motifs_they_come_to() -> None:
    """Four of five rounds take 264 of 400 parts of the time, so eight of them are five motifs."""
    layouts = tuple(replace(each, colours=each.colours[:4]) for each in squares().layouts)
    quote = constructed_quote(squares(rounds=4, layouts=layouts))
    (told,) = learnt(quote, hook(1, 8, 110)).motifs
    assert told.timing.motifs == 5


def test_the_pace_of_its_own_motifs_is_in_what_is_left() -> None:
    quote = quoted()
    slow = hours_left(quote, log(hook(1, 6, 600)))
    usual = hours_left(quote, log(reached(6)))
    assert slow.of(Doing.AT_THE_HOOK) > usual.of(Doing.AT_THE_HOOK)
    assert len(pooled_workshop(quote, log(hook(1, 6, 600))).motif("sun").timings) == 2


def test_a_motif_that_the_workshop_no_longer_has_is_not_told_of() -> None:
    quote = quoted()
    gone = replace(quote.workshop, motifs=())
    assert learnt_from(quote, log(hook(1, 6, 150)), gone).motifs == ()


@pytest.mark.parametrize("become", EndsBecome)
def test_minutes_of_an_end_are_learnt_as_what_was_done_with_it(become: EndsBecome) -> None:
    order = sample_order(design=sample_design(ends=become))
    quote = sample_quote(order, sample_workshop(habits=Habits(join=Join.AT_AN_EDGE)))
    lines = (spent(Doing.WEAVING_IN, 5), woven(10))
    taught = learnt(quote, *lines)
    assert (taught.ends, taught.end_minutes) == (become, (0.5,))
    shop = with_learnt(quote.workshop, taught)
    before = getattr(quote.workshop.minutes, ENDS_CHORES[become]) or ()
    assert getattr(shop.minutes, ENDS_CHORES[become]) == (*before, 0.5)
    assert learnt_from(quote, log(*lines), shop).is_nothing
    left = hours_left(quote, log(*lines))
    assert getattr(left.workshop.minutes, ENDS_CHORES[become]) == (*before, 0.5)


def test_what_it_took_is_told_of_squares_as_of_rows() -> None:
    quote = quoted(JoinMethod.WHIPSTITCH)
    rows = made_rows(quote).all
    assert took(quote, hook(1, rows, 480)) == 8


def test_seams_that_no_session_told_are_reckoned_with_at_the_pace_of_the_motifs() -> None:
    """Sewing 255 cm takes 30.6 minutes as is usual; motifs that went as expected leave it so."""
    quote = quoted(JoinMethod.WHIPSTITCH, border=())
    work = hours_left(quote, log()).of(Doing.AT_THE_HOOK)
    motifs = work - hours_left(quote, log(reached(MOTIFS))).of(Doing.AT_THE_HOOK)
    joins = work - motifs
    changes = sum(quote.estimate.hours.of(p) for p in (Part.TURNING, Part.CHANGING, Part.JOINING))
    assert not changes
    assert float(joins) == pytest.approx(30.6 / 60, abs=0.01)
    whole = took(quote, hook(1, MOTIFS, float(motifs) * 60))
    assert whole is not None
    assert float(whole) == pytest.approx(float(work), abs=0.02)


def took(quote: Quote, *lines: LogLine) -> Decimal | None:
    work = outcome_of(quote, log(*lines)).work
    return next(part.took for part in work if part.doing is Doing.AT_THE_HOOK)
