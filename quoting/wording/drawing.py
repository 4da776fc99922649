"""What the drawing says in sentences: its title and its description."""

from __future__ import annotations

from collections.abc import Iterator, Sequence

from quoting.core.estimate.strands import Point, Strand
from quoting.core.plan.layout_colours import LayoutMade, layouts_made
from quoting.core.plan.parts import PartKind
from quoting.core.plan.passes import Pass, Plan, Work
from quoting.core.plan.squares_grid import SquaresGrid
from quoting.core.quote.quote import Quote
from quoting.wording.catalogues import sentence
from quoting.wording.ends import ends_to_do
from quoting.wording.motif_words import LAYOUTS_TOLD
from quoting.wording.rows_and_edges import numbered, passes_label, point_edge_words
from quoting.wording.shapes import made_size
from quoting.wording.speech import FILE_SPEECH, Speech

_TITLE = sentence("{title}, drawn to scale")
_IN_ROWS = sentence("{size}, row 1 at the bottom.")
_IN_ROUNDS = sentence("{size}, round 1 in the middle.")
_LAYOUT = sentence("Layout {number}: {colours}")
_BANDS = {
    (Work.ROW, False): (
        sentence("Row {first} {colour}"),
        sentence("Rows {first}–{last} {colour}"),
    ),
    (Work.ROUND, False): (
        sentence("Round {first} {colour}"),
        sentence("Rounds {first}–{last} {colour}"),
    ),
    (Work.ROUND, True): (
        sentence("Border round {first} {colour}"),
        sentence("Border rounds {first}–{last} {colour}"),
    ),
}
"""For one pass and for several: what kind of pass, and whether in the border."""
_ONE_OF_SEVERAL = sentence("This is one of {blankets} blankets.")


def drawing_title(quote: Quote, speech: Speech = FILE_SPEECH) -> str:
    """Return the drawing's title."""
    return title_of_drawing(quote.order.title, speech)


def title_of_drawing(title: str, speech: Speech = FILE_SPEECH) -> str:
    """Return the title of the drawing of an order that is titled so."""
    return speech.worded(_TITLE).format(title=title)


def drawing_description(quote: Quote, strands: Sequence[Strand], speech: Speech) -> str:
    """Return in sentences what the drawing shows of one blanket, and of its strands if any."""
    told = _strands(quote, strands, speech) if strands else ()
    return " ".join([*_blanket(quote, speech), *told])


def band_name(passes: Sequence[Pass], speech: Speech) -> str:
    """Return what neighbouring passes of one colour are called: `Row 1 oat`, `Rows 2–4 teal`."""
    first, last = passes[0], passes[-1]
    one, several = _BANDS[first.work, first.in_border]
    text = speech.worded(one if first.number == last.number else several)
    return text.format(first=first.number, last=last.number, colour=first.colour)


def layout_name(layout: LayoutMade, speech: Speech) -> str:
    """Return what a layout of motifs is called, its colours from the centre outwards."""
    text = speech.worded(_LAYOUT)
    return text.format(number=layout.number, colours=", ".join(layout.banded))


def strand_place(plan: Plan, point: Point, speech: Speech) -> tuple[str, str]:
    """Return in which row a strand starts or ends, and where along it, for the maker's table."""
    worked = plan.passes[point.pass_index]
    where = in_part((worked,), plan)
    return where, point_edge_words(point, plan, speech)


def in_part(passes: Sequence[Pass], plan: Plan) -> str:
    """Return what neighbouring passes are called, with the layout or the seams that they are of.

    Seams alike go by their numbers among all: `Seams 8–17`, `Seams 1–7, needlefuls 1–5`.
    """
    first, last = passes[0], passes[-1]
    part, label = plan.part_of(first), passes_label(passes)
    if part.kind is PartKind.EDGING:
        return "Edging of a motif"
    if part.kind is PartKind.SEAM and part.at_once:
        seams = numbered("Seam", *(plan.number_of(first.part, at) for at in (0, part.count - 1)))
        needlefuls = numbered("needleful", first.number, last.number)
        return f"{seams}, {needlefuls}" if first.fresh else seams
    if part.layout is None:
        return label
    return f"Layout {part.layout + 1}, {label[:1].lower()}{label[1:]}"


def _blanket(quote: Quote, speech: Speech) -> Iterator[str]:
    plan, blankets = quote.plan, quote.order.quantity
    if plan.grid is None:
        yield from _in_one_piece(quote, speech)
    else:
        yield from _motifs(plan, plan.grid, speech)
    if plan.rounds:
        yield speech.counted(len(plan.rounds), "Border: {n} round.", "Border: {n} rounds.")
    if blankets > 1:
        yield speech.worded(_ONE_OF_SEVERAL).format(blankets=speech.number(blankets))


def _in_one_piece(quote: Quote, speech: Speech) -> Iterator[str]:
    plan = quote.plan
    first = _IN_ROWS if plan.in_rows else _IN_ROUNDS
    size = made_size(plan, speech)
    yield speech.worded(first).format(size=size)
    yield _passes_by_colour(plan, speech)


def _motifs(plan: Plan, grid: SquaresGrid, speech: Speech) -> Iterator[str]:
    yield speech.counted(
        grid.count,
        "{size}, {n} motif.",
        "{size}, {n} motifs, {columns} across and {rows} down.",
        size=speech.size(plan.width_cm, plan.height_cm),
        columns=speech.number(grid.columns),
        rows=speech.number(grid.rows),
    )
    layouts = layouts_made(plan)
    if len(layouts) > LAYOUTS_TOLD:
        colours = dict.fromkeys(colour for layout in layouts for colour in layout.colours)
        yield speech.counted(
            len(layouts),
            "{n} layout: {colours}.",
            "{n} layouts: {colours}.",
            colours=", ".join(colours),
        )
        return
    for layout in layouts:
        yield speech.counted(
            layout.count,
            "{n} motif from the centre outwards: {colours}.",
            "{n} motifs from the centre outwards: {colours}.",
            colours=", ".join(layout.banded),
        )


def _passes_by_colour(plan: Plan, speech: Speech) -> str:
    colours = ", ".join(
        f"{colour} {speech.number(rows)}" for colour, rows in plan.rows_by_colour.items()
    )
    count = len(plan.rows)
    if not plan.in_rows:
        return speech.counted(
            count, "{n} round: {colours}.", "{n} rounds: {colours}.", colours=colours
        )
    return speech.counted(count, "{n} row: {colours}.", "{n} rows: {colours}.", colours=colours)


def _strands(quote: Quote, strands: Sequence[Strand], speech: Speech) -> Iterator[str]:
    """Yield what only the maker is told, in her own English."""
    to_do = ends_to_do(quote, speech)
    yield f"It has {speech.count(2 * len(strands), 'end')} {to_do}."
    if quote.plan.grid is None:
        carries = sum(len(strand.carries) for strand in strands)
        yield f"A yarn is carried up an edge {speech.count(carries, 'time')}."
