"""Lengths put into rooms, none of them cut in two: needs of one dye lot into lots and purchases.

Every way is gone through, the longest length first, the rooms as they are listed; what is left of
the rooms after some lengths tells all that matters for the others, so nothing is tried twice. It
ends with the first way that fits, with the last there is, or after so many steps.
"""

from __future__ import annotations

from collections.abc import Sequence

MOST_TRIED = 5_000
"""Lengths put somewhere, at the most."""

Rooms = tuple[int, ...]


def fit(lengths: Sequence[int], rooms: Sequence[int]) -> tuple[int, ...] | None:
    """Return the room of each length, earlier rooms first; None where no way was found."""
    by_length = sorted(range(len(lengths)), key=lambda number: -lengths[number])
    waiting: list[tuple[Rooms, tuple[int, ...]]] = [(tuple(rooms), ())]
    seen: set[tuple[int, Rooms]] = set()
    for _ in range(MOST_TRIED):
        if not waiting:
            return None
        left, chosen = waiting.pop()
        if len(chosen) == len(lengths):
            return tuple(room for _, room in sorted(zip(by_length, chosen, strict=True)))
        if (len(chosen), left) not in seen:
            seen.add((len(chosen), left))
            length = lengths[by_length[len(chosen)]]
            ways = [(_less(left, room, length), (*chosen, room)) for room in _wide(left, length)]
            waiting += reversed(ways)
    return None


def most_held(lengths: Sequence[int], rooms: Sequence[int]) -> int:
    """Return the most that the rooms hold of some lengths; the others are left out."""
    ways: set[Rooms] = {tuple(rooms)}
    for length in sorted(lengths, reverse=True):
        ways |= {_less(left, room, length) for left in ways for room in _wide(left, length)}
        if len(ways) > MOST_TRIED:
            ways = set(sorted(ways, key=sum)[: MOST_TRIED // 10])
    return sum(rooms) - min(map(sum, ways))


def _wide(rooms: Rooms, length: int) -> list[int]:
    return [number for number, room in enumerate(rooms) if room >= length]


def _less(rooms: Rooms, number: int, length: int) -> Rooms:
    return (*rooms[:number], rooms[number] - length, *rooms[number + 1 :])
