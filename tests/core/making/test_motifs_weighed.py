"""What yarn really went into motifs is weighed with those that were on the scale."""

from __future__ import annotations

from collections.abc import Iterator
from dataclasses import replace

import pytest

from quoting.core.making.learnt import Learnt, learnt_from, with_learnt
from quoting.core.making.log_lines import LogLine, YarnUsed
from quoting.core.making.made_rows import made_rows
from quoting.core.order.joined_squares import JoinMethod
from quoting.core.quote.quote import Quote
from quoting.core.workshop.motifs import MOST_MOTIFS, WeighedMotifs
from quoting.core.workshop.workshop import Workshop
from tests.constructed import (
    SUN,
    constructed_order,
    constructed_quote,
    from_centre,
    motif_workshop,
    squares,
)
from tests.core.making.logs import log, used
from tests.examples import sample_quote

MOTIFS = 12
EACH_G = 12.0
"""What one of the sample weighs, of which six were weighed."""


def learnt(quote: Quote, *lines: LogLine, workshop: Workshop | None = None) -> Learnt:
    return learnt_from(quote, log(*lines), workshop or quote.workshop)


def all_used(quote: Quote, times: float, colours: int = 99) -> Iterator[LogLine]:
    """Yield that colours took so many times what was planned, once all was made."""
    for some in quote.estimate.colours[:colours]:
        yield used(some.colour, some.grams * times, made_rows(quote).all)


@pytest.fixture
def quote() -> Quote:
    return constructed_quote(squares(JoinMethod.SINGLE_CROCHET))


def test_the_sample_weighs_what_these_tests_take_it_to() -> None:
    assert SUN.weighed is not None
    assert SUN.weighed.weight_g / SUN.weighed.motifs == EACH_G


@pytest.mark.parametrize("times", [0.9, 1.0, 1.1])
def test_motifs_weigh_as_much_more_as_their_yarn_took(quote: Quote, times: float) -> None:
    """Twelve of 12 g each are 144 g; a tenth more yarn is 158.4 g."""
    (told,) = learnt(quote, *all_used(quote, times)).weighings
    assert (told.motif, told.weighed.motifs) == ("sun", MOTIFS)
    assert told.weighed.weight_g == pytest.approx(144 * times, abs=0.06)


@pytest.mark.parametrize("method", JoinMethod)
def test_however_they_are_joined_a_last_round_that_joins_them_is_of_the_motif(
    method: JoinMethod,
) -> None:
    joined = constructed_quote(squares(method))
    (told,) = learnt(joined, *all_used(joined, 1.1)).weighings
    assert told.weighed.motifs == MOTIFS
    assert told.weighed.weight_g == pytest.approx(1.1 * MOTIFS * EACH_G, abs=0.06)


def test_two_blankets_weigh_twice_as_many() -> None:
    two = sample_quote(replace(constructed_order(squares()), quantity=2), motif_workshop())
    (told,) = learnt(two, *all_used(two, 1.0)).weighings
    assert told.weighed.motifs == 2 * MOTIFS


def test_where_only_some_of_the_yarn_was_told_of_fewer_motifs_tell_it(quote: Quote) -> None:
    (told,) = learnt(quote, *all_used(quote, 1.1, colours=2)).weighings
    assert 0 < told.weighed.motifs < MOTIFS
    assert told.weighed.weight_g / told.weighed.motifs == pytest.approx(1.1 * EACH_G, rel=0.01)


def test_they_are_weighed_together_and_the_next_quote_takes_what_they_came_to(
    quote: Quote,
) -> None:
    before = quote.workshop.motif("sun").weighed
    moon = replace(SUN, name="moon")
    own = replace(quote.workshop, motifs=(moon, SUN))
    shop = with_learnt(own, learnt(quote, *all_used(quote, 1.2)))
    assert shop.motif("moon") == moon
    after = shop.motif("sun").weighed
    assert before is not None
    assert after is not None
    assert after.motifs == before.motifs + MOTIFS
    assert after.weight_g == pytest.approx(before.weight_g + 1.2 * MOTIFS * EACH_G, abs=0.06)
    yarn_m = [
        sum(c.metres for c in constructed_quote(squares(), s).estimate.colours)
        for s in (quote.workshop, shop)
    ]
    assert yarn_m[0] < yarn_m[1] < 1.2 * yarn_m[0]


