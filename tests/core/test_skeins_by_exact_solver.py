"""Skeins: the least cost is that of a MILP of the same definition, solved exactly by CBC."""

from __future__ import annotations

import random
from decimal import Decimal

import pulp
import pytest

from quoting.core.workshop.yarns import Yarn
from tests.core.plain_yarn import TAIL_M, choose, put_up, yarn

pytestmark = pytest.mark.slow


def milp_cost(need_m: float, wool: Yarn, tail_m: float) -> float:
    """Return the least cost of new skeins, put-ups mixed, by PuLP's bundled CBC solver."""
    problem = pulp.LpProblem("skeins", pulp.LpMinimize)
    counts = [
        pulp.LpVariable(f"packs{number}", lowBound=0, cat="Integer")
        for number in range(len(wool.put_ups))
    ]
    both = list(zip(wool.put_ups, counts, strict=True))
    problem += pulp.lpSum(float(one.price) * count for one, count in both)
    gains_m = [one.pack * (one.length_m - 2 * tail_m) * count for one, count in both]
    problem += pulp.lpSum(gains_m) >= need_m - 2 * tail_m
    problem.solve(pulp.PULP_CBC_CMD(msg=False, gapRel=0, gapAbs=0))
    assert pulp.LpStatus[problem.status] == "Optimal"
    return float(pulp.value(problem.objective))


def any_yarn(dice: random.Random) -> Yarn:
    """Make a yarn of odd lengths and prices, larger balls mostly cheaper for a gram."""
    weights = dice.sample((25, 50, 75, 100, 150, 200), dice.randint(2, 4))
    return yarn(
        *(
            put_up(
                grams,
                round(grams * dice.uniform(1.7, 2.3), 1),
                str(round(grams ** dice.uniform(0.9, 1.0) * 0.06, 2)),
            )
            for grams in weights
        )
    )


@pytest.mark.filterwarnings("ignore::DeprecationWarning")  # of PuLP, about its next version
@pytest.mark.parametrize("seed", range(4))
def test_the_cost_is_that_of_an_exact_solver(seed: int) -> None:
    """A MILP of the same definition, solved by CBC with no gap allowed."""
    dice = random.Random(seed)
    for _ in range(75):
        need_m, wool = round(dice.uniform(50, 4000), 2), any_yarn(dice)
        cost = choose(need_m, wool, mix=True).cost
        assert float(cost) == pytest.approx(milp_cost(need_m, wool, TAIL_M), abs=1e-6)


def proportional_yarn(dice: random.Random) -> Yarn:
    """Make a yarn whose balls all cost the same a metre, so that only the tails tell them apart."""
    weights = dice.sample(range(20, 400), dice.randint(2, 6))
    return yarn(*(put_up(grams, 2 * grams, str(Decimal("0.046") * grams)) for grams in weights))


@pytest.mark.filterwarnings("ignore::DeprecationWarning")  # of PuLP, about its next version
def test_the_cost_is_that_of_an_exact_solver_where_prices_are_in_proportion() -> None:
    """A MILP of the same definition, solved by CBC with no gap allowed."""
    dice = random.Random(4)
    for _ in range(40):
        need_m, wool = round(dice.uniform(50, 4000), 2), proportional_yarn(dice)
        cost = choose(need_m, wool, mix=True).cost
        assert float(cost) == pytest.approx(milp_cost(need_m, wool, TAIL_M), abs=1e-6)
