"""What there is to do besides stitches is shared among the passes, and none of it is lost."""

from __future__ import annotations

import math
from dataclasses import replace

import pytest

from quoting.core.estimate.workload import TURN
from quoting.core.making.chores_by_pass import BY_ORDER, chores_by_pass
from quoting.core.order.bodies import Body
from quoting.core.order.joined_squares import JoinMethod
from quoting.core.plan.passes import Plan
from tests.constructed import constructed_quote, from_centre, squares
from tests.examples import sample_design


def in_all(plan: Plan, name: str) -> float:
    """Return how much of a chore is done with all passes of one blanket."""
    shared = zip(chores_by_pass(plan), plan.passes, strict=True)
    return math.fsum(chores.get(name, 0.0) * plan.times(worked) for chores, worked in shared)


@pytest.mark.parametrize("method", list(JoinMethod))
def test_what_squares_bring_is_shared_among_motifs_and_seams(method: JoinMethod) -> None:
    plan = constructed_quote(squares(method, blocked=True)).plan
    shared = {name: n for name, n in plan.chores.items() if name not in (*BY_ORDER, TURN)}
    assert shared
    assert {name: in_all(plan, name) for name in shared} == pytest.approx(shared)


@pytest.mark.parametrize("body", [sample_design().body, from_centre()], ids=["rows", "centre"])
def test_what_a_blanket_in_one_piece_brings_is_shared_among_its_rows(body: Body) -> None:
    """No construction in one piece brings any yet; one that does loses none of it."""
    plan = replace(constructed_quote(body).plan, chores={"join_braid": 30.0})
    assert in_all(plan, "join_braid") == pytest.approx(30)
    each = {chores.get("join_braid", 0.0) for chores in chores_by_pass(plan)}
    assert each == {0.0, 30 / len(plan.rows)}
