"""Skeins: no choice beats the one chosen, of every choice there is, written out in full."""

from __future__ import annotations

import itertools
import math
import random
from collections.abc import Iterator
from decimal import Decimal
from fractions import Fraction

import pytest

from quoting.core.estimate.skeins import SkeinChoice
from quoting.core.workshop.yarns import Yarn
from tests.core.plain_yarn import ball, choose, put_up, yarn

pytestmark = pytest.mark.slow

Ranking = tuple[Fraction, int, int, tuple[int, ...]]


def gain_um(length_m: float, tail_m: float) -> int:
    return round((length_m - 2 * tail_m) * 1_000_000)


def exact(value: float) -> Fraction:
    return Fraction(str(value))


def every(wool: Yarn, target: int, tail_m: float, *, mix: bool) -> Iterator[tuple[int, ...]]:
    """Give the counts (stock, then put-ups, both largest first) of each choice allowed."""
    held, sold = len(wool.stock), wool.put_ups
    gains = [one.pack * gain_um(one.length_m, tail_m) for one in sold]
    most = [-(-target // gain) if gain > 0 else 0 for gain in gains]
    shelves = list(itertools.product((0, 1), repeat=held))
    shops = list(itertools.product(*(range(count + 1) for count in most)))
    if mix:
        yield from (shelf + shop for shelf in shelves for shop in shops)
    else:
        balls = [(one.weight_g, one.length_m) for one in sold]
        for shop in shops:
            if len({one for one, count in zip(balls, shop, strict=True) if count}) == 1:
                yield (0,) * held + shop


def from_one_lot(wool: Yarn) -> Iterator[tuple[int, ...]]:
    for shelf in itertools.product((0, 1), repeat=len(wool.stock)):
        lots = {
            one.lot or str(number)
            for number, (one, taken) in enumerate(zip(wool.stock, shelf, strict=True))
            if taken
        }
        if len(lots) == 1:
            yield shelf + (0,) * len(wool.put_ups)


def things(wool: Yarn, tail_m: float) -> list[tuple[Fraction, int, int, int]]:
    """Return the cost, gain, length and balls of everything there is, as listed."""
    per_gram = min(Fraction(p.price) / (p.pack * exact(p.weight_g)) for p in wool.put_ups)
    lengths = [one.weight_g * wool.metres_per_gram for one in wool.stock]
    return [
        (per_gram * exact(one.weight_g), gain_um(length, tail_m), gain_um(length, 0), 1)
        for one, length in zip(wool.stock, lengths, strict=True)
    ] + [
        (
            Fraction(one.price),
            one.pack * gain_um(one.length_m, tail_m),
            one.pack * gain_um(one.length_m, 0),
            one.pack,
        )
        for one in wool.put_ups
    ]


def is_enough(counts: tuple[int, ...], wool: Yarn, tail_m: float, target: int) -> bool:
    taken = [(x[1], n) for x, n in zip(things(wool, tail_m), counts, strict=True) if n]
    return all(gain > 0 for gain, _ in taken) and sum(g * n for g, n in taken) >= target


def rank(counts: tuple[int, ...], wool: Yarn, tail_m: float) -> Ranking:
    """Cost, length, balls and what is larger, counted out in full."""
    taken = list(zip(things(wool, tail_m), counts, strict=True))
    return (
        sum((one[0] * count for one, count in taken), Fraction(0)),
        sum(one[2] * count for one, count in taken),
        sum(one[3] * count for one, count in taken),
        tuple(-count for count in counts),
    )


def best_by_hand(need_m: float, wool: Yarn, tail_m: float, *, mix: bool) -> Ranking | None:
    target = max(1, math.ceil((need_m - 2 * tail_m - 1e-9) * 1_000_000))
    lots = [c for c in from_one_lot(wool) if is_enough(c, wool, tail_m, target)]
    if lots:
        return min((rank(counts, wool, tail_m) for counts in lots), key=lambda r: r[1:])
    if mix:
        shelves = itertools.product((0, 1), repeat=len(wool.stock))
        held = [shelf + (0,) * len(wool.put_ups) for shelf in shelves]
        enough = [counts for counts in held if is_enough(counts, wool, tail_m, target)]
        if enough:
            return min((rank(counts, wool, tail_m) for counts in enough), key=lambda r: r[1:])
    choices = (
        c for c in every(wool, target, tail_m, mix=mix) if is_enough(c, wool, tail_m, target)
    )
    return min((rank(counts, wool, tail_m) for counts in choices), default=None)


def ranked(choice: SkeinChoice, wool: Yarn, tail_m: float) -> Ranking:
    """Rank a choice; the yarn lists each ball once, largest first."""
    bought = {some.put_up: some.packs for some in choice.bought}
    counts = [int(one in choice.stock) for one in wool.stock]
    counts += [bought.get(one, 0) for one in wool.put_ups]
    return rank(tuple(counts), wool, tail_m)


def random_yarn(dice: random.Random, *, held: int, sold: int) -> Yarn:
    """Make a yarn in which ties are common: few weights, and prices often in proportion."""
    kinds = {}
    for _ in range(dice.randint(1, sold)):
        grams, pack = dice.choice((25, 50, 50, 100)), dice.choice((1, 1, 1, 2, 3))
        length_m = grams * 2 + dice.choice((0, 0, 0, 5, -7.5))
        price = pack * grams * Decimal("0.04") + dice.choice((0, 0, 0, 1, -1)) * Decimal("0.1")
        kinds[grams, length_m, pack] = put_up(grams, length_m, str(price), pack)
    stock = {
        ball(dice.choice((0.1, 10, 25, 40, 50)), dice.choice(("", "A", "B"))): None
        for _ in range(dice.randint(0, held))
    }
    sold = sorted(kinds.values(), key=lambda p: (-p.length_m, -p.weight_g, -p.pack))
    return yarn(*sold, stock=tuple(sorted(stock, key=lambda one: -one.weight_g)))


@pytest.mark.parametrize("mix", [False, True])
@pytest.mark.parametrize("seed", range(6))
def test_no_choice_there_is_beats_the_one_chosen(
    seed: int,
    mix: bool,  # noqa: FBT001 - a parameter
) -> None:
    dice = random.Random(seed)
    for _ in range(250):
        wool, tail_m = random_yarn(dice, held=4, sold=3), dice.choice((0.0, 0.15, 0.3))
        need_m = dice.choice((dice.uniform(0.01, 330), 10 * dice.randint(1, 33) - 2 * tail_m))
        choice = choose(need_m, wool, tail_m=tail_m, mix=mix)
        expected = best_by_hand(need_m, wool, tail_m, mix=mix)
        assert ranked(choice, wool, tail_m) == expected, (need_m, wool, tail_m)
