"""The weeks ahead: agreed orders one under another, each a bar over the days that it is made on."""

from __future__ import annotations

import math
from collections.abc import Iterator, Sequence
from dataclasses import dataclass
from datetime import date, timedelta

from exports.charts.days import DAY, DayScale, runs
from exports.charts.ground import (
    BAR_HEIGHT,
    FONT_SIZE,
    NAME_HEIGHT,
    SIDE,
    SMALL_SIZE,
    VIEW_WIDTH,
    framed,
    heading,
    words_width,
)
from exports.charts.inks import draw_inks, ink
from exports.charts.weeks_key import (
    BEGUN,
    TO_COME,
    Sign,
    days_off_box,
    making_box,
    promised_mark,
    today_line,
    travel_line,
    wanted_mark,
    weeks_key,
    weeks_signs,
)
from exports.svg import INK, element, escaped, path, text
from quoting.core.workshop.queue import Turn
from quoting.core.workshop.weeks import WEEKS_AHEAD, monday_of
from quoting.core.workshop.workshop import Workshop
from quoting.wording import Speech, weeks_description

ABOVE = BELOW = 11.0
"""Room for the marks over a bar and under it."""

PITCH = NAME_HEIGHT + 4 + ABOVE + BAR_HEIGHT + BELOW + 8
MOST_WEEKS, MOST_DRAWN = 53, 40
"""As much as can be told apart; the table beside the chart has all the rest."""


@dataclass(frozen=True, slots=True, kw_only=True)
class _Ground:
    """What all bars have in common; `off` are the days off that are shown."""

    scale: DayScale
    off: frozenset[date]
    today: date
    speech: Speech
    prefix: str


def weeks_chart(
    turns: Sequence[Turn], workshop: Workshop, speech: Speech, *, today: date, prefix: str = "weeks"
) -> str:
    """Return a chart of the first turns of the queue; `prefix` begins every id."""
    drawn = turns[:MOST_DRAWN]
    scale = _scale(drawn, today)
    off = frozenset(day for day in workshop.calendar.days_off if scale.holds(day))
    ground = _Ground(scale=scale, off=off, today=today, speech=speech, prefix=prefix)
    key, bottom = weeks_key(_signs(drawn, ground))
    top = bottom + SMALL_SIZE + 12
    return framed(
        draw_inks(prefix, TO_COME + 1),
        key,
        *_days(ground, top - 4),
        *(_row(turn, ground, top + PITCH * number) for number, turn in enumerate(drawn)),
        bottom=top + PITCH * len(drawn),
        title="Weeks ahead",
        description=weeks_description(len(drawn), speech),
        prefix=prefix,
    )


def _scale(turns: Sequence[Turn], today: date) -> DayScale:
    """Return whole weeks from this one on, to the last of the turns if they are not too many."""
    first = monday_of(today)
    days = max(((turn.ready_by - first).days + 1 for turn in turns), default=0)
    weeks = min(max(WEEKS_AHEAD, math.ceil(days / 7)), MOST_WEEKS)
    return DayScale(first, first + timedelta(weeks=weeks))


def _signs(turns: Sequence[Turn], ground: _Ground) -> dict[str, Sign]:
    """Return the marks that the chart has."""
    there = {
        "on the hook": any(turn.order.on_the_hook for turn in turns),
        "agreed": not all(turn.order.on_the_hook for turn in turns),
        "wanted": any(turn.order.wanted_by for turn in turns),
        "days off": bool(ground.off),
    }
    signs = weeks_signs(ground.prefix)
    return {name: sign for name, sign in signs.items() if there.get(name, True)}


def _days(ground: _Ground, y: float) -> Iterator[str]:
    """Yield the days that weeks begin on, as many as there is room for."""
    weeks = ground.scale.weeks
    labels = [ground.speech.short_day(week) for week in weeks]
    room = (VIEW_WIDTH - 2 * SIDE) / len(labels)
    every = math.ceil((max(words_width(each, SMALL_SIZE) for each in labels) + 6) / room)
    for number in range(0, len(labels) - every + 1, every):
        x = ground.scale.x(weeks[number])
        yield text(labels[number], x, y, font_size=SMALL_SIZE, fill=INK)


def _row(turn: Turn, ground: _Ground, top: float) -> str:
    """Return an order's words with its bar below them, and the days behind it."""
    label = f"ready {ground.speech.short_day(turn.ready_by)}"
    room = VIEW_WIDTH - 3 * SIDE - words_width(label, FONT_SIZE)
    at = top + NAME_HEIGHT + 4 + ABOVE
    return element(
        "g",
        element("title", escaped(f"{turn.order.title}: {label}")),
        heading(_shortened(turn.order.title, room), label, top + NAME_HEIGHT - 1),
        *_behind(ground, at - ABOVE, at + BAR_HEIGHT + BELOW),
        *_making(turn, ground, at),
        *_travel(turn, ground.scale, at),
        *_marks(turn, ground.scale, at),
        class_="bar",
    )


def _behind(ground: _Ground, high: float, low: float) -> Iterator[str]:
    """Yield the days off, the beginnings of weeks and today, clear of the words above a bar."""
    scale = ground.scale
    for first, last in runs(ground.off):
        yield days_off_box(scale.x(first), high, scale.evening(last) - scale.x(first), low - high)
    for week in scale.weeks:
        steps = ("M", scale.x(week), high, "V", low)
        yield path(*steps, stroke=INK, stroke_width=0.6, stroke_opacity=0.35)
    yield today_line(scale.evening(ground.today), high, low)


def _making(turn: Turn, ground: _Ground, top: float) -> Iterator[str]:
    """Yield a box for the days of making that follow on one another, as far as they are shown."""
    scale = ground.scale
    fill = ink(ground.prefix, BEGUN if turn.order.on_the_hook else TO_COME)
    last = min(turn.made_by, scale.last - DAY)
    days = (turn.starts_on + timedelta(days=n) for n in range((last - turn.starts_on).days + 1))
    for first, end in runs(day for day in days if day not in ground.off):
        yield making_box(scale.x(first), top, scale.evening(end) - scale.x(first), fill)


def _travel(turn: Turn, scale: DayScale, top: float) -> Iterator[str]:
    begin, end = scale.evening(turn.made_by), scale.evening(turn.ready_by)
    if begin < end:
        yield travel_line(begin, end, top + BAR_HEIGHT / 2)


def _marks(turn: Turn, scale: DayScale, top: float) -> Iterator[str]:
    """Yield the days that were told and asked for, where the chart reaches so far."""
    if scale.holds(turn.order.promised_by):
        yield promised_mark(scale.evening(turn.order.promised_by), top)
    if turn.order.wanted_by is not None and scale.holds(turn.order.wanted_by):
        yield wanted_mark(scale.evening(turn.order.wanted_by), top + BAR_HEIGHT)


def _shortened(words: str, room: float) -> str:
    """Return as much of words in bold as there is room for."""
    most = int(room / words_width("n", FONT_SIZE * 1.08))
    return words if len(words) <= most else f"{words[: most - 1].rstrip()}…"
