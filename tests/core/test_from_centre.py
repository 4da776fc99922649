"""One piece from the centre: its rounds, its size, its stripes, its border."""

from __future__ import annotations

import math
from dataclasses import replace
from typing import Any

import pytest
from hypothesis import given
from hypothesis import strategies as st

from quoting.core.estimate.strands import Why
from quoting.core.ground.errors import Refused
from quoting.core.order.design import Corner
from quoting.core.plan.fitted import fitted_rows
from quoting.core.plan.passes import Plan
from quoting.core.plan.plan import plan_order
from quoting.core.workshop.habits import Habits
from quoting.core.workshop.motifs import EarlierSide
from quoting.core.workshop.rounds import CLUSTER, Counting, Rounds
from quoting.core.workshop.stitches import WORKED
from quoting.core.workshop.swatches import Reading
from quoting.core.workshop.workshop import Workshop
from tests.examples import band, sample_quote, sample_yarn
from tests.motif_examples import (
    SQUARE,
    centre_order,
    motif_workshop,
    sample_centre,
    sample_motif,
    tall_swatch,
)

ROW_CM, WIDE_CM = 10 / 9, 10 / 17
"""Of the swatch of double crochet."""

GROWN = EarlierSide(rounds=2, side_cm=7.5)
"""Of a motif of 15 cm after five rounds: each adds 2.5 cm."""

LOW_ROWS = motif_workshop(
    swatches=(tall_swatch(gauge=Reading(stitches=17, width_cm=10, rows=80, height_cm=10)),)
)
"""Whose rounds are an eighth of a centimetre high."""


def centre_plan(
    *, workshop: Workshop | None = None, design: dict[str, Any] | None = None, **changes: Any
) -> Plan:
    """Return the plan of a piece whose body is changed; of its design, what is given beside."""
    order = centre_order(body=sample_centre(**changes), **design or {})
    return plan_order(order, workshop or motif_workshop())


def codes(refused: pytest.ExceptionInfo[Refused]) -> list[tuple[str, str]]:
    return [(str(mistake.place), mistake.code.value) for mistake in refused.value.mistakes]


@given(
    st.sampled_from(Counting),
    st.sampled_from(WORKED),
    st.sampled_from([2, 3, None]),
    st.integers(0, 5),
    st.integers(0, 30),
    st.integers(1, 60),
)
def test_totals_by_formula_are_the_rounds_added_up(
    counting: Counting, kind: Any, first: int | None, side_chains: int, extra: int, rounds: int
) -> None:
    counted = Rounds(
        counting=counting, kind=kind, first_side=first, side_chains=side_chains, extra=extra
    )
    each = [counted.round(number).stitches for number in range(1, rounds + 1)]
    assert counted.total(rounds) == sum(each)
    if rounds > 1:
        assert each[-1] - each[-2] == counted.growth


@given(st.integers(1, 30), st.sampled_from(WORKED), st.integers(0, 5), st.integers(0, 9))
def test_a_round_of_clusters_is_its_clusters_and_the_spaces_between(
    rounds: int, kind: Any, side_chains: int, extra: int
) -> None:
    """Laid out one by one: each corner is two clusters round two chains, spaces lie between."""
    sides = [rounds + 1, rounds + 1 + extra] * 2
    clusters = sum(sides) - 4
    spaces = sum(side - 2 for side in sides) + 4 * 1 - 4
    counted = Rounds(
        counting=Counting.CLUSTERS, kind=kind, side_chains=side_chains, extra=extra
    ).round(rounds)
    assert counted.stitches == CLUSTER * clusters
    assert counted.chains == 4 * 2 + spaces * side_chains


def test_a_wide_piece_is_a_tall_one_on_its_side() -> None:
    """The same rounds; and a border has as many stitches, first along the long side."""
    bordered = {"border": (band("dc"),)}
    tall = centre_plan(design={"width_cm": 75, "height_cm": 90, **bordered})
    wide = centre_plan(design={"width_cm": 90, "height_cm": 75, **bordered})
    assert (wide.width_cm, wide.height_cm) == (tall.height_cm, tall.width_cm)
    assert [worked.stitches for worked in wide.passes] == [p.stitches for p in tall.passes]
    (low,), (high,) = wide.rounds, tall.rounds
    assert low.sides[0] > low.sides[1]
    assert low.sides == high.sides[1:] + high.sides[:1]


def test_a_rectangle_of_clusters_is_longer_by_a_cluster_for_each_that_it_begins_on() -> None:
    """A square has one cluster more a side after each round, and is wider by what that adds."""
    workshop = motif_workshop(sample_motif(earlier=GROWN))
    plan = centre_plan(workshop=workshop, counting=Counting.CLUSTERS, rounds=10, starts_on=4)
    assert plan.width_cm == pytest.approx(15 + 5 * 2.5)
    assert plan.height_cm - plan.width_cm == pytest.approx(4 * 2.5)


