"""How far an order is and how far its yarn lasts, in sentences."""

from __future__ import annotations

from collections import Counter
from collections.abc import Iterable
from decimal import Decimal

from quoting.core.estimate.skeins import SkeinChoice
from quoting.core.making.made_rows import MadeRows
from quoting.core.making.progress import Progress
from quoting.core.making.yarn_left import YarnLeft
from quoting.core.order.design import EndsBecome
from quoting.core.plan.passes import Plan
from quoting.wording.ends import FATES
from quoting.wording.phrases import listed
from quoting.wording.speech import Speech
from quoting.wording.ticks import (
    colour_ticks,
    counted_ticks,
    log_name,
    log_names,
    tick_kind,
    tick_name,
    ticks_words,
)


def rows_done_words(progress: Progress, plan: Plan, speech: Speech) -> str:
    """Return how much is done: `31 of 158 rows and rounds done, 20%`."""
    done = speech.number(progress.rows_done)
    rows = speech.count(progress.rows, *counted_ticks(plan))
    return f"{done} of {rows} done, {speech.percent(progress.share, 0)}"


def next_row_words(rows: MadeRows, done: int, speech: Speech) -> str:
    """Return what comes next: `Next: row 32 in oat, hdc`; of several blankets, which of them."""
    if done >= rows.all:
        return f"All {ticks_words(rows.plan)} are done."
    place = rows.place_of(done + 1)
    works = [rows.passes[index] for index in rows.worked_with(done + 1)]
    worked = works[-1]
    blanket = f" of blanket {place.blanket + 1}" if rows.blankets > 1 else ""
    name = f"{tick_name(rows, done + 1, of_all=True)}{blanket}"
    if not rows.plan.part_of(worked).at_once:
        return f"Next: {name}, {worked.colour}, {speech.stitch(worked.stitch)}"
    return f"Next: {name}, {', '.join(dict.fromkeys(each.colour for each in works))}"


def rows_again_words(rows: MadeRows, first: int, last: int, speech: Speech) -> str:
    """Return which rows were worked once more, after they were pulled back."""
    return f"{log_names(rows, first, last, speech)} worked again"


def projected_words(projected: Iterable[int], rows: MadeRows, speech: Speech) -> str:
    """Return that rows were not written down, and how they are reckoned; nothing of none."""
    places = (rows.passes[rows.place_of(row).pass_index] for row in projected)
    kinds = Counter(tick_kind(worked, rows.plan) for worked in places)
    if not kinds:
        return ""
    said = listed([speech.count(count, kind) for kind, count in kinds.items()], "and")
    one = kinds.total() == 1
    was, are = ("was", "it is") if one else ("were", "they are")
    return f"{said} {was} not written down: {are} reckoned at the pace of the others."


def ends_done_words(progress: Progress, become: EndsBecome, speech: Speech) -> str:
    """Return how many ends are done with, of those that were expected, by what becomes of them."""
    done, ends = speech.number(progress.ends_woven), speech.count(progress.ends, "end")
    return f"{done} of {ends} {FATES[become].done}."


def yarn_left_words(left: YarnLeft, plan: Plan, speech: Speech) -> str:
    """Return how far the yarn of a colour lasts, and what to buy where that is not enough."""
    one, several = colour_ticks(left.colour, plan)
    rows = speech.count(left.rows_to_come, one, several)
    if left.is_enough:
        return _enough(left, rows, several, speech)
    buy = balls_words(left.to_buy, speech)
    of_lot = f" of lot {left.lot}" if left.lot else ""
    if left.rows_lasting < left.rows_to_come:
        can = speech.count(left.rows_lasting, f"more {one}", f"more {several}")
        need = speech.number(left.rows_to_come)
        return f"You can work {can} in {left.colour}; you need {need}: buy {buy}{of_lot} now."
    return (
        f"The {left.colour} in hand should do for the {rows} to come, but only just: buy "
        f"{buy}{of_lot} to be sure."
    )


def _enough(left: YarnLeft, rows: str, several: str, speech: Speech) -> str:
    over = speech.yarn_length(max(0.0, left.in_hand_m - left.needed_m))
    if not left.rows_to_come:
        return f"All {several} in {left.colour} are done; about {over} are left over."
    return f"The {left.colour} in hand does for the {rows} to come; about {over} will be left."


def yarn_ratio_words(left: YarnLeft, rows: MadeRows, speech: Speech) -> str:
    """Return how a colour's yarn goes against the plan; nothing where it was not told yet."""
    if not left.told_rows or not left.use.planned_m:
        return ""
    one, _ = colour_ticks(left.colour, rows.plan)
    real, planned = (speech.yarn_length(m, 2) for m in (left.row_really_m, left.row_planned_m))
    upto = f"up to {log_name(rows, left.told_rows, speech)}"
    if speech.trimmed(left.ratio, 2) == speech.trimmed(1, 2):
        return f"As planned {upto}: {real} a {one}."
    more = speech.percent(abs(left.ratio - 1), 0)
    way = "more" if left.ratio > 1 else "less"
    return f"It takes {more} {way} than planned {upto}: {real} a {one} instead of {planned}."


def balls_words(choice: SkeinChoice, speech: Speech) -> str:
    """Return whole balls as they are bought: `1 ball of 100 g`, `2 packs of 10 × 50 g`."""
    said = []
    for some in choice.bought:
        weight = speech.weight(some.put_up.weight_g)
        if some.put_up.pack > 1:
            packs = speech.count(some.packs, "pack")
            said.append(f"{packs} of {some.put_up.pack} × {weight}")
        else:
            one, many = speech.worded("ball"), speech.worded("balls")
            said.append(f"{speech.count(some.balls, one, many)} of {weight}")
    return listed(said, "and")


def off_words(amount: str, more: Decimal | float, share: float | None, speech: Speech) -> str:
    """Return how far off an estimate was: `1 h 48 min less, 17%`, `as estimated`.

    `amount` is how far, as it is told; `share` the part of the estimate that this is, if any.
    """
    if not more:
        return "as estimated"
    said = f"{amount} {'more' if more > 0 else 'less'}"
    return said if share is None else f"{said}, {speech.percent(abs(share), 0)}"
