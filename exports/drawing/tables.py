"""The tables behind the drawing: every strand, and every run of rows, in words and figures."""

from __future__ import annotations

import math
from collections.abc import Iterator, Sequence
from dataclasses import dataclass
from itertools import groupby

from exports.colours import colour_code
from quoting.core.estimate.strands import Strand
from quoting.core.plan.passes import Pass
from quoting.core.quote.quote import Quote
from quoting.wording import Speech, ended_words, in_part, strand_place


@dataclass(frozen=True, slots=True, kw_only=True)
class StrandRow:
    """One strand of the blanket drawn: where it starts and ends, and its yarn, tails included.

    It stands for as many as there are in the same place of `times` parts alike; then `yarn_m` is
    that of each, on average.
    """

    colour: str
    starts: str
    starts_edge: str
    carried: int
    ends: str
    ends_edge: str
    why: str
    yarn_m: float
    yarn: str
    times: int = 1


@dataclass(frozen=True, slots=True, kw_only=True)
class RowsRow:
    """Neighbouring rows or rounds of one colour and stitch, in the order worked.

    Those of a motif are worked `times` over.
    """

    label: str
    colour: str
    code: str
    stitch: str
    passes: int
    height_cm: float
    times: int = 1


def strands_drawn(quote: Quote) -> tuple[Strand, ...]:
    """Return the strands of the blanket that is drawn: the first."""
    return tuple(strand for strand in quote.estimate.strands if strand.starts.blanket == 0)


def colour_codes(quote: Quote) -> dict[str, str]:
    """Return each colour of the design as its yarn's `#rrggbb`."""
    colours = dict.fromkeys(worked.colour for worked in quote.plan.passes)
    return {colour: colour_code(colour, quote) for colour in colours}


def drawing_table(quote: Quote, speech: Speech) -> tuple[StrandRow, ...]:
    """Return every strand of the blanket drawn, in the order they start; those alike are one."""
    alike: dict[tuple[object, ...], list[Strand]] = {}
    for number, strand in enumerate(strands_drawn(quote)):
        is_one = quote.plan.parts[strand.starts.part].count == 1
        alike.setdefault((number,) if is_one else _what(strand), []).append(strand)
    return tuple(_strand_row(quote, strands, speech) for strands in alike.values())


def _what(strand: Strand) -> tuple[object, ...]:
    """Return what is the same of strands in parts that are made several times alike."""
    starts, ends = strand.starts, strand.ends
    places = starts.pass_index, starts.edge, ends.pass_index, ends.edge
    return strand.colour, *places, strand.why, len(strand.carries)


def _strand_row(quote: Quote, strands: Sequence[Strand], speech: Speech) -> StrandRow:
    strand, times = strands[0], len(strands)
    starts, starts_edge = strand_place(quote.plan, strand.starts, speech)
    ends, ends_edge = strand_place(quote.plan, strand.ends, speech)
    yarn_m = math.fsum(each.yarn_m for each in strands) / times
    return StrandRow(
        colour=strand.colour,
        starts=starts,
        starts_edge=starts_edge,
        carried=len(strand.carries),
        ends=ends,
        ends_edge=ends_edge,
        why=ended_words(strand, quote.plan, speech),
        yarn_m=yarn_m,
        yarn=speech.yarn_length(yarn_m),
        times=times,
    )


def rows_table(quote: Quote) -> tuple[RowsRow, ...]:
    """Return the chain, the rows and the rounds by runs of one colour and stitch."""
    return tuple(_runs(quote))


def _runs(quote: Quote) -> Iterator[RowsRow]:
    codes = colour_codes(quote)

    def alike(worked: Pass) -> tuple[int, bool, str, str, str]:
        return worked.part, worked.in_border, worked.work, worked.colour, worked.stitch

    for (*_, colour, stitch), run in groupby(quote.plan.passes, key=alike):
        passes = tuple(run)
        part = quote.plan.part_of(passes[0])
        yield RowsRow(
            label=in_part(passes, quote.plan),
            colour=colour,
            code=codes[colour],
            stitch=stitch,
            passes=len(passes),
            height_cm=sum(worked.height_cm for worked in passes),
            times=part.count,
        )
