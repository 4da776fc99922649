"""Minutes of one motif, as a maker of squares thinks of them: expected, and as they were."""

from __future__ import annotations

from dataclasses import replace
from decimal import Decimal

import pytest

from quoting.core.making.log_lines import Doing, LogLine
from quoting.core.making.motif_minutes import MotifMinutes, motif_minutes
from quoting.core.making.outcome import outcome_of
from quoting.core.making.parts_taken import parts_taken
from quoting.core.order.joined_squares import JoinMethod
from quoting.core.quote.quote import Quote, quote_order
from quoting.core.workshop.rounds import Counting
from quoting.wording.motif_words import minutes_a_motif
from tests.constructed import SUN, constructed_quote, from_centre, motif_workshop, squares
from tests.core.making.logs import hook, log
from tests.examples import TODAY, sample_minutes, sample_quote

MOTIFS = 12
NEARLY = 0.03
"""Minutes that rounding the hours of all stitching to hundredths leaves of one motif."""

UNTIMED = motif_workshop(replace(SUN, timings=()))


def minutes_of(quote: Quote, *lines: LogLine) -> MotifMinutes:
    found = motif_minutes(quote, outcome_of(quote, log(*lines)))
    assert found is not None
    return found


def at_the_hook(quote: Quote) -> Decimal:
    hours = quote.estimate.hours
    return sum((hours.of(part) for part in Doing.AT_THE_HOOK.parts), Decimal(0))


@pytest.mark.parametrize("method", [m for m in JoinMethod if m is not JoinMethod.CONTINUOUS])
def test_a_motif_that_was_timed_takes_its_own_minutes_whatever_joins_it(
    method: JoinMethod,
) -> None:
    """Twenty minutes each were timed; joins and border are not in them."""
    quote = constructed_quote(squares(method))
    assert minutes_of(quote).expected == pytest.approx(20, abs=NEARLY)
    assert minutes_of(quote).took is None
    assert minutes_a_motif(quote) == "Minutes a motif, pulling back with it"


def test_several_blankets_have_as_many_times_their_motifs() -> None:
    quote = constructed_quote(squares())
    two = quote_order(replace(quote.order, quantity=2), quote.workshop, today=TODAY)
    assert minutes_of(two).expected == pytest.approx(20, abs=NEARLY)


def test_pulling_back_is_in_them_by_its_share() -> None:
    minutes = sample_minutes(rip_back=0.1)
    quote = constructed_quote(squares(), motif_workshop(minutes=minutes))
    assert minutes_of(quote).expected == pytest.approx(22, abs=NEARLY)


def test_a_motif_that_was_never_timed_takes_the_minutes_of_its_stitches() -> None:
    """12 + 24 + 36 + 48 + 60 stitches, and 8 + 12 + 16 + 20 + 24 chains, of each motif."""
    quote = constructed_quote(squares(JoinMethod.SINGLE_CROCHET), UNTIMED)
    each = {task.what: task.minutes_each for task in quote.estimate.hours.tasks}
    assert minutes_of(quote).expected == pytest.approx(
        180 * each["dc"] + 80 * each["ch"], abs=NEARLY
    )
    assert minutes_a_motif(quote) == "Minutes of stitching a motif, pulling back with it"


def test_what_it_took_is_its_part_of_all_the_stitching() -> None:
    """Of two hours more at the hook the motifs have 240 minutes of each 250 or so of stitching."""
    quote = constructed_quote(squares())
    took = at_the_hook(quote) + 2
    minutes = minutes_of(quote, hook(None, None, float(took) * 60))
    stitching = sum(t.minutes for t in quote.estimate.hours.tasks if t.timed_stitch is not None)
    more = 120 * 240 / stitching / MOTIFS
    assert minutes.difference == pytest.approx(more, abs=NEARLY)
    assert minutes.share == pytest.approx(more / 20, abs=NEARLY / 10)


@pytest.mark.parametrize("took", ["9.00", "0.35", "0.00"])
def test_few_hours_are_shared_as_they_were_expected_and_add_up(took: str) -> None:
    """Joining and laying out alone were to take more than the least of these."""
    quote = constructed_quote(squares())
    parts = parts_taken(quote.estimate.hours, Doing.AT_THE_HOOK, Decimal(took))
    assert sum(parts.values()) == Decimal(took)
    assert min(parts.values()) >= 0


def test_what_is_not_joined_of_motifs_has_none() -> None:
    """A piece from the centre may be reckoned by a motif, but has none in it."""
    whole = constructed_quote(from_centre(Counting.CLUSTERS, motif="sun"))
    for quote in (whole, sample_quote()):
        assert motif_minutes(quote, outcome_of(quote, ())) is None
