"""The working guide as a paper: steps to tick, lengths to measure, where balls and ends are."""

from __future__ import annotations

from collections.abc import Iterator, Mapping
from dataclasses import replace

from quoting.core.estimate.ball_ends import BallEnd
from quoting.core.estimate.estimate import habits_for
from quoting.core.estimate.row_guide import heights_cm
from quoting.core.estimate.strands import Why
from quoting.core.guide.guide import Guide, guide_of
from quoting.core.guide.loose_ends import LooseEnd
from quoting.core.guide.steps import Step
from quoting.core.order.design import AT_THE_EDGE
from quoting.core.plan.passes import Edge, Plan
from quoting.core.plan.squares_grid import SquaresGrid
from quoting.core.quote.fate_of_ends import fate_at_edges, main_fate
from quoting.core.quote.offer import OfferedColour, offer_of
from quoting.core.quote.quote import Quote
from quoting.wording.catalogues import ENGLISH
from quoting.wording.ends import FATES, but_for_words
from quoting.wording.guide_before import before_sentences
from quoting.wording.guide_part_ends import part_ends_listing
from quoting.wording.guide_squares import (
    NO_FIGURES,
    grid_blocks,
    joins_blocks,
    motif_rounds_listing,
    motifs_listing,
)
from quoting.wording.guide_steps import step_sentence
from quoting.wording.guide_yarn import yarn_sentences
from quoting.wording.locales import sheet_of
from quoting.wording.paper import Beside, Block, Facts, Listing, Paper, Picture, SaidFact, Words
from quoting.wording.phrases import capitalized
from quoting.wording.rows_and_edges import edge_name, pass_words, point_words
from quoting.wording.shapes import made_size
from quoting.wording.speech import Speech, speech_of

_ENDED = {
    Why.CUT: "is cut",
    Why.RAN_OUT: "ends, its ball being used up",
    Why.FINISHED: "is fastened off",
}


def guide_paper(quote: Quote, picture: Picture | None = None) -> Paper:
    """Return what the maker of a quote's blankets works from. Errors: as `speech_of`."""
    guide, speech = guide_of(quote), speech_of(quote.workshop)
    colours = offer_of(quote).colours
    title = quote.order.title
    return Paper(
        language=ENGLISH,
        sheet=sheet_of(speech.locale),
        name=f"Working guide – {title}" if title else "Working guide",
        maker=quote.workshop.name,
        title=title or "Working guide",
        heading="Working guide" if title else "",
        blocks=tuple(_blocks(guide, colours, picture, speech)),
    )


def _blocks(
    guide: Guide, colours: tuple[OfferedColour, ...], picture: Picture | None, speech: Speech
) -> Iterator[Block]:
    quote, codes = guide.quote, {colour.name: colour.code for colour in colours}
    before = (
        Facts(facts=tuple(_facts(quote, colours, speech))),
        Words(heading="Before you begin", texts=tuple(before_sentences(quote, speech))),
    )
    yield from before if picture is None else (Beside(columns=((picture,), before)),)
    if quote.plan.grid is not None:
        yield from _of_squares(guide, codes, speech)
    else:
        yield steps_listing(guide, codes, speech)
        yield lengths_listing(guide, speech)
    if guide.used_up:
        yield balls_listing(guide, codes, speech)
    if guide.ends:
        heading = _ends_heading(quote)
        apart = quote.plan.grid is not None
        yield (
            part_ends_listing(guide, heading, speech)
            if apart
            else ends_listing(guide, codes, speech)
        )
    yield Words(texts=("Rest your hands often: short breaks, before they ask for them.",))


def _of_squares(guide: Guide, codes: Mapping[str, str], speech: Speech) -> Iterator[Block]:
    """Yield the motifs, where they lie, how they are joined, and what is worked round them."""
    if guide.motifs:
        yield motif_rounds_listing(guide, speech)
        yield motifs_listing(guide, codes, speech)
    yield from grid_blocks(guide, speech)
    yield from joins_blocks(guide, codes, speech)
    if guide.steps:
        all_border = all(part.worked.in_border for step in guide.steps for part in step.parts)
        steps = steps_listing(guide, codes, speech)
        yield replace(
            steps,
            heading="Border" if all_border else steps.heading,
            heads=("What to work",),
            rows=tuple((_step(step, guide, speech),) for step in guide.steps),
            figures_from=NO_FIGURES,
        )


def _ends_heading(quote: Quote) -> str:
    return f"Ends {FATES[main_fate(quote)].to_do}"


def _facts(quote: Quote, colours: tuple[OfferedColour, ...], speech: Speech) -> Iterator[SaidFact]:
    plan = quote.plan
    yield SaidFact(name="Size", text=made_size(plan, speech))
    if plan.grid is not None:
        yield SaidFact(name="Motifs", text=_grid_words(plan.grid, speech))
    named = ", ".join(colour.name for colour in colours)
    yield SaidFact(name=speech.worded("Colours"), text=named, colours=colours)
    ends = f"{speech.count(quote.estimate.ends, 'end')}{but_for_words(quote, speech)}"
    tail = speech.length(habits_for(plan, quote.order, quote.workshop).tail_cm)
    yield SaidFact(name=capitalized(FATES[main_fate(quote)].to_do), text=f"{ends}, tails of {tail}")


