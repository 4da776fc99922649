"""Wider stripes from the centre: the same colours in about as many rounds, and far fewer ends."""

from __future__ import annotations

from dataclasses import replace

from quoting.core.order.from_centre import FromCentre, RoundStripe
from quoting.core.order.in_rows import MAX_COUNT
from quoting.core.quote.advice import MANY_ENDS
from quoting.core.quote.quote import Quote, quote_order
from quoting.core.weighing.alternatives import OFFERED, ROWS_DRIFT, Alternative, keeps_colours
from quoting.core.weighing.calmer_designs import calmer_designs, can_be_calmed
from quoting.core.weighing.calmer_rounds import calmer_rounds
from quoting.wording.calmer import calmer_words
from tests.examples import COLOURS, TODAY
from tests.motif_examples import centre_order, motif_workshop, sample_centre

WORKSHOP = motif_workshop()


def quoted(body: FromCentre) -> Quote:
    order = centre_order(body=body, width_cm=100, height_cm=100)
    return quote_order(order, WORKSHOP, today=TODAY)


def stripes(**rounds: int) -> tuple[RoundStripe, ...]:
    return tuple(RoundStripe(colour=colour, rounds=many) for colour, many in rounds.items())


def body_of(found: Alternative) -> FromCentre:
    assert isinstance(found.design.body, FromCentre)
    return found.design.body


LOUD = quoted(sample_centre("teal", "rust", "oat"))


def test_what_is_offered_has_half_the_ends_and_the_rounds_of_each_colour() -> None:
    found = calmer_rounds(LOUD, today=TODAY)
    assert 1 <= len(found) <= OFFERED
    wanted = LOUD.plan.rows_by_colour
    for other in found:
        assert other.quote.estimate.ends <= 0.6 * LOUD.estimate.ends
        rounds = other.quote.plan.rows_by_colour
        assert rounds.keys() == wanted.keys()
        assert all(abs(rounds[c] - wanted[c]) <= max(1, ROWS_DRIFT * wanted[c]) for c in wanted)
        assert len(other.quote.plan.rows) == len(LOUD.plan.rows)
        assert 0 < other.distance <= 1
    ends = [other.quote.estimate.ends for other in found]
    assert ends == sorted(ends)


def test_of_many_colours_each_is_kept_within_one_round() -> None:
    """Of six colours in 45 rounds a tenth of each is less than a round."""
    loud = quoted(sample_centre(*COLOURS))
    wanted = loud.plan.rows_by_colour
    assert max(wanted.values()) == 8
    found = [other.quote.plan.rows_by_colour for other in calmer_rounds(loud, today=TODAY)]
    assert len(found) == OFFERED
    off = {abs(rounds[colour] - wanted[colour]) for rounds in found for colour in wanted}
    assert off == {0, 1}


def test_a_colour_of_few_rounds_may_be_off_by_one_and_no_more() -> None:
    asked, same, by_one, by_two = (
        quoted(sample_centre(stripes=stripes(teal=teal, oat=16 - teal), rounds=16)).plan
        for teal in (7, 7, 8, 9)
    )
    kept = [keeps_colours(other, asked, or_by=1) for other in (same, by_one, by_two)]
    assert kept == [True, True, False]
    assert not keeps_colours(by_one, asked)


def test_the_page_says_that_one_round_is_allowed() -> None:
    assert "within a tenth, or one round," in calmer_words(LOUD.order.design.body).kept


def test_stripes_twice_as_wide_are_among_them() -> None:
    """45 rounds in stripes of two are 23 strands, 46 ends (constructions, 2), and of one 90."""
    assert len(LOUD.plan.rows) == 45
    wider = [body_of(found).stripes for found in calmer_rounds(LOUD, today=TODAY)]
    assert any(stripe.rounds == 2 for stripes in wider for stripe in stripes)


def test_colours_that_come_twice_a_repeat_may_be_worked_once_each() -> None:
    loud = quoted(sample_centre("teal", "oat", "teal", "oat", "rust", rounds_each=2))
    fitted = [found for found in calmer_rounds(loud, today=TODAY) if body_of(found).fitted]
    as_striped, once = sorted(fitted, key=lambda found: -len(body_of(found).stripes))
    assert len(body_of(as_striped).stripes) == 5
    stripes = [(stripe.colour, stripe.rounds) for stripe in body_of(once).stripes]
    assert stripes == [("teal", 4), ("oat", 4), ("rust", 2)]


def test_the_makers_own_rounds_are_kept() -> None:
    loud = quoted(replace(sample_centre("teal", "oat"), repeats=20))
    for found in calmer_rounds(loud, today=TODAY):
        assert (body_of(found).rounds, body_of(found).repeats) == (40, None)


def test_few_ends_and_stripes_that_are_fitted_are_left_as_they_are() -> None:
    plain = quoted(sample_centre("teal"))
    assert plain.estimate.ends < MANY_ENDS
    assert calmer_rounds(plain, today=TODAY) == ()
    fitted = quoted(replace(sample_centre(*("teal", "oat") * 10), fitted=True))
    assert fitted.estimate.ends >= MANY_ENDS
    assert calmer_rounds(fitted, today=TODAY) == ()


def test_stripes_that_are_too_wide_for_a_body_are_left_out() -> None:
    """Twice a last stripe of most rounds would be refused; the rounds are the maker's own."""
    loud = sample_centre(*("teal", "oat") * 15).stripes
    body = sample_centre(stripes=(*loud, RoundStripe(colour="plum", rounds=MAX_COUNT)), rounds=60)
    assert calmer_rounds(quoted(body), today=TODAY) == ()


def test_a_construction_from_the_centre_is_calmed_where_fewer_ends_are_sought() -> None:
    assert can_be_calmed(LOUD.order.design.body)
    assert calmer_designs(LOUD, today=TODAY) == calmer_rounds(LOUD, today=TODAY)
