"""The steps of a guide as sentences: which rows, in which colours, with how many stitches."""

from __future__ import annotations

from quoting.core.guide.guide import Guide
from quoting.core.guide.steps import Part, Step
from quoting.core.plan.passes import Pass, Plan, Work
from quoting.core.plan.squares.squares_plan import BETWEEN_MOTIFS
from quoting.core.quote.quote import Quote
from quoting.core.workshop.rounds import Counting, Rounds
from quoting.core.workshop.stitches import Stitch
from quoting.wording.foundation import first_stitch_words
from quoting.wording.guide_corners import corner_words, sides_words, spread_words
from quoting.wording.guide_rounds import growth_words, round_stitches
from quoting.wording.phrases import capitalized
from quoting.wording.rows_and_edges import kind_words, pass_words
from quoting.wording.speech import Speech


def rows_words(step: Step, guide: Guide) -> str:
    """Return which rows a step is: `Chain`, `Row 1`, `Rows 2 to 103`, `Border round 1`."""
    first, last = guide.quote.plan.passes[step.at], guide.quote.plan.passes[step.after - 1]
    if first.number == last.number:
        return capitalized(pass_words(first))
    return capitalized(f"{kind_words(first)}s {first.number} to {last.number}")


def step_sentence(step: Step, guide: Guide, speech: Speech) -> str:
    """Return a step's rows, colours and stitches, in one sentence."""
    rows, done = rows_words(step, guide), step_words(step, guide, speech)
    return f"{rows}{', ' if _is_plain(step) else ': '}{done}"


def step_words(step: Step, guide: Guide, speech: Speech) -> str:
    """Return a step without its rows: `oat: 98 hdc`, `teal, rust, one row each, 34 times; ...`."""
    if _is_plain(step):
        return _plain_words(step.parts[0], guide.quote, speech)
    return _repeat_words(step, guide.quote, speech)


def _is_plain(step: Step) -> bool:
    return step.times == 1 and len(step.parts) == 1


def _plain_words(part: Part, quote: Quote, speech: Speech) -> str:
    worked = part.worked
    if worked.work is Work.CHAIN:
        return f"{worked.colour}: chain {speech.number(quote.plan.foundation_chain)}."
    counted = quote.plan.counted
    if worked.grows and counted is not None:
        return f"{worked.colour}: {_round_counts(worked, part.rows, counted, speech)}."
    each = " each" if part.rows > 1 else ""
    details = (f"{stitches_words(worked, speech)}{each}", *stitch_details(worked, quote, speech))
    return f"{worked.colour}: {'; '.join(detail for detail in details if detail)}."


def _round_counts(worked: Pass, rounds: int, counted: Rounds, speech: Speech) -> str:
    """Return the stitches of rounds that grow: `28 dc in round 2, 16 dc more in each after it`."""
    first = round_stitches(worked, counted, speech)
    if rounds == 1:
        return first
    more = growth_words(counted, worked.stitch, speech)
    return f"{first} in round {worked.number}, {more}"


def stitch_details(worked: Pass, quote: Quote, speech: Speech) -> tuple[str, ...]:
    """Return what is said of a row or round besides its stitches."""
    if worked.corner is not None:
        sides = sides_words(worked, speech) if worked.number == 1 else ""
        corner = corner_words(worked.corner, worked.stitch, speech)
        return (sides, _spread(worked, quote.plan, speech), corner)
    if worked.work is Work.ROW and worked.number == 1:
        return (_begun(quote, speech),)
    if worked.in_border:
        return (_spread(worked, quote.plan, speech) or "one in each stitch",)
    return ()


def _spread(worked: Pass, plan: Plan, speech: Speech) -> str:
    """Return how a border round takes up what is inside it, and how that is counted."""
    said = spread_words(worked, speech)
    if not said or worked.number > 1:
        return said
    counted = []
    if plan.counted is not None and plan.counted.counting is Counting.CLUSTERS:
        counted.append("chains counted as stitches")
    if plan.grid is not None and plan.grid.shared_edges:
        counted.append(f"{BETWEEN_MOTIFS} stitches counted at each join")
    return ", ".join((said, *counted))


def _begun(quote: Quote, speech: Speech) -> str:
    """Return how row 1 is begun: `first dc in the 4th chain from the hook, the 3 chains ...`."""
    first = first_stitch_words(quote, speech)
    turn = quote.workshop.turning_chain(quote.plan.rows[0].stitch)
    if not first or not turn.counts:
        return first
    return f"{first}, the {speech.count(turn.chains, 'chain')} before it being the first stitch"


def _repeat_words(step: Step, quote: Quote, speech: Speech) -> str:
    times = f"{speech.number(step.times)} times"
    first, counted = step.parts[0].worked, quote.plan.counted
    if first.grows and counted is not None:
        counts = _round_counts(first, step.rows * step.times, counted, speech)
        return f"{_stripes(step, kind_words(first), speech)}, {times}; {counts}."
    alike = {stitches_words(part.worked, speech) for part in step.parts}
    one = kind_words(step.parts[0].worked)
    if len(alike) > 1:
        stripes = [
            f"{part.worked.colour} {speech.count(part.rows, one)} of "
            f"{stitches_words(part.worked, speech)}"
            for part in step.parts
        ]
        return f"{', '.join(stripes)}, {times}."
    return f"{_stripes(step, one, speech)}, {times}; {alike.pop()} each {one}."


def _stripes(step: Step, one: str, speech: Speech) -> str:
    """Return the colours of a repeat with their rows, which are told once where all are alike."""
    rows = {part.rows for part in step.parts}
    if len(rows) > 1:
        return ", ".join(
            f"{part.worked.colour} {speech.count(part.rows, one)}" for part in step.parts
        )
    colours = ", ".join(part.worked.colour for part in step.parts)
    count = rows.pop()
    return f"{colours}, {f'one {one}' if count == 1 else speech.count(count, one)} each"


def stitches_words(worked: Pass, speech: Speech) -> str:
    """Return how many of which stitch: `98 hdc`; chains are told by themselves."""
    count = sum(count for what, count in worked.stitches.items() if what != Stitch.CH)
    return f"{speech.number(count)} {speech.stitch(worked.stitch)}"