def _grid_words(grid: SquaresGrid, speech: Speech) -> str:
    count, side = speech.number(grid.count), speech.length(grid.side_cm)
    if grid.count == 1:
        return f"{count} of {side}"
    across, down = speech.number(grid.columns), speech.number(grid.rows)
    return f"{count} of {side} each, {across} across and {down} down"


def steps_listing(guide: Guide, codes: Mapping[str, str], speech: Speech) -> Listing:
    """Return the steps, each with a box to tick and the length when it is done."""
    lengths = tuple(heights_cm(guide.quote.plan))
    return Listing(
        heading="Step by step",
        heads=("What to work", _length_head(guide)),
        rows=tuple(
            (
                _step(step, guide, speech),
                speech.length(lengths[step.after - 1]) if lengths[step.after - 1] else "",
            )
            for step in guide.steps
        ),
        figures_from=1,
        ticks=True,
        codes=tuple(_code(step, codes) for step in guide.steps),
    )


def _step(step: Step, guide: Guide, speech: Speech) -> str:
    said = (step_sentence(step, guide, speech), yarn_sentences(step, guide.quote.plan, speech))
    return " ".join(sentence for sentence in said if sentence)


def _code(step: Step, codes: Mapping[str, str]) -> str:
    """Return the colour of a step that has but one."""
    colours = {part.worked.colour for part in step.parts}
    return codes.get(colours.pop(), "") if len(colours) == 1 else ""


def lengths_listing(guide: Guide, speech: Speech) -> Listing:
    """Return how long the blanket is after every so many rows."""
    passes, head = guide.quote.plan.passes, _length_head(guide)
    return Listing(
        heading=f"{head} on the hook",
        heads=("After", head),
        rows=tuple(
            (pass_words(passes[one.at]), speech.length(one.length_cm)) for one in guide.lengths
        ),
        figures_from=1,
    )


def _length_head(guide: Guide) -> str:
    """Return what is measured as the work grows: of what begins in its middle its short side."""
    plan = guide.quote.plan
    if plan.counted is None:
        return "Length"
    return "Short side" if plan.counted.extra else "Width"


def balls_listing(guide: Guide, codes: Mapping[str, str], speech: Speech) -> Listing:
    """Return where each ball that may end is expected to, at the soonest and at the latest."""
    ball = speech.worded("ball")
    return Listing(
        heading=speech.worded("Where balls are used up"),
        heads=(ball.capitalize(), "Is used up"),
        rows=tuple(
            (
                f"{one.colour}, {ball} {speech.number(one.number)}",
                used_up_words(one.end, guide.quote.plan),
            )
            for one in guide.used_up
        ),
        figures_from=NO_FIGURES,
        codes=tuple(codes.get(one.colour, "") for one in guide.used_up),
    )


def used_up_words(end: BallEnd, plan: Plan) -> str:
    """Return where a ball is used up: `in row 61; at the soonest in row 55, ...`."""
    expected, soonest, latest = (
        "" if point is None else point_words(point, plan)
        for point in (end.expected, end.soonest, end.latest)
    )
    if not expected:
        return f"it should last; at the soonest {soonest}"
    if not latest:
        sooner = "" if soonest == expected else f"; at the soonest {soonest}"
        return f"{expected}{sooner}, or it lasts"
    if soonest == latest:
        return expected
    return f"{expected}; at the soonest {soonest}, at the latest {latest}"


def ends_listing(guide: Guide, codes: Mapping[str, str], speech: Speech) -> Listing:
    """Return every end of the first blanket, edge by edge from the chain on, to be ticked."""
    ends = [end for end in guide.ends if end.where.blanket == 0]
    return Listing(
        heading=_ends_heading(guide.quote),
        heads=("Where", "Which"),
        rows=tuple(_end(end, guide.quote, speech) for end in ends),
        figures_from=NO_FIGURES,
        ticks=True,
        codes=tuple(codes.get(end.colour, "") for end in ends),
    )


def _end(end: LooseEnd, quote: Quote, speech: Speech) -> tuple[str, str]:
    worked = quote.plan.passes[end.where.pass_index]
    which = "begins" if end.why is None else speech.worded(_ENDED[end.why])
    inside = end.where.edge is Edge.WITHIN
    where = f"Within {pass_words(worked)}"
    if not inside and not quote.plan.in_rows:
        where = capitalized(pass_words(worked))
    elif not inside:
        where = f"{capitalized(edge_name(end.where.edge, speech))}, {pass_words(worked)}"
    apart = "; weave it in" if inside and fate_at_edges(quote) in AT_THE_EDGE else ""
    return where, f"{end.colour} {which}{apart}"
