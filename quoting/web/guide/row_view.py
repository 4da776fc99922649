"""The row to work now, as its page shows it: what the book says is done, and what comes next."""

from __future__ import annotations

from collections.abc import Mapping
from dataclasses import dataclass

from markupsafe import Markup

from exports.drawing.rows_done import draw_rows_done
from exports.drawing.tables import colour_codes
from quoting.core.guide.guide import guide_of
from quoting.core.making.hours_left import hours_left
from quoting.core.making.log_lines import Doing, LogEntry, RowsReached
from quoting.core.making.made_rows import made_rows
from quoting.core.order.stage import Stage
from quoting.web.making.at_hand import AtHand
from quoting.web.shop import Shop
from quoting.wording.making_words import rows_done_words
from quoting.wording.row_at_hand import RowAtHand, row_at_hand
from quoting.wording.ticks import ticks_words

PREVIEW = 3
"""Rows that are shown after the one to work."""


@dataclass(frozen=True, slots=True, kw_only=True)
class RowView:
    """What the page shows: `row` is None once all are done; Back takes the line `undo` back."""

    hand: AtHand
    row: RowAtHand | None
    after: tuple[RowAtHand, ...]
    codes: Mapping[str, str]
    rows: int
    done_words: str
    ticks: str
    all_done: str
    bar: Markup
    left_words: str
    undo: int | None

    @property
    def is_on_the_hook(self) -> bool:
        """Whether rows are ticked."""
        return self.hand.order.stage is Stage.ON_THE_HOOK


def row_view(hand: AtHand, shop: Shop) -> RowView:
    """Return the row to work now of an order. Errors: as `hours_left`."""
    rows, progress, speech = made_rows(hand.quote), hand.progress, shop.speech
    guide, done = guide_of(hand.quote), progress.rows_done
    numbers = range(done + 1, min(rows.all, done + 1 + PREVIEW) + 1)
    told = [row_at_hand(guide, rows, number, speech) for number in numbers]
    left = hours_left(hand.quote, hand.entries)
    words = rows_done_words(progress, hand.quote.plan, speech)
    at_hook, all_of_it = speech.hours(left.of(Doing.AT_THE_HOOK)), speech.hours(left.hours.total)
    before = min(rows.blankets - 1, done // rows.of_one) * rows.of_one
    return RowView(
        hand=hand,
        row=told[0] if told else None,
        after=tuple(told[1:]),
        codes=colour_codes(hand.quote),
        rows=rows.all,
        done_words=words,
        ticks=ticks_words(rows.plan),
        all_done=f"All {ticks_words(rows.plan)} are done",
        # The drawing escapes every word that it writes.
        bar=Markup(draw_rows_done(hand.quote, done - before, words)),  # noqa: S704
        left_words=f"{at_hook} left at the hook at your pace, {all_of_it} in all.",
        undo=last_tick(hand),
    )


def last_tick(hand: AtHand) -> int | None:
    """Return the line that told the rows there are, if nothing was written since but is done."""
    last = hand.standing[-1] if hand.standing else None
    return last.id if last is not None and _is_tick(last, hand) else None


def _is_tick(entry: LogEntry, hand: AtHand) -> bool:
    return isinstance(entry.line, RowsReached) and entry.line.rows == hand.progress.rows_done
