"""Every end that is to be woven in: of which strand it is, and where it hangs."""

from __future__ import annotations

from collections.abc import Iterator, Sequence
from dataclasses import dataclass

from quoting.core.estimate.strands import Point, Strand, Why
from quoting.core.plan.passes import Edge

_EDGES = tuple(Edge)


@dataclass(frozen=True, slots=True, kw_only=True)
class LooseEnd:
    """One end: where it hangs, and `why` its strand ended there; None where it began."""

    colour: str
    where: Point
    why: Why | None


def loose_ends(strands: Sequence[Strand]) -> tuple[LooseEnd, ...]:
    """Return two ends for each strand, edge by edge of each blanket, from the chain on."""
    return tuple(sorted(_ends(strands), key=_as_found))


def _ends(strands: Sequence[Strand]) -> Iterator[LooseEnd]:
    for strand in strands:
        yield LooseEnd(colour=strand.colour, where=strand.starts, why=None)
        yield LooseEnd(colour=strand.colour, where=strand.ends, why=strand.why)


def _as_found(end: LooseEnd) -> tuple[int, int, int]:
    return end.where.blanket, _EDGES.index(end.where.edge), end.where.pass_index
