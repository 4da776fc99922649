"""Which rows a design's stripes come to at a height: sections, shares, repeats, where to stop."""

from __future__ import annotations

from collections.abc import Callable, Iterator, Sequence
from dataclasses import dataclass
from itertools import accumulate, chain, groupby

from quoting.core.ground.cautions import Caution, for_maker
from quoting.core.ground.codes import CautionCode, MistakeCode
from quoting.core.ground.errors import refuse
from quoting.core.ground.place import at
from quoting.core.ground.sameness import NEAR
from quoting.core.order.design import Design, Kind
from quoting.core.order.in_rows import InRows, Section, StopAt, Stripe
from quoting.core.plan.fitted import fitted_rows
from quoting.core.plan.rows.repeats import allot_repeats
from quoting.core.workshop.workshop import Workshop

MAX_ROWS = 3_000


@dataclass(frozen=True, slots=True)
class Row:
    """A row before it is worked: its colour, yarn and stitch, and its section, from 0, if any."""

    colour: str
    kind: Kind
    section: int | None = None

    @property
    def stitch(self) -> str:
        """The stitch it is worked in."""
        return self.kind[1]


@dataclass(frozen=True, slots=True, kw_only=True)
class Striping:
    """The rows of a body, and how many repeats each section comes to."""

    rows: tuple[Row, ...]
    repeats: tuple[float, ...]


HeightOf = Callable[[Kind], float]
"""The row height of a stitch in a yarn, in cm."""


def stripe_body(
    body: InRows, design: Design, body_height_cm: float, height_of: HeightOf
) -> Striping:
    """Return the rows of a design's body that come nearest to a height.

    Errors: `height-too-small` with `smallest_body_cm` when one of everything does not fit;
    `too-many-rows`.
    """
    _check_rows(sum(stripe.rows for _, stripe in body.stripes_with_places()))
    first = _unroll(body.first_rows, design, None)
    last = _unroll(body.last_rows, design, None)
    periods = [_unroll(s.stripes, design, n) for n, s in enumerate(body.sections)]
    leasts = [_least(s, rows) for s, rows in zip(body.sections, periods, strict=True)]
    heights = [_height(rows, height_of) for rows in leasts]
    fixed = _height(first, height_of) + _height(last, height_of)
    exact = sum(h * (s.repeats or 0) for h, s in zip(heights, body.sections, strict=True))
    repeats = _repeats(body.sections, heights, body_height_cm - fixed - exact, fixed + exact)
    _check_rows(sum(len(rows) * n for rows, n in zip(leasts, repeats, strict=True)))
    runs = [rows * n for rows, n in zip(leasts, repeats, strict=True)]
    _fit(runs, body.sections, body_height_cm - fixed, height_of)
    if body.stop_at is not StopAt.REPEAT and body.sections[-1].is_open:
        before = fixed + sum(_height(run, height_of) for run in runs[:-1])
        stops = stops_within(body.sections[-1], body.stop_at)
        runs[-1] = _ended_nearest(body_height_cm - before, periods[-1], stops, height_of)
    return Striping(
        rows=(*first, *chain.from_iterable(runs), *last),
        repeats=tuple(
            1.0 if section.fitted else len(run) / len(rows)
            for section, run, rows in zip(body.sections, runs, periods, strict=True)
        ),
    )


def row_repeat_cautions(striping: Striping, workshop: Workshop) -> Iterator[Caution]:
    """Yield a caution for each pattern that is left within its row repeat, once for each."""
    stitches = dict.fromkeys(row.stitch for row in striping.rows)
    repeats = {stitch: workshop.row_repeat(stitch) for stitch in stitches}
    left: dict[str, int] = {}
    for stitch, run in groupby(striping.rows, key=lambda row: row.stitch):
        rows = sum(1 for _ in run)
        if rows % repeats[stitch]:
            left.setdefault(stitch, rows)
    for stitch, rows in left.items():
        repeat = repeats[stitch]
        fewer = rows - rows % repeat
        yield for_maker(
            CautionCode.ROWS_BREAK_REPEAT,
            stitch=stitch,
            rows=rows,
            row_repeat=repeat,
            fewer=fewer or None,
            more=fewer + repeat,
        )


def _unroll(stripes: Sequence[Stripe], design: Design, section: int | None) -> tuple[Row, ...]:
    runs = ((Row(s.colour, design.kind_of(s), section),) * s.rows for s in stripes)
    return tuple(chain.from_iterable(runs))


