"""How many rows each stripe gets that is worked once, so that together they fill a length."""

from __future__ import annotations

from collections.abc import Iterator, Sequence

from quoting.core.ground.sameness import NEAR


def fitted_rows(parts: Sequence[float], heights: Sequence[float], room: float) -> tuple[int, ...]:
    """Return the rows of each stripe, at least one, that come nearest to a room.

    `parts` are the rows of each stripe in proportion, `heights` the height of one row of each,
    in the unit of `room`. Each stripe ends at the row nearest to where it would end if rows
    could be divided, so that no miss adds up; halves go up.
    """
    level = _level(parts, heights, room)
    return tuple(_whole_rows([max(1.0, level * part) for part in parts], heights))


def _level(parts: Sequence[float], heights: Sequence[float], room: float) -> float:
    """Return by what parts are multiplied, where those that come to less than a row have one."""
    level, weight = 0.0, sum(part * height for part, height in zip(parts, heights, strict=True))
    for stripe in sorted(range(len(parts)), key=parts.__getitem__):
        level = room / weight if weight else 0.0
        if level * parts[stripe] >= 1:
            break
        room -= heights[stripe]
        weight -= parts[stripe] * heights[stripe]
    return level


def _whole_rows(ideal: Sequence[float], heights: Sequence[float]) -> Iterator[int]:
    wanted = done = 0.0
    for rows, height in zip(ideal, heights, strict=True):
        wanted += rows * height
        whole = max(1, int((wanted - done) / height + 0.5 + NEAR))
        done += whole * height
        yield whole
