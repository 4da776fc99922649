"""Where the motifs of each layout lie, so that like ones touch only where they must."""

from __future__ import annotations

from collections.abc import Collection, Iterator, Sequence

EVENNESS = (1.0, 0.5, 0.0)
"""From taking turns by share, which mixes best, to taking what most are left of, which parts best.

They are tried in this order until no like motifs touch.
"""

MOST_COMPARED = 10_000
"""Of motifs that touch a like one with all that they might change places with."""


def placed(counts: Sequence[int], columns: int) -> tuple[int, ...]:
    """Return the layout of each motif, row by row, as well mixed as like ones keep apart.

    A layout of more than half of all motifs has to touch itself: it lies evenly among the others.
    """
    common = {layout for layout, count in enumerate(counts) if 2 * count > sum(counts)}
    best: tuple[int, ...] = ()
    for evenness in EVENNESS:
        cells = _in_turn(counts, columns, common, evenness)
        _part(cells, columns, common)
        if not best or touching(cells, columns) < touching(best, columns):
            best = tuple(cells)
        if common or not touching(best, columns):
            break
    return best


def touching(cells: Sequence[int], columns: int) -> int:
    """Return at how many edges like motifs meet."""
    return sum(_like(cells, cell, columns) for cell in range(len(cells))) // 2


def _in_turn(
    counts: Sequence[int], columns: int, common: Collection[int], evenness: float
) -> list[int]:
    """Return motifs laid one by one, each of the layout whose turn it is most.

    Those that its neighbours to the left and above have are out of turn, while there are others.
    """
    left, cells = list(counts), list[int]()
    for cell in range(sum(counts)):
        near = {cells[other] for other in _near(cell, columns, cell)} - set(common)
        there = [layout for layout, count in enumerate(left) if count]
        apart = [layout for layout in there if layout not in near]
        usual = evenness * (1 - cell / sum(counts))
        taken = max(
            apart or there,
            key=lambda layout: (left[layout] - usual * counts[layout], left[layout], -layout),
        )
        left[taken] -= 1
        cells.append(taken)
    return cells


def _part(cells: list[int], columns: int, common: Collection[int]) -> None:
    """Let motifs that touch a like one change places with others, where fewer then touch."""
    met = [
        cell
        for cell, layout in enumerate(cells)
        if layout not in common and _like(cells, cell, columns)
    ]
    if len(met) * len(cells) > MOST_COMPARED:
        return
    for cell in met:
        for other in range(len(cells)):
            before = _like(cells, cell, columns) + _like(cells, other, columns)
            cells[cell], cells[other] = cells[other], cells[cell]
            if _like(cells, cell, columns) + _like(cells, other, columns) < before:
                break
            cells[cell], cells[other] = cells[other], cells[cell]


def _like(cells: Sequence[int], cell: int, columns: int) -> int:
    """Return how many motifs of its layout one touches."""
    return sum(cells[other] == cells[cell] for other in _near(cell, columns, len(cells)))


def _near(cell: int, columns: int, laid: int) -> Iterator[int]:
    """Yield the motifs beside one, of so many that are laid."""
    if cell % columns:
        yield cell - 1
    if cell >= columns:
        yield cell - columns
    if (cell + 1) % columns and cell + 1 < laid:
        yield cell + 1
    if cell + columns < laid:
        yield cell + columns
