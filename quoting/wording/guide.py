"""The working guide as a paper: steps to tick, lengths to measure, where balls and ends are."""

from __future__ import annotations

from collections.abc import Iterator, Mapping

from quoting.core.estimate.row_guide import heights_cm
from quoting.core.estimate.strands import Point
from quoting.core.guide.guide import Guide, guide_of
from quoting.core.guide.loose_ends import LooseEnd
from quoting.core.guide.steps import Step
from quoting.core.plan.passes import Plan
from quoting.core.quote.offer import OfferedColour, offer_of
from quoting.core.quote.quote import Quote
from quoting.wording.catalogues import ENGLISH
from quoting.wording.guide_before import before_sentences
from quoting.wording.guide_steps import rows_words, step_words
from quoting.wording.guide_yarn import yarn_sentences
from quoting.wording.paper import Beside, Block, Facts, Listing, Paper, Picture, SaidFact, Words
from quoting.wording.phrases import capitalized
from quoting.wording.rows_and_edges import edge_words, pass_words, point_words
from quoting.wording.speech import Speech, speech_of
from quoting.wording.trade_words import ended_words

NO_FIGURES = 99
"""After all columns."""

IT_LASTS = "it lasts"


def guide_paper(quote: Quote, picture: Picture | None = None) -> Paper:
    """Return what the maker of a quote's blankets works from. Errors: as `speech_of`."""
    guide, speech = guide_of(quote), speech_of(quote.workshop)
    colours = offer_of(quote).colours
    title = quote.order.title
    return Paper(
        language=ENGLISH,
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
    yield steps_listing(guide, codes, speech)
    yield lengths_listing(guide, speech)
    if guide.used_up:
        yield balls_listing(guide, codes, speech)
    if guide.ends:
        yield ends_listing(guide, codes, speech)
    yield Words(texts=("Rest your hands often: short breaks, before they ask for them.",))


def _facts(quote: Quote, colours: tuple[OfferedColour, ...], speech: Speech) -> Iterator[SaidFact]:
    plan, habits = quote.plan, quote.workshop.habits
    yield SaidFact(name="Size", text=speech.size(plan.width_cm, plan.height_cm))
    named = ", ".join(colour.name for colour in colours)
    yield SaidFact(name=speech.worded("Colours"), text=named, colours=colours)
    ends = speech.count(quote.estimate.ends, "end")
    yield SaidFact(name="To weave in", text=f"{ends}, tails of {speech.length(habits.tail_cm)}")


def steps_listing(guide: Guide, codes: Mapping[str, str], speech: Speech) -> Listing:
    """Return the steps, each with a box to tick and the length when it is done."""
    lengths = tuple(heights_cm(guide.quote.plan))
    return Listing(
        heading="Step by step",
        heads=("rows", "what to work", "what to do with the yarn", "length then"),
        rows=tuple(
            (
                rows_words(step, guide),
                step_words(step, guide, speech),
                yarn_sentences(step, speech),
                speech.length(lengths[step.after - 1]) if lengths[step.after - 1] else "",
            )
            for step in guide.steps
        ),
        figures_from=3,
        ticks=True,
        codes=tuple(_code(step, codes) for step in guide.steps),
    )


def _code(step: Step, codes: Mapping[str, str]) -> str:
    """Return the colour of a step that has but one."""
    colours = {part.worked.colour for part in step.parts}
    return codes.get(colours.pop(), "") if len(colours) == 1 else ""


def lengths_listing(guide: Guide, speech: Speech) -> Listing:
    """Return how long the blanket is after every so many rows."""
    passes = guide.quote.plan.passes
    return Listing(
        heading="Length on the hook",
        heads=("after", "length"),
        rows=tuple(
            (pass_words(passes[one.at]), speech.length(one.length_cm)) for one in guide.lengths
        ),
        figures_from=1,
    )


def balls_listing(guide: Guide, codes: Mapping[str, str], speech: Speech) -> Listing:
    """Return where each ball that may end is expected to, at the soonest and at the latest."""
    plan, ball = guide.quote.plan, speech.worded("ball")
    return Listing(
        heading=speech.worded("Where balls are used up"),
        heads=(ball, "expected", "at the soonest", "at the latest"),
        rows=tuple(
            (
                f"{one.colour}, {ball} {speech.number(one.number)}",
                *(_point(p, plan) for p in (one.end.expected, one.end.soonest, one.end.latest)),
            )
            for one in guide.used_up
        ),
        figures_from=NO_FIGURES,
        codes=tuple(codes.get(one.colour, "") for one in guide.used_up),
    )


def _point(point: Point | None, plan: Plan) -> str:
    return IT_LASTS if point is None else point_words(point, plan)


def ends_listing(guide: Guide, codes: Mapping[str, str], speech: Speech) -> Listing:
    """Return every end of the first blanket, edge by edge from the chain on, to be ticked."""
    ends = [end for end in guide.ends if end.where.blanket == 0]
    return Listing(
        heading="Ends to weave in",
        heads=("where", "of", "yarn", "which"),
        rows=tuple(_end(end, guide.quote.plan, speech) for end in ends),
        figures_from=NO_FIGURES,
        ticks=True,
        codes=tuple(codes.get(end.colour, "") for end in ends),
    )


def _end(end: LooseEnd, plan: Plan, speech: Speech) -> tuple[str, ...]:
    worked = plan.passes[end.where.pass_index]
    where = capitalized(edge_words(end.where.edge, worked.work, speech).removeprefix("the "))
    which = "begins" if end.why is None else ended_words(end.why, speech)
    return where, pass_words(worked), end.colour, which
