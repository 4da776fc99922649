"""A blanket as stripes: neighbouring rows that are worked alike with one yarn.

Rounds from a centre are worked alike though each has as many more stitches than the one inside it,
where it is known how they are counted.
"""

from __future__ import annotations

from collections.abc import Hashable, Iterator, Sequence
from dataclasses import dataclass

from quoting.core.estimate.row_guide import Act
from quoting.core.guide.handling import Handling
from quoting.core.plan.passes import Pass, Work


@dataclass(frozen=True, slots=True, kw_only=True)
class Stripe:
    """So many `rows` alike, from the pass at an index on; `worked` is the first of them.

    `begins` is done with the yarn where the first begins, `ends` where the last ends. `grows` says
    that each has as many more stitches than the one before it.
    """

    at: int
    rows: int
    worked: Pass
    begins: Act | None
    ends: Act | None
    grows: bool = False

    @property
    def work(self) -> Hashable:
        """What is the same of two stripes that are worked alike, whatever is done with the yarn.

        Rounds of a border are never alike: each has corners of its own to tell.
        """
        worked = self.worked
        alone = worked.number if worked.in_border or is_begun(worked) else 0
        stitches = () if self.grows else tuple(sorted(worked.stitches.items()))
        kind = worked.work, worked.colour, worked.stitch
        return self.rows, worked.part, *kind, stitches, alone


def is_begun(worked: Pass) -> bool:
    """Return whether a pass is row 1, which is worked into the chain, or round 1 of a body."""
    return worked.in_body and worked.number == 1


def stripes_of(
    passes: Sequence[Pass], handled: Sequence[Handling], *, counted: bool = False
) -> Iterator[Stripe]:
    """Yield the passes as stripes: the chain, row 1 and each round are one of their own.

    Where rounds of the body are `counted`, neighbours of one colour are one stripe.
    """
    first = 0
    for index, (worked, handling) in enumerate(zip(passes, handled, strict=True)):
        after = passes[index + 1] if index + 1 < len(passes) else None
        if after is None or not _alike(worked, after, counted=counted):
            yield Stripe(
                at=first,
                rows=index + 1 - first,
                worked=passes[first],
                begins=handled[first].begins,
                ends=handling.ends,
                grows=counted and worked.grows,
            )
            first = index + 1


def _alike(worked: Pass, after: Pass, *, counted: bool) -> bool:
    """Return whether the row after one is worked as it is; row 1 is worked into the chain.

    Rows of motifs that are joined in one last round are alike, too; needlefuls are each afresh.
    """
    same = (worked.part, worked.colour, worked.stitch) == (after.part, after.colour, after.stitch)
    if not same or is_begun(worked):
        return False
    if worked.grows and after.grows:
        return counted
    in_rows = worked.work is after.work and worked.work in (Work.ROW, Work.SEAM)
    return in_rows and not after.fresh and worked.stitches == after.stitches
