"""Skeins: however alike the prices, the choice takes few steps, and its optimum is proven."""

from __future__ import annotations

import random
from collections.abc import Callable
from decimal import Decimal
from heapq import heappop

import pytest

from tests.core.plain_yarn import ball, choose, put_up, yarn

pytestmark = pytest.mark.slow

MOST_PICKS = 20_000


@pytest.fixture
def picks(monkeypatch: pytest.MonkeyPatch) -> Callable[[], int]:
    """Count the picks that the search looks at."""
    looked_at = []

    def counted(heap: list[object]) -> object:
        looked_at.append(1)
        return heappop(heap)

    monkeypatch.setattr("quoting.core.estimate.cover.heappop", counted)
    return lambda: len(looked_at)


@pytest.mark.parametrize("sizes", [5, 12])
@pytest.mark.parametrize("need_m", [5_000, 30_000])
def test_balls_of_one_price_a_metre_and_mixed_lots_take_few_steps(
    sizes: int, need_m: float, picks: Callable[[], int]
) -> None:
    dice = random.Random(sizes)
    weights = dice.sample(range(20, 400), sizes)
    sold = [put_up(grams, 2 * grams, str(Decimal("0.046") * grams)) for grams in weights]
    stock = tuple(ball(weight + 0.5) for weight in dice.sample(range(5, 99), 11))
    assert choose(need_m, yarn(*sold, stock=stock), mix=True).bought
    assert 0 < picks() < MOST_PICKS