@pytest.mark.parametrize("step_g", [0.01, 1.0, 5.0])
def test_they_are_no_surer_than_a_kitchen_scale_leaves_the_yarn_nor_than_those_before(
    step_g: float,
) -> None:
    """Of the yarn told about a gram is not known: of motifs, as much less as they are less of it.

    The coarser of the two scales holds for all that are weighed together.
    """
    assert SUN.weighed is not None
    fine = replace(SUN, weighed=replace(SUN.weighed, scale_step_g=step_g))
    made = constructed_quote(squares(JoinMethod.SINGLE_CROCHET), motif_workshop(fine))
    lines = tuple(all_used(made, 1.0))
    found = learnt(made, *lines)
    (told,) = found.weighings
    grams = sum(line.used_g for line in lines if isinstance(line, YarnUsed))
    expected = max(step_g, told.weighed.weight_g / grams)
    assert told.weighed.scale_step_g == pytest.approx(expected, abs=0.05)
    after = with_learnt(made.workshop, found).motif("sun").weighed
    assert after is not None
    assert after.scale_step_g == told.weighed.scale_step_g


def test_a_little_yarn_tells_it_the_less_surely() -> None:
    quote = constructed_quote(squares(JoinMethod.SINGLE_CROCHET))
    colour = quote.estimate.colours[0]
    (told,) = learnt(quote, used(colour.colour, 2.0, 1)).weighings
    assert told.weighed.scale_step_g == pytest.approx(told.weighed.weight_g / 2, abs=0.05)
    assert told.weighed.scale_step_g > 1


def test_what_was_taken_in_is_not_offered_again(quote: Quote) -> None:
    lines = tuple(all_used(quote, 1.2))
    shop = with_learnt(quote.workshop, learnt(quote, *lines))
    assert learnt(quote, *lines, workshop=shop).weighings == ()


def test_a_motif_that_is_gone_or_was_weighed_anew_since_is_left_as_it_is(quote: Quote) -> None:
    lines = tuple(all_used(quote, 1.2))
    gone = replace(quote.workshop, motifs=())
    anew = replace(SUN, weighed=WeighedMotifs(motifs=10, weight_g=125))
    assert learnt(quote, *lines, workshop=gone).weighings == ()
    assert learnt(quote, *lines, workshop=motif_workshop(anew)).weighings == ()


def test_of_other_rounds_than_were_weighed_none_is_told() -> None:
    layouts = tuple(replace(each, colours=each.colours[:4]) for each in squares().layouts)
    fewer = constructed_quote(squares(rounds=4, layouts=layouts))
    assert learnt(fewer, *all_used(fewer, 1.2)).weighings == ()


def test_a_motif_that_was_unravelled_and_never_weighed_has_no_weight_to_add_to() -> None:
    unravelled = replace(SUN, weighed=None, rounds_m=(2.0, 4.0, 6.0, 8.0, 10.0))
    quote = constructed_quote(squares(), motif_workshop(unravelled))
    assert learnt(quote, *all_used(quote, 1.2)).weighings == ()


def test_only_motifs_that_are_joined_are_told_of_and_only_where_yarn_was(quote: Quote) -> None:
    centre = constructed_quote(from_centre())
    assert learnt(centre, *all_used(centre, 1.2)).weighings == ()
    assert learnt(quote).weighings == ()


def test_no_more_are_weighed_together_than_can_be() -> None:
    many = replace(SUN, weighed=WeighedMotifs(motifs=MOST_MOTIFS - 1, weight_g=99_000))
    quote = constructed_quote(squares(), motif_workshop(many))
    assert learnt(quote, *all_used(quote, 1.2)).weighings == ()
