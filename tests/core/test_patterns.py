"""Patterns of the maker's own: how they turn, begin and repeat."""

from __future__ import annotations

from typing import Any

import pytest

from quoting.core.ground.cautions import Caution
from quoting.core.ground.errors import Refused
from quoting.core.order.in_rows import Section, Stripe
from quoting.core.plan.passes import Plan
from quoting.core.plan.plan import plan_order
from quoting.core.workshop.habits import Habits
from quoting.core.workshop.stitches import Stitch, TurningChain
from quoting.core.workshop.workshop import Pattern
from tests.examples import sample_design, sample_order, sample_workshop, section


def shell(**changes: Any) -> Pattern:
    """Return a shell pattern like double crochet that turns with one chain."""
    return Pattern(**{"name": "shell", "like": Stitch.DC, "turning_chains": 1, **changes})


def planned(pattern: Pattern, habits: Habits | None = None, **changes: Any) -> Plan:
    workshop = sample_workshop(patterns=(pattern,), habits=habits or Habits())
    design = {"stitch": pattern.name, "stitches": 139, "first_rows": (), **changes}
    return plan_order(sample_order(design=sample_design(**design)), workshop)


def row_repeats(plan: Plan) -> list[Caution]:
    return [caution for caution in plan.cautions if caution.code == "rows-break-repeat"]


def test_a_turning_chain_shorter_than_the_stitchs_own_stands_for_no_stitch() -> None:
    """Common practice, no source: one chain is no double crochet, three are."""
    plan = planned(shell())
    assert plan.foundation_chain == 140
    assert dict(plan.passes[0].stitches) == {"ch": 140}
    assert dict(plan.rows[1].stitches) == {"shell": 139, "ch": 1}


def test_a_turning_chain_as_long_as_the_stitchs_own_counts_as_that_does() -> None:
    assert planned(shell(turning_chains=3)).foundation_chain == 141
    assert planned(shell(turning_chains=None)).foundation_chain == 141
    uncounted = Habits(counts_turning_chain={Stitch.DC: False})
    assert planned(shell(turning_chains=3), uncounted).foundation_chain == 142


def test_what_the_maker_says_of_a_patterns_turning_chain_wins() -> None:
    counted = planned(shell(counts_turning_chain=True))
    assert counted.foundation_chain == 139
    assert dict(counted.rows[1].stitches) == {"shell": 139}
    uncounted = planned(shell(turning_chains=3, counts_turning_chain=False))
    assert uncounted.foundation_chain == 142
    assert dict(uncounted.rows[1].stitches) == {"shell": 139, "ch": 3}


def test_a_patterns_foundation_takes_the_chains_that_it_says() -> None:
    """By hand: 139 and 2 more, of which the three that stand for a stitch are none to weigh."""
    assert planned(shell(foundation_chains=2)).foundation_chain == 141
    plan = planned(shell(turning_chains=3, foundation_chains=2))
    assert plan.foundation_chain == 141
    assert dict(plan.passes[0].stitches) == {"ch": 138}


def test_a_foundation_has_never_less_than_no_chain() -> None:
    assert TurningChain(3, counts=True, begins_with=0).bare_foundation(1) == 0


@pytest.mark.parametrize(
    ("changes", "place"),
    [
        ({"foundation_chains": -1}, "foundation_chains"),
        ({"foundation_chains": 101}, "foundation_chains"),
        ({"row_repeat": 0}, "row_repeat"),
    ],
)
def test_figures_no_pattern_has_are_refused(changes: dict[str, int], place: str) -> None:
    with pytest.raises(Refused) as refused:
        shell(**changes)
    assert [mistake.path for mistake in refused.value.mistakes] == [place]


def test_rows_that_end_within_a_patterns_repeat_are_told_with_the_nearest_whole_ones() -> None:
    plan = planned(shell(row_repeat=4), sections=(section("oat", repeats=30),))
    (caution,) = row_repeats(plan)
    assert dict(caution.facts) == {
        "stitch": "shell",
        "rows": 30,
        "row_repeat": 4,
        "fewer": 28,
        "more": 32,
    }
    whole = planned(shell(row_repeat=4), sections=(section("oat", repeats=32),))
    assert row_repeats(whole) == []


def test_fewer_rows_than_one_repeat_have_no_fewer_to_offer() -> None:
    plan = planned(shell(row_repeat=4), sections=(section("oat", repeats=3),))
    (caution,) = row_repeats(plan)
    assert (caution.facts["fewer"], caution.facts["more"]) == (None, 4)


def test_a_stripe_in_a_pattern_is_asked_by_itself_and_told_once() -> None:
    """By hand: twelve stripes of three rows are 36, but each stops within a repeat of two."""
    stripes = (Stripe(colour="oat", rows=3, stitch="shell"), Stripe(colour="rust", rows=2))
    sections = (Section(stripes=stripes, repeats=12),)
    plan = planned(shell(row_repeat=2), stitch="hdc", sections=sections)
    (caution,) = row_repeats(plan)
    assert caution.facts["rows"] == 3


def test_rows_of_one_pattern_go_on_through_a_change_of_colour() -> None:
    plan = planned(shell(row_repeat=2), sections=(section("oat", "rust", rows=3, repeats=4),))
    assert row_repeats(plan) == []
