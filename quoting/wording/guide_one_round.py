"""How the last round of all motifs is worked in one: along each row of them and back.

A strand that is never cut goes along three sides of each motif of a row and comes back along the
fourth; the outer side of the first motif of each row is left, so that it can go down to the next
row, and is worked at the end, on the way back to where it began (common practice).
"""

from __future__ import annotations

from collections.abc import Iterator

from quoting.core.plan.passes import Edge
from quoting.core.plan.squares_grid import SquaresGrid
from quoting.wording.rows_and_edges import edge_side
from quoting.wording.speech import Speech

JOINED = (
    "To join, draw the loop on the hook through the space or the stitch opposite, and go on; it "
    "takes no yarn besides."
)


def one_round_sentences(grid: SquaresGrid, speech: Speech) -> Iterator[str]:
    """Yield the way round all motifs, in whole sentences."""
    yield _begun(1, speech)
    yield from _there_and_back(grid, speech)
    if grid.rows > 1:
        yield "Go down to the next row and work it alike; its upper sides go into the row above."
    yield _closed(grid, speech)
    yield from _counted(grid, speech)
    yield JOINED


def joining_row_sentences(number: int, grid: SquaresGrid, speech: Speech) -> Iterator[str]:
    """Yield the way along one row of motifs, numbered from 1 at the top."""
    yield _begun(number, speech)
    yield from _there_and_back(grid, speech)
    if number == grid.rows:
        yield _closed(grid, speech)
    yield from _counted(grid, speech)


def _begun(number: int, speech: Speech) -> str:
    near = edge_side(Edge.START, speech)
    if number == 1:
        return f"Begin at the upper {near} corner of the top row."
    return f"Go down to the upper {near} corner of this row; its upper sides go into the row above."


def _there_and_back(grid: SquaresGrid, speech: Speech) -> Iterator[str]:
    near, far = (edge_side(edge, speech) for edge in (Edge.START, Edge.FAR))
    if grid.columns == 1:
        yield f"Work the upper side of its motif, the {far} side and the lower side."
        return
    yield (
        f"Go along the row: of its first motif work the upper side and the {far} side; of each "
        f"one after it the {near} side, into the motif before it, the upper side and the {far} "
        "side; of the last one the lower side, too."
    )
    yield (
        "Then come back along the lower sides of the others: each finishes its motif, but for the "
        f"{near} side of the first."
    )


def _closed(grid: SquaresGrid, speech: Speech) -> str:
    near = edge_side(Edge.START, speech)
    if grid.rows == 1:
        return f"Close with that {near} side, and a slip stitch where you began."
    return (
        f"Last of all, work the {near} sides of the first motifs, from the lowest row up, and "
        "close with a slip stitch where you began."
    )


def _counted(grid: SquaresGrid, speech: Speech) -> Iterator[str]:
    """Yield that the count of a row has the side in it that is left for the end."""
    if grid.rows > 1:
        near = edge_side(Edge.START, speech)
        yield f"A joining row is counted with the {near} side of its first motif."
