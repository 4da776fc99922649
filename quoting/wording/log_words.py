"""A line of an order's log in words: what was done, got, paid or noted."""

from __future__ import annotations

from decimal import Decimal

from quoting.core.ground.money import MINUTES_PER_HOUR, exact
from quoting.core.making.log_lines import (
    Doing,
    EndsWoven,
    LogLine,
    Moved,
    Payment,
    Remark,
    RowsReached,
    Session,
    Withdrawn,
    YarnTaken,
    YarnUsed,
)
from quoting.core.making.made_rows import MadeRows
from quoting.core.quote.fate_of_ends import main_fate
from quoting.core.quote.quote import Quote
from quoting.wording.ends import FATES
from quoting.wording.speech import Speech
from quoting.wording.ticks import counted_ticks, log_name, log_names
from quoting.wording.trade_words import stage_words

_DOING = {
    Doing.AT_THE_HOOK: "At the hook",
    Doing.FINISHING: "Starting, finishing and blocking",
    Doing.OFFICE: "Admin: photos, packing, messages",
}

AT_THE_HOOK_AND_JOINING = "At the hook, laying out and joining"


def doing_words(doing: Doing, quote: Quote, speech: Speech) -> str:
    """Return what a session of an order was spent on, by what becomes of its ends."""
    if doing is Doing.WEAVING_IN:
        return FATES[main_fate(quote)].doing
    if doing is Doing.AT_THE_HOOK and quote.plan.grid is not None:
        return AT_THE_HOOK_AND_JOINING
    return speech.worded(_DOING[doing])


def minutes_words(minutes: float, speech: Speech) -> str:
    """Return minutes as `42 min`, `1 h 5 min`, and with their decimals under one."""
    if minutes < 1:
        return f"{speech.trimmed(minutes, 2)}\u00a0min"
    return speech.hours(exact(minutes) / MINUTES_PER_HOUR)


def log_words(line: LogLine, rows: MadeRows, speech: Speech) -> str:
    """Return what a line of the log of an order that has such rows says."""
    match line:
        case Session():
            return _session(line, rows, speech)
        case RowsReached():
            return _reached(line, rows, speech)
        case YarnUsed():
            return _used(line, rows, speech)
        case YarnTaken():
            return _taken(line, speech)
        case EndsWoven():
            become = main_fate(rows.quote)
            return f"{speech.count(line.ends, 'end')} {FATES[become].done}"
        case Payment():
            return payment_words(line.amount, line.currency, speech)
        case Remark():
            return line.text
        case Moved():
            return _moved(line)
        case Withdrawn():
            return "Taken back"


def payment_words(amount: Decimal, currency: str, speech: Speech) -> str:
    """Return an amount that came, or that was paid back."""
    said = speech.money(abs(amount), currency)
    return f"{said} received" if amount > 0 else f"{said} paid back"


def _reached(line: RowsReached, rows: MadeRows, speech: Speech) -> str:
    if rows.plan.grid is None or not line.rows:
        return f"{speech.count(line.rows, counted_ticks(rows.plan)[0])} done"
    return f"Done up to {log_name(rows, line.rows, speech)}"


def _session(line: Session, rows: MadeRows, speech: Speech) -> str:
    said = [doing_words(line.doing, rows.quote, speech), minutes_words(line.minutes, speech)]
    if line.started is not None:
        said.append(f"from {line.started.astimezone():%H:%M}")
    if line.first_row is not None and line.last_row is not None:
        said.append(log_names(rows, line.first_row, line.last_row, speech))
    return ", ".join(said)


def _used(line: YarnUsed, rows: MadeRows, speech: Speech) -> str:
    at = f"when {speech.count(line.rows, counted_ticks(rows.plan)[0])} were done"
    if line.rows == 1:
        at = at.replace(" were ", " was ")
    if rows.plan.grid is not None and line.rows:
        at = f"up to {log_name(rows, line.rows, speech)}"
    if line.balls is None or line.ball_g is None:
        return f"{line.colour}: {speech.weight(line.used_g)} used, {at}"
    balls = speech.count(line.balls, speech.worded("ball"), speech.worded("balls"))
    return f"{line.colour}: {balls} of {speech.weight(line.ball_g)} used up, {at}"


def _taken(line: YarnTaken, speech: Speech) -> str:
    got = "from the shelf" if line.from_shelf else "got for it"
    said = [f"{line.colour}: {speech.weight(line.grams)} {got}"]
    if line.lot:
        said.append(f"lot {line.lot}")
    if line.cost is not None:
        said.append(f"{speech.money(line.cost)} paid")
    return ", ".join(said)


def _moved(line: Moved) -> str:
    said = [f"From {stage_words(line.before)} to {stage_words(line.stage)}"]
    if line.quote:
        said.append(f"by quote {line.quote}")
    if line.why:
        said.append(line.why)
    return ", ".join(said)
