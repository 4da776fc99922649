"""What the yarn that an order used tells of the weight of its motifs, as so many more weighed."""

from __future__ import annotations

from collections.abc import Iterator
from dataclasses import dataclass, replace

from quoting.core.making.log_lines import LogEntry
from quoting.core.making.yarn_told import YarnTold, colours_by_yarn, yarn_told
from quoting.core.plan.layout_colours import layouts_made
from quoting.core.plan.parts import PartKind
from quoting.core.quote.quote import Quote
from quoting.core.workshop.motifs import MOST_MOTIFS, Motif, WeighedMotifs
from quoting.core.workshop.workshop import Workshop

GRAM_DIGITS = 1
"""Decimals of grams that are taken in."""

MOST_STEP_G = 1000.0
"""What a scale may show at most, as weighed motifs have it."""


@dataclass(frozen=True, slots=True, kw_only=True)
class WeighingTold:
    """Further motifs, weighed by the yarn that they took, of the one that has this name."""

    motif: str
    weighed: WeighedMotifs


def weighings_told(
    quote: Quote, entries: tuple[LogEntry, ...], workshop: Workshop
) -> Iterator[WeighingTold]:
    """Yield what the motifs of an order weighed, where they were made as those on the scale were.

    What was used over what was planned is one ratio for all that is worked in a yarn, joins and
    border too, and as many motifs tell it as the yarn that was told of comes to. It is told while
    the workshop's motif is weighed as it was for the quote: so it cannot be taken in twice.
    """
    motif = _motif_made(quote)
    if motif is None or motif.weighed is None:
        return
    told = yarn_told(quote, entries, colours_by_yarn(quote).get(motif.yarn, ()))
    known = next((each for each in workshop.motifs if each.name == motif.name), None)
    if told is None or known is None or known.weighed != motif.weighed:
        return
    further = _further(motif.weighed, told, quote)
    if further is not None:
        yield WeighingTold(motif=motif.name, weighed=further)


def with_weighings_told(workshop: Workshop, told: tuple[WeighingTold, ...]) -> Workshop:
    """Return a workshop whose motifs are weighed together with those that orders told of."""
    more = {each.motif: each.weighed for each in told}

    def weighed(motif: Motif) -> Motif:
        if motif.weighed is None or motif.name not in more:
            return motif
        return replace(motif, weighed=_together(motif.weighed, more[motif.name]))

    return replace(workshop, motifs=tuple(weighed(motif) for motif in workshop.motifs))


def _motif_made(quote: Quote) -> Motif | None:
    """Return the motif that a blanket is joined of, if all its rounds are worked, in its yarn."""
    layouts, design = layouts_made(quote.plan), quote.order.design
    if not layouts:
        return None
    name = next(worked.fabric.motif for worked in quote.plan.passes if worked.fabric.motif)
    motif = quote.workshop.motif(name)
    rounds = {len(layout.colours) for layout in layouts}
    yarns = {design.source_of(colour).yarn for layout in layouts for colour in layout.colours}
    return motif if rounds == {motif.rounds} and yarns == {motif.yarn} else None


def _further(before: WeighedMotifs, told: YarnTold, quote: Quote) -> WeighedMotifs | None:
    """Return the motifs that tell it with their weight; None where all were too many to weigh.

    They are as unsure as the scale leaves the yarn that was told, and no surer than those before.
    """
    motifs = quote.plan.copies_of(PartKind.MOTIF) * quote.order.quantity
    count = max(1, round(motifs * told.share))
    each_g = told.use.really_m(before.weight_g / before.motifs)
    weight_g = round(count * each_g, GRAM_DIGITS)
    if before.motifs + count > MOST_MOTIFS or not weight_g:
        return None
    step_g = min(MOST_STEP_G, round(weight_g * told.unsure_by, GRAM_DIGITS))
    return replace(
        before,
        motifs=count,
        weight_g=weight_g,
        scale_step_g=max(before.scale_step_g, step_g),
    )


def _together(before: WeighedMotifs, further: WeighedMotifs) -> WeighedMotifs:
    motifs = before.motifs + further.motifs
    weight_g = round(before.weight_g + further.weight_g, GRAM_DIGITS)
    step_g = max(before.scale_step_g, further.scale_step_g)
    return replace(before, motifs=motifs, weight_g=weight_g, scale_step_g=step_g)