def test_without_a_motif_a_cluster_is_as_wide_as_its_stitches_and_its_space() -> None:
    workshop = motif_workshop(motifs=())
    plan = centre_plan(workshop=workshop, counting=Counting.CLUSTERS, rounds=10, starts_on=4)
    assert plan.height_cm - plan.width_cm == pytest.approx(4 * 4 * WIDE_CM)


def test_a_solid_rectangle_goes_by_its_motif_where_there_is_one() -> None:
    """Each side of a solid square has four stitches more after each round."""
    motif = sample_motif(counting=Counting.SOLID, earlier=GROWN)
    plan = centre_plan(workshop=motif_workshop(motif), rounds=8, starts_on=20)
    assert plan.height_cm - plan.width_cm == pytest.approx(20 * 2.5 / 4)


def test_a_circle_is_as_wide_as_it_is_high() -> None:
    plan = centre_plan(counting=Counting.CIRCLE, design={"width_cm": 100, "height_cm": 150})
    rounds = round(100 / 2 / ROW_CM)
    assert len(plan.rows) == rounds
    assert (plan.width_cm, plan.height_cm) == pytest.approx((2 * ROW_CM * rounds,) * 2)
    assert plan.rows[-1].stitches == {"dc": 12 * rounds}


@pytest.mark.parametrize("counting", [Counting.CIRCLE, Counting.HEXAGON])
def test_a_circle_and_a_hexagon_grow_as_a_motif_that_is_counted_alike(counting: Counting) -> None:
    """15 cm across after five rounds, 2.5 cm each: 30 cm after eleven."""
    motif = sample_motif(counting=counting, earlier=GROWN)
    plan = centre_plan(
        counting=counting, workshop=motif_workshop(motif), design={"width_cm": 30, "height_cm": 30}
    )
    assert len(plan.rows) == 11
    assert plan.width_cm == pytest.approx(30)


def test_a_hexagon_is_higher_across_its_corners_border_and_all() -> None:
    """2/√3 times as high as wide, as any regular one is."""
    plan = centre_plan(counting=Counting.HEXAGON, design={"border": (band("dc", rounds=3),)})
    assert plan.height_cm / plan.width_cm == pytest.approx(2 / 3**0.5)
    assert [worked.stitches["dc"] % 6 for worked in plan.rounds] == [0, 0, 0]


def test_a_circle_and_a_hexagon_cover_less_than_the_rectangle_about_them() -> None:
    circle, hexagon = (centre_plan(counting=c) for c in (Counting.CIRCLE, Counting.HEXAGON))
    assert circle.area_cm2 == pytest.approx(math.pi * (circle.width_cm / 2) ** 2)
    assert hexagon.area_cm2 == pytest.approx(hexagon.width_cm**2 * math.sqrt(3) / 2)


@pytest.mark.parametrize("corner", Corner)
def test_a_border_round_a_circle_has_no_corners_and_lies_flat(corner: Corner) -> None:
    """It grows by 2π heights of a round over its width, to the nearest stitch: 11.87 is 12."""
    bordered = {"border": (band("dc", rounds=3, corner=corner),)}
    plan = centre_plan(counting=Counting.CIRCLE, rounds=20, design=bordered)
    assert {worked.corner for worked in plan.rounds} == {None}
    assert [worked.stitches for worked in plan.rounds] == [{"dc": 240}, {"dc": 252}, {"dc": 264}]
    assert not {c.code.value for c in plan.cautions} & {"corners-cup", "corners-ruffle"}


def test_stripes_repeat_from_the_centre_to_the_size() -> None:
    plan = centre_plan(stripes=sample_centre("teal", "rust", rounds_each=2).stripes, rounds=7)
    colours = [worked.colour for worked in plan.rows]
    assert colours == ["teal", "teal", "rust", "rust", "teal", "teal", "rust"]


def test_stripes_repeat_as_often_as_is_asked() -> None:
    plan = centre_plan(stripes=sample_centre("teal", "rust", rounds_each=2).stripes, repeats=3)
    assert len(plan.rows) == 12


def test_fitted_stripes_are_worked_once_each_in_proportion() -> None:
    stripes = sample_centre("teal", "rust", "oat", rounds_each=2).stripes
    plan = centre_plan(stripes=stripes, fitted=True, rounds=10)
    assert list(plan.rows_by_colour.items()) == [("teal", 3), ("rust", 4), ("oat", 3)]


@given(st.lists(st.integers(1, 9), min_size=1, max_size=12), st.integers(0, 60))
def test_fitted_rounds_come_to_all_rounds_and_none_is_left_out(typed: list[int], more: int) -> None:
    rounds = len(typed) + more
    counts = fitted_rows([n / sum(typed) for n in typed], [1.0] * len(typed), float(rounds))
    assert sum(counts) == rounds
    assert min(counts) >= 1


