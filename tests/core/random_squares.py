"""Random blankets of joined squares, and the visits and walks that they make."""

from __future__ import annotations

from hypothesis import strategies as st

from quoting.core.estimate.strands import Visit, visits_by_colour
from quoting.core.estimate.yarn_needed import yarn_by_pass
from quoting.core.order.design import Design
from quoting.core.order.joined_squares import JoinedSquares, JoinMethod, Layout, MotifJoin
from quoting.core.order.order import Order
from quoting.core.plan.plan import plan_order
from quoting.core.workshop.habits import Habits, Join
from tests.core.random_strands import one_band
from tests.examples import COLOURS, WOOL, sample_order
from tests.motif_examples import SQUARE, motif_workshop

LAST = "slate"
"""The colour of all last rounds, so that any join will do."""

colours = st.sampled_from(list(COLOURS))


@st.composite
def joined_squares(draw: st.DrawFn) -> JoinedSquares:
    """Return some squares of one to five rounds, joined in some way, at least two by one."""
    rounds = draw(st.integers(2, 5))
    inner = st.lists(colours, min_size=rounds - 1, max_size=rounds - 1)
    layouts = st.builds(
        lambda own, share: Layout(colours=(*own, LAST), share=share), inner, st.integers(1, 3)
    )
    join = st.builds(MotifJoin, method=st.sampled_from(JoinMethod), colour=st.just(LAST))
    return JoinedSquares(
        motif=SQUARE,
        layouts=tuple(draw(st.lists(layouts, min_size=1, max_size=4))),
        join=draw(join),
        rounds=rounds,
        columns=draw(st.integers(1, 5)),
        rows=draw(st.integers(1, 5)),
    )


squares_designs = st.builds(
    Design,
    width_cm=st.just(80.0),
    height_cm=st.just(100.0),
    stitch=st.just("dc"),
    yarn=st.just(WOOL),
    body=joined_squares(),
    border=st.lists(one_band, max_size=2).map(tuple),
)
squares_orders = squares_designs.map(lambda design: sample_order(design=design, extras=()))
motif_habits = st.builds(
    Habits,
    carry_rows=st.integers(0, 3),
    join=st.sampled_from(Join),
    carry_in_rounds=st.booleans(),
)


def visits_of(order: Order, how: Habits) -> dict[str, list[Visit]]:
    """Return each colour's visits to an order's blanket."""
    plan = plan_order(order, motif_workshop())
    return visits_by_colour(plan, how, yarn_by_pass(plan, order))
