"""How long one motif took, beside what was expected of it."""

from __future__ import annotations

from dataclasses import dataclass
from decimal import Decimal

from quoting.core.estimate.chores import Part
from quoting.core.estimate.in_motifs import share_of_stitching, stitches_in_motifs
from quoting.core.ground.money import MINUTES_PER_HOUR
from quoting.core.making.log_lines import Doing
from quoting.core.making.outcome import Outcome
from quoting.core.making.parts_taken import parts_taken
from quoting.core.plan.parts import PartKind
from quoting.core.quote.quote import Quote


@dataclass(frozen=True, slots=True, kw_only=True)
class MotifMinutes:
    """Minutes of one motif, pulling back with them; `took` is None where it is not known."""

    expected: float
    took: float | None

    @property
    def difference(self) -> float | None:
        """How many minutes more than expected it took."""
        return None if self.took is None else self.took - self.expected

    @property
    def share(self) -> float | None:
        """What part of the minutes expected the difference is; None where none were, too."""
        return self.took / self.expected - 1 if self.took is not None and self.expected else None


def motif_minutes(quote: Quote, outcome: Outcome) -> MotifMinutes | None:
    """Return the minutes of a motif; None of a blanket that is not joined of motifs.

    They are its part of the stitching, as the estimate shares it among motifs, joins and border.
    """
    hours = quote.estimate.hours
    motifs = quote.plan.copies_of(PartKind.MOTIF) * quote.order.quantity
    if not motifs:
        return None
    inside = stitches_in_motifs(quote.plan, quote.order, quote.workshop)
    of_motif = share_of_stitching(hours, inside, quote.workshop) * MINUTES_PER_HOUR / motifs
    at_hook = next(part.took for part in outcome.work if part.doing is Doing.AT_THE_HOOK)
    return MotifMinutes(
        expected=float(hours.of(Part.STITCHING)) * of_motif,
        took=None if at_hook is None else float(_stitching(quote, at_hook)) * of_motif,
    )


def _stitching(quote: Quote, at_hook: Decimal) -> Decimal:
    return parts_taken(quote.estimate.hours, Doing.AT_THE_HOOK, at_hook)[Part.STITCHING]