def test_fitted_stripes_need_a_round_each() -> None:
    stripes = sample_centre("teal", "rust", "oat").stripes
    with pytest.raises(Refused) as refused:
        centre_plan(stripes=stripes, fitted=True, design={"width_cm": 4, "height_cm": 4})
    (mistake,) = refused.value.mistakes
    assert mistake.code == "less-than-a-round"
    assert mistake.facts["smallest_cm"] == pytest.approx(3 * 2 * ROW_CM)


@pytest.mark.parametrize(
    ("own", "place"),
    [
        ({"rounds": 1001}, "centre.rounds"),
        ({"repeats": 1001}, "centre.repeats"),
        ({"workshop": LOW_ROWS, "design": {"width_cm": 400, "height_cm": 400}}, "width"),
    ],
)
def test_too_many_rounds_are_refused_beside_what_asks_for_them(
    own: dict[str, Any], place: str
) -> None:
    with pytest.raises(Refused) as refused:
        centre_plan(**own)
    assert codes(refused) == [(f"blanket.{place}", "too-many-rounds")]


def test_fewer_rounds_of_the_makers_own_than_fitted_stripes_are_told_beside_them() -> None:
    stripes = sample_centre("teal", "rust", "plum").stripes
    with pytest.raises(Refused) as refused:
        centre_plan(stripes=stripes, fitted=True, rounds=2)
    assert codes(refused) == [("blanket.centre.rounds", "too-small")]


def test_a_piece_goes_by_the_largest_motif_that_is_counted_alike() -> None:
    """Of its yarn and stitch; another that is named has to be worked as it is."""
    small = sample_motif(name="small", rounds=3, one_side_cm=10, counting=Counting.SOLID)
    large = sample_motif(name="large", rounds=9, one_side_cm=27, counting=Counting.SOLID)
    workshop = motif_workshop(small, large, sample_motif())
    plan = centre_plan(workshop=workshop, rounds=9)
    assert {worked.fabric.motif for worked in plan.rows} == {"large"}
    named = centre_plan(workshop=workshop, rounds=9, motif="small")
    assert {worked.fabric.motif for worked in named.rows} == {"small"}
    with pytest.raises(Refused) as refused:
        centre_plan(workshop=workshop, motif=SQUARE)
    assert codes(refused) == [("blanket.centre.motif", "motif-counted-otherwise")]


def test_a_rectangle_of_as_many_rounds_as_a_motif_is_no_measured_motif() -> None:
    """Its long sides were never weighed."""
    motif = sample_motif(counting=Counting.SOLID)
    sure = {
        extra: centre_plan(workshop=motif_workshop(motif), rounds=5, starts_on=extra)
        for extra in (0, 8)
    }
    found = {
        extra: {g.sureness.value for made, g in plan.gauges.items() if made.fabric.motif}
        for extra, plan in sure.items()
    }
    assert found == {0: {"measured"}, 8: {"estimated"}}


def test_turning_after_each_round_takes_its_minutes() -> None:
    hours = [
        sample_quote(
            centre_order(body=sample_centre(rounds=34, turned=turned)), motif_workshop()
        ).estimate.hours
        for turned in (False, True)
    ]
    plain, turned = ({task.what: task.count for task in each.tasks} for each in hours)
    assert turned["turn"] == 33
    assert "turn" not in plain
    assert turned["begin_round"] == plain["begin_round"] == 34


def test_yarn_is_carried_between_rounds_only_by_makers_who_do() -> None:
    """Two colours round by round: 34 strands; carried, two. Border and body are no rounds alike."""
    body = sample_centre("teal", "rust", rounds=34)
    for carries, cut in ((False, 32), (True, 0)):
        workshop = motif_workshop(habits=Habits(carry_in_rounds=carries))
        estimate = sample_quote(centre_order(body=body), workshop).estimate
        assert estimate.ended(Why.CUT) == cut


def test_a_swatch_in_another_stitch_makes_no_motif_of_a_piece() -> None:
    workshop = motif_workshop(sample_motif(counting=Counting.SOLID), swatches=(tall_swatch(),))
    order = centre_order(body=sample_centre(rounds=5), stitch="hdc")
    assert {worked.fabric.motif for worked in plan_order(order, workshop).rows} == {""}


def test_a_piece_in_another_yarn_than_its_motif_grows_as_the_motif_does() -> None:
    """A motif of 18 cm, its first round as high as the others by the rows of its own yarn."""
    thick = replace(sample_yarn(stock=()), name="tarn chunky")
    high = tall_swatch(gauge=Reading(stitches=9, width_cm=10, rows=5, height_cm=10))
    motif = sample_motif(yarn=thick.name, counting=Counting.SOLID, one_side_cm=18)
    workshop = motif_workshop(
        motif,
        yarns=(sample_yarn(), thick),
        swatches=(tall_swatch(), replace(high, yarn=thick.name)),
    )
    plan = centre_plan(workshop=workshop, motif=SQUARE, rounds=3, starts_on=0)
    assert plan.width_cm == pytest.approx(18 - 2 * min(18 / 5, 2 * 10 / 5))