def _height(rows: Sequence[Row], height_of: HeightOf) -> float:
    return sum(height_of(row.kind) for row in rows)


def _least(section: Section, period: tuple[Row, ...]) -> tuple[Row, ...]:
    """Return the fewest rows of a section: a repeat, or one row of each stripe that is fitted."""
    if not section.fitted:
        return period
    firsts = accumulate((stripe.rows for stripe in section.stripes[:-1]), initial=0)
    return tuple(period[first] for first in firsts)


def _fit(
    runs: list[tuple[Row, ...]], sections: Sequence[Section], room: float, height_of: HeightOf
) -> None:
    """Give fitted stripes the rows of what the other sections leave of a room, by their shares."""
    fitted = [n for n, section in enumerate(sections) if section.fitted]
    if not fitted:
        return
    room -= sum(_height(run, height_of) for n, run in enumerate(runs) if n not in fitted)
    rows = [row for n in fitted for row in runs[n]]
    heights = [height_of(row.kind) for row in rows]
    counts = iter(fitted_rows(list(_parts(sections, runs, height_of)), heights, room))
    for n in fitted:
        runs[n] = tuple(chain.from_iterable((row,) * next(counts) for row in runs[n]))


def _parts(
    sections: Sequence[Section], runs: Sequence[tuple[Row, ...]], height_of: HeightOf
) -> Iterator[float]:
    """Yield the rows of each fitted stripe in proportion to those of all sections that are."""
    for section, run in zip(sections, runs, strict=True):
        if section.fitted:
            typed = [stripe.rows for stripe in section.stripes]
            whole = sum(n * height_of(row.kind) for n, row in zip(typed, run, strict=True))
            yield from (section.weight * rows / whole for rows in typed)


def _repeats(
    sections: Sequence[Section], heights: Sequence[float], room: float, fixed: float
) -> list[int]:
    """Return the repeats of every section: its own exact ones, or its part of the room.

    Fitted sections are repeated once, and what is their part is left to them.
    """
    open_ones = [n for n, section in enumerate(sections) if section.is_open]
    fitted = [n for n, section in enumerate(sections) if section.fitted]
    least = sum(heights[n] for n in (*open_ones, *fitted))
    if least and room < least - NEAR:
        raise refuse(
            at("blanket", "height"), MistakeCode.HEIGHT_TOO_SMALL, smallest_body_cm=fixed + least
        )
    weights = [sum(sections[n].weight for n in some) for some in (open_ones, fitted)]
    part = room * weights[0] / sum(weights) if fitted and open_ones else room
    shared = allot_repeats(
        min(part, room - sum(heights[n] for n in fitted)),
        [heights[n] for n in open_ones],
        [sections[n].weight for n in open_ones],
    )
    allotted = dict(zip(open_ones, shared, strict=True))
    return [section.repeats or allotted.get(n, 1) for n, section in enumerate(sections)]


def _check_rows(total: int) -> None:
    if total > MAX_ROWS:
        raise refuse(at("blanket", "height"), MistakeCode.TOO_MANY_ROWS, read=total, limit=MAX_ROWS)


def stops_within(section: Section, stop_at: StopAt) -> list[int]:
    """Return the rows of a repeat after which it may be left, 0 for its beginning."""
    stops = [0]
    if stop_at is StopAt.REPEAT:
        return stops
    for stripe in section.stripes:
        step = 1 if stop_at is StopAt.ROW else stripe.rows
        stops += range(stops[-1] + step, stops[-1] + stripe.rows + 1, step)
    return stops[:-1]


def _ended_nearest(
    target_cm: float, unit: tuple[Row, ...], stops: Sequence[int], height_of: HeightOf
) -> tuple[Row, ...]:
    """Return the unit repeated, at least once, and left at the stop nearest the target."""
    up_to = [0.0, *accumulate(height_of(row.kind) for row in unit)]
    done = max(1, int((target_cm + NEAR) // up_to[-1]))

    def miss(stop: tuple[int, int]) -> tuple[float, float]:
        height = stop[0] * up_to[-1] + up_to[stop[1]]
        return round(abs(height - target_cm), 9), -height

    repeats, rows = min(((n, stop) for n in (done, done + 1) for stop in stops), key=miss)
    return unit * repeats + unit[:rows]
