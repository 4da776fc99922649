"""How long choosing skeins takes beside a MILP solver (PuLP's bundled CBC) on the same cases.

Run as `python tests/benchmarks/skein_choice.py`. Both are timed one after the other in one run,
and their costs must agree; what counts is the ratio, which does not depend on the machine much.
The solver's time includes starting its program, as any caller would have to.
"""

from __future__ import annotations

import random
import statistics
import time
from collections.abc import Callable
from decimal import Decimal

import pulp

from quoting.core.estimate.skeins import choose_skeins
from quoting.core.workshop.yarns import PutUp, Yarn

CASES = 60
TAIL_M = 0.15
Case = tuple[float, Yarn]


def random_case(dice: random.Random, most_m: float) -> Case:
    """Make a need in metres and a yarn of two to four put-ups."""
    weights = dice.sample((25, 50, 75, 100, 150, 200), dice.randint(2, 4))
    put_ups = tuple(
        PutUp(
            weight_g=grams,
            length_m=round(grams * dice.uniform(1.7, 2.3), 1),
            price=Decimal(str(round(grams ** dice.uniform(0.9, 1.0) * 0.06, 2))),
        )
        for grams in weights
    )
    need_m = round(dice.uniform(most_m / 2, most_m), 2)
    return need_m, Yarn(name="Plain", put_ups=put_ups, colours={"moss": "#556b2f"})


def chosen_cost(case: Case) -> float:
    """Return the cost of the skeins chosen, put-ups mixed."""
    need_m, yarn = case
    return float(choose_skeins(need_m, yarn, "moss", tail_m=TAIL_M, mix_lots=True).cost)


def milp_cost(case: Case) -> float:
    """Return the least cost by CBC, no gap allowed."""
    need_m, yarn = case
    problem = pulp.LpProblem("skeins", pulp.LpMinimize)
    packs = [
        (one, pulp.LpVariable(f"packs{number}", lowBound=0, cat="Integer"))
        for number, one in enumerate(yarn.put_ups)
    ]
    problem += pulp.lpSum(float(one.price) * count for one, count in packs)
    gains_m = [(one.length_m - 2 * TAIL_M) * count for one, count in packs]
    problem += pulp.lpSum(gains_m) >= need_m - 2 * TAIL_M
    problem.solve(pulp.PULP_CBC_CMD(msg=False, gapRel=0, gapAbs=0))
    return float(pulp.value(problem.objective))


def timed(solve: Callable[[Case], float], case: Case) -> tuple[float, float]:
    """Return the answer and the seconds it took."""
    start = time.perf_counter()
    answer = solve(case)
    return answer, time.perf_counter() - start


def compare(label: str, cases: list[Case]) -> None:
    """Print the median times of both, and the ratio of the sums."""
    ours = [timed(chosen_cost, case) for case in cases]
    theirs = [timed(milp_cost, case) for case in cases]
    agree = all(abs(a - b) < 1e-6 for (a, _), (b, _) in zip(ours, theirs, strict=True))
    our_s, their_s = ([seconds for _, seconds in runs] for runs in (ours, theirs))
    print(
        f"{label:>16}: {statistics.median(our_s) * 1000:8.3f} ms, "
        f"MILP {statistics.median(their_s) * 1000:8.3f} ms, "
        f"ratio {sum(our_s) / sum(their_s):.5f}, costs {'agree' if agree else 'DIFFER'}"
    )


def main() -> None:
    """Compare for a blanket's colour, a large order and a very large one."""
    dice = random.Random(1)
    for most_m in (400, 4000, 30_000):
        compare(f"up to {most_m} m", [random_case(dice, most_m) for _ in range(CASES)])


if __name__ == "__main__":
    main()
