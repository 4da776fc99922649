"""Random designs, habits and balls, and the strands that they make."""

from __future__ import annotations

from collections.abc import Iterator, Sequence

from hypothesis import strategies as st

from quoting.core.estimate.ball_walk import ColourWalk, walk_colour
from quoting.core.estimate.balls import ONE_ENDLESS_BALL, Supply
from quoting.core.estimate.strands import Strand, Visit, visits_by_colour
from quoting.core.estimate.yarn_needed import yarn_by_pass
from quoting.core.order.design import BorderBand, Corner, Design
from quoting.core.order.in_rows import InRows, Section, Stripe
from quoting.core.plan.passes import Plan
from quoting.core.plan.plan import plan_order
from quoting.core.workshop.habits import Habits, Join
from tests.examples import COLOURS, WOOL, sample_order, sample_workshop

TAIL_M = 0.15
HAIR_M = 1e-5
KINDS = ("sc", "hdc", "dc", "tr")

colours = st.sampled_from(list(COLOURS))
kinds = st.sampled_from(KINDS)
one_stripe = st.builds(
    Stripe, colour=colours, rows=st.integers(1, 4), stitch=st.one_of(st.none(), kinds)
)
some_stripes = st.lists(one_stripe, max_size=3).map(tuple)
one_section = st.builds(
    Section,
    stripes=st.lists(one_stripe, min_size=1, max_size=6).map(tuple),
    repeats=st.integers(1, 5),
)
one_band = st.builds(
    BorderBand,
    stitch=kinds,
    colour=colours,
    rounds=st.integers(1, 3),
    corner=st.sampled_from(Corner),
)
bodies = st.builds(
    InRows,
    first_rows=some_stripes,
    last_rows=some_stripes,
    sections=st.lists(one_section, min_size=1, max_size=3).map(tuple),
    stitches=st.integers(1, 80),
)
designs = st.builds(
    Design,
    width_cm=st.just(80.0),
    height_cm=st.just(100.0),
    stitch=kinds,
    yarn=st.just(WOOL),
    body=bodies,
    border=st.lists(one_band, max_size=3).map(tuple),
)
habits = st.builds(
    Habits,
    carry_rows=st.integers(0, 20),
    carry_height_cm=st.sampled_from([0.0, 1.0, 3.0, 5.0, 40.0]),
    join=st.sampled_from(Join),
)
blankets = st.integers(1, 3)
ball_lengths = st.lists(st.floats(0.01, 60), max_size=12)


def planned(design: Design) -> tuple[Plan, list[float]]:
    """Return the plan of a design and the metres of each pass."""
    order = sample_order(design=design, extras=())
    plan = plan_order(order, sample_workshop())
    return plan, yarn_by_pass(plan, order)


def visited(design: Design, how: Habits) -> tuple[Plan, dict[str, list[Visit]]]:
    plan, yarn_m = planned(design)
    return plan, visits_by_colour(plan, how, yarn_m)


def walks_of(
    visits: dict[str, list[Visit]],
    how: Habits,
    copies: int = 1,
    balls_m: Sequence[float] | None = None,
) -> list[ColourWalk]:
    supply = ONE_ENDLESS_BALL if balls_m is None else Supply(balls_m=balls_m)
    return [
        walk_colour(colour, line, supply, tail_m=how.tail_m, blankets=copies, join=how.join)
        for colour, line in visits.items()
    ]


def strands_of(walks: Sequence[ColourWalk]) -> list[Strand]:
    return [strand for walk in walks for strand in walk.strands]


def way(strand: Strand) -> Iterator[tuple[int, int, float, float]]:
    """Yield the stretches of a strand as (blanket, pass, begins, ends)."""
    for stretch in strand.stretches:
        yield strand.starts.blanket, stretch.pass_index, stretch.begins, stretch.ends
