"""Skeins together: of every purchase there is and every way to share it, none costs less."""

from __future__ import annotations

import itertools
import random
from collections import defaultdict
from collections.abc import Iterator, Sequence
from decimal import Decimal

import pytest

from quoting.core.estimate.shared_skeins import Need, SharedSkeins
from quoting.core.workshop.yarns import Yarn
from tests.core.needs import apart, need, together
from tests.core.plain_yarn import ball, put_up, yarn

pytestmark = pytest.mark.slow

HAIR = 1e-6


def random_yarn(dice: random.Random) -> Yarn:
    kinds = {}
    for _ in range(dice.randint(1, 3)):
        grams, pack = dice.choice((50, 50, 100)), dice.choice((1, 1, 2))
        price = pack * grams * Decimal("0.04") + dice.choice((0, 0, 1, -1)) * Decimal("0.1")
        kinds[grams, pack] = put_up(grams, grams * 2.0, str(price), pack)
    stock = [
        ball(dice.choice((10, 25, 40, 60, 90)), dice.choice(("A", "A", "B")))
        for _ in range(dice.randint(0, 4))
    ]
    return yarn(*kinds.values(), stock=tuple(stock))


def random_needs(dice: random.Random, tail_m: float) -> list[Need]:
    lengths = (dice.choice((dice.uniform(1, 230), 10.0 * dice.randint(1, 20))) for _ in range(3))
    return [need(one, tail_m=tail_m, mix=dice.random() < 0.25) for one in lengths]


def lots_of(wool: Yarn, tail_m: float) -> dict[str, float]:
    """Return what the balls of each lot bring, each its length less two tails."""
    lots: dict[str, float] = defaultdict(float)
    for one in wool.stock:
        lots[one.lot] += max(0.0, wool.length_of(one) - 2 * tail_m)
    return {lot: gain for lot, gain in lots.items() if gain}


def purchases(wool: Yarn, needs: Sequence[Need], tail_m: float) -> Iterator[tuple[int, ...]]:
    """Give every purchase, as how many packs of each way to buy the yarn."""
    all_m = sum(one.need_m for one in needs)
    counts = [range(int(all_m // (p.pack * (p.length_m - 2 * tail_m))) + 2) for p in wool.put_ups]
    yield from itertools.product(*counts)


def serves(counts: Sequence[int], wool: Yarn, needs: Sequence[Need], tail_m: float) -> bool:
    """Try every way to give each whole need a lot, or a kind of ball."""
    rooms: dict[object, float] = dict(lots_of(wool, tail_m))
    for sold, count in zip(wool.put_ups, counts, strict=True):
        if count:
            gain = count * sold.pack * (sold.length_m - 2 * tail_m)
            rooms[sold.weight_g] = rooms.get(sold.weight_g, 0.0) + gain
    whole = [one.need_m for one in needs if not one.mix_lots]
    everything = sum(one.need_m for one in needs)
    if len(whole) < len(needs) and sum(rooms.values()) + 2 * tail_m < everything - HAIR:
        return False
    for ways in itertools.product(rooms, repeat=len(whole)):
        used: dict[object, float] = defaultdict(float)
        for room, length in zip(ways, whole, strict=True):
            used[room] += length
        if all(length <= rooms[room] + 2 * tail_m + HAIR for room, length in used.items()):
            return True
    return False


def cheapest(wool: Yarn, needs: Sequence[Need], tail_m: float) -> Decimal:
    costs = (
        sum((p.price * n for p, n in zip(wool.put_ups, counts, strict=True)), Decimal(0))
        for counts in sorted(
            purchases(wool, needs, tail_m),
            key=lambda counts: sum(p.price * n for p, n in zip(wool.put_ups, counts, strict=True)),
        )
        if serves(counts, wool, needs, tail_m)
    )
    return next(costs)


def check_covered(shared: SharedSkeins, wool: Yarn, needs: Sequence[Need]) -> None:
    """Check that each need is served, each lot and ball used once, and no whole need is cut."""
    got: dict[int, list[float]] = defaultdict(list)
    held: dict[str, float] = defaultdict(float)
    for one in wool.stock:
        held[one.lot] += wool.length_of(one)
    for lot in shared.held:
        assert sum(some.metres for some in lot.portions) <= held[lot.lot] + HAIR
    for new in shared.new:
        length = sum(one.balls * one.put_up.length_m for one in new.bought)
        assert sum(some.metres for some in new.portions) <= length + HAIR
        assert 1 <= new.needed <= new.balls
    for line in (*shared.held, *shared.new):
        for some in line.portions:
            got[some.need].append(some.metres)
    for number, one in enumerate(needs):
        assert sum(got[number]) >= one.need_m - HAIR
        assert one.mix_lots or len(got[number]) == 1


@pytest.mark.parametrize("seed", range(8))
def test_no_purchase_there_is_costs_less(seed: int) -> None:
    dice = random.Random(seed)
    for _ in range(60):
        tail_m = dice.choice((0.15, 0.3))
        wool, needs = random_yarn(dice), random_needs(dice, tail_m)
        shared, singly = together(needs, wool), apart(needs, wool)
        check_covered(shared, wool, needs)
        check_covered(singly, wool, needs)
        expected = min(cheapest(wool, needs, tail_m), singly.cost)
        assert shared.cost == expected, (needs, wool)
        if shared.cost != singly.cost:
            assert shared.cost < singly.cost


@pytest.mark.parametrize("seed", range(4))
def test_in_whatever_order_they_stand_the_cost_is_the_same_or_each_one_s_own(seed: int) -> None:
    dice = random.Random(seed)
    for _ in range(60):
        wool, needs = random_yarn(dice), random_needs(dice, 0.15)
        costs = {together(some, wool).cost for some in itertools.permutations(needs)}
        alone = min(apart(some, wool).cost for some in itertools.permutations(needs))
        assert len(costs) == 1 or min(costs) == alone
