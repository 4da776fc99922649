"""The tables behind the drawing: every strand, and every run of rows, in words and figures."""

from __future__ import annotations

from collections.abc import Iterator
from dataclasses import dataclass
from itertools import groupby

from exports.colours import colour_code
from quoting.core.estimate.strands import Point, Strand
from quoting.core.plan.passes import Pass
from quoting.core.quote.quote import Quote
from quoting.wording import Speech, ended_words, passes_label
from quoting.wording.phrases import capitalized
from quoting.wording.rows_and_edges import place_words, point_edge_words


@dataclass(frozen=True, slots=True, kw_only=True)
class StrandRow:
    """One strand of the blanket drawn: where it starts and ends, and its yarn, tails included."""

    colour: str
    starts: str
    starts_edge: str
    carried: int
    ends: str
    ends_edge: str
    why: str
    yarn_m: float
    yarn: str


@dataclass(frozen=True, slots=True, kw_only=True)
class RowsRow:
    """Neighbouring rows or rounds of one colour and stitch, in the order worked."""

    label: str
    colour: str
    code: str
    stitch: str
    passes: int
    height_cm: float


def strands_drawn(quote: Quote) -> tuple[Strand, ...]:
    """Return the strands of the blanket that is drawn: the first."""
    return tuple(strand for strand in quote.estimate.strands if strand.starts.blanket == 0)


def colour_codes(quote: Quote) -> dict[str, str]:
    """Return each colour of the design as its yarn's `#rrggbb`."""
    colours = dict.fromkeys(worked.colour for worked in quote.plan.passes)
    return {colour: colour_code(colour, quote) for colour in colours}


def drawing_table(quote: Quote, speech: Speech) -> tuple[StrandRow, ...]:
    """Return every strand of the blanket drawn, in the order they start."""
    return tuple(_strand_row(quote, strand, speech) for strand in strands_drawn(quote))


def _strand_row(quote: Quote, strand: Strand, speech: Speech) -> StrandRow:
    starts, starts_edge = _place(quote, strand.starts, speech)
    ends, ends_edge = _place(quote, strand.ends, speech)
    return StrandRow(
        colour=strand.colour,
        starts=starts,
        starts_edge=starts_edge,
        carried=len(strand.carries),
        ends=ends,
        ends_edge=ends_edge,
        why=ended_words(strand.why, speech),
        yarn_m=strand.yarn_m,
        yarn=speech.yarn_length(strand.yarn_m),
    )


def _place(quote: Quote, point: Point, speech: Speech) -> tuple[str, str]:
    place = capitalized(place_words(point, quote.plan))
    return place, point_edge_words(point, quote.plan, speech)


def rows_table(quote: Quote) -> tuple[RowsRow, ...]:
    """Return the chain, the rows and the rounds by runs of one colour and stitch."""
    return tuple(_runs(quote))


def _runs(quote: Quote) -> Iterator[RowsRow]:
    codes = colour_codes(quote)

    def alike(worked: Pass) -> tuple[str, str, str]:
        return worked.work, worked.colour, worked.stitch

    for (_, colour, stitch), run in groupby(quote.plan.passes, key=alike):
        passes = tuple(run)
        yield RowsRow(
            label=passes_label(passes),
            colour=colour,
            code=codes[colour],
            stitch=stitch,
            passes=len(passes),
            height_cm=sum(worked.height_cm for worked in passes),
        )
