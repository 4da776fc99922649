"""What an order took where its log tells all of it, without planning the order anew.

Of very many orders that takes long, and is wanted only where the log leaves rows out. As far as
it goes it is the same as `outcome_of`, which a test holds.
"""

from __future__ import annotations

import math
from collections.abc import Sequence
from decimal import Decimal

from quoting.core.ground.money import exact, round_hours, round_money
from quoting.core.making.log_lines import Doing, LogEntry, Session, YarnTaken, YarnUsed
from quoting.core.making.outcome import ColourOutcome, Outcome, WorkOutcome
from quoting.core.making.stated import Stated, YarnStated
from quoting.core.making.told import told

Taken = Sequence[YarnTaken]


def plain_outcome(stated: Stated, entries: tuple[LogEntry, ...]) -> Outcome | None:
    """Return what a finished order took; None where only a plan of its rows can tell."""
    sessions, used = told(entries, Session), told(entries, YarnUsed)
    taken = told(entries, YarnTaken)
    if not (_all_told(stated, sessions) and _yarn_told(stated, used, taken)):
        return None
    return Outcome(
        work=tuple(_work(stated, sessions, doing) for doing in Doing),
        colours=tuple(_colour(stated, yarn, used, taken) for yarn in stated.yarn),
        currency=stated.currency,
        revenue=stated.total - stated.tax - stated.fees,
        other_costs=stated.other_costs,
        overhead_per_hour=stated.overhead_per_hour,
        expected_hours=stated.all_hours,
        low_hours=stated.low_hours,
        high_hours=stated.high_hours,
        earned_expected=stated.earned,
    )


def _all_told(stated: Stated, sessions: Sequence[Session]) -> bool:
    """Return whether what sessions at the hook tell needs nothing more: no rows, or all of them."""
    hooked = [session for session in sessions if session.doing is Doing.AT_THE_HOOK]
    if not all(session.rows for session in hooked):
        return True
    done = 0
    for first, last in sorted((s.first_row or 1, s.last_row or 0) for s in hooked):
        if first > done + 1:
            return False
        done = max(done, last)
    return not hooked or done >= stated.rows


def _yarn_told(stated: Stated, used: Sequence[YarnUsed], taken: Taken) -> bool:
    """Return whether every colour was told to its last row, or never, and its cost throughout."""
    known = {yarn.colour: yarn for yarn in stated.yarn}
    named = {line.colour for line in used} | {line.colour for line in taken}
    if not named <= set(known):
        return False
    told_of = {line.colour for line in used}
    ended = {line.colour for line in used if line.rows >= known[line.colour].last_row}
    if told_of != ended:
        return False
    priced = [line for line in taken if line.cost is not None]
    if priced and stated.by_the_gram is None:
        return False
    mixed = {line.colour for line in taken if line.cost is None}
    return not mixed & {line.colour for line in priced}


def _work(stated: Stated, sessions: Sequence[Session], doing: Doing) -> WorkOutcome:
    minutes = [session.minutes for session in sessions if session.doing is doing]
    return WorkOutcome(
        doing=doing,
        expected=sum((stated.hours[part] for part in doing.parts), Decimal(0)),
        took=round_hours(math.fsum(minutes)) if minutes else None,
    )


def _colour(
    stated: Stated, yarn: YarnStated, used: Sequence[YarnUsed], taken: Taken
) -> ColourOutcome:
    grams = [line.used_g for line in used if line.colour == yarn.colour]
    took_g = math.fsum(grams) if grams else None
    return ColourOutcome(
        colour=yarn.colour,
        expected_g=yarn.grams,
        took_g=took_g,
        expected_cost=yarn.cost,
        cost=_cost(stated, yarn, took_g, [t for t in taken if t.colour == yarn.colour]),
    )


def _cost(stated: Stated, yarn: YarnStated, took_g: float | None, taken: Taken) -> Decimal | None:
    costs = [line.cost for line in taken if line.cost is not None]
    if costs:
        paid = sum(costs, Decimal(0))
        if stated.by_the_gram and took_g is not None:
            taken_g = math.fsum(line.grams for line in taken)
            paid *= min(Decimal(1), exact(took_g) / exact(taken_g))
        return round_money(paid, stated.currency)
    if took_g is None or (stated.by_the_gram is False and yarn.is_bought):
        return None
    return round_money(yarn.cost * exact(took_g) / exact(yarn.grams), stated.currency)
