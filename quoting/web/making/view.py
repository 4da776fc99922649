"""An order that is made, as its page shows it: how far, what is left, money, its log."""

from __future__ import annotations

from collections.abc import Iterator, Mapping
from dataclasses import dataclass, replace
from datetime import date
from decimal import Decimal

from markupsafe import Markup

from exports.drawing.rows_done import draw_rows_done
from exports.drawing.tables import colour_codes
from quoting.core.estimate.hours import Hours
from quoting.core.making.hours_left import HoursLeft, hours_left
from quoting.core.making.log_lines import Doing
from quoting.core.making.made_rows import MadeRows, made_rows
from quoting.core.making.money_due import MoneyDue, PaymentDue, dues_come, money_due
from quoting.core.making.progress import Progress
from quoting.core.making.yarn_left import YarnLeft, yarn_left
from quoting.core.order.stage import Stage
from quoting.core.quote.fate_of_ends import main_fate
from quoting.core.quote.offer_rows import Due
from quoting.web.making.at_hand import TOOK, AtHand
from quoting.web.making.labels import yarn_and_ends
from quoting.web.making.log_rows import LogRow, log_rows, untold_session
from quoting.web.queue_now import queue_now
from quoting.web.shop import Shop
from quoting.wording import Speech
from quoting.wording.log_words import doing_words, log_words, minutes_words
from quoting.wording.making_words import (
    ends_done_words,
    next_row_words,
    rows_done_words,
    yarn_left_words,
    yarn_ratio_words,
)
from quoting.wording.payment_words import payment_name, payment_when
from quoting.wording.ticks import counted_ticks, ticks_words


@dataclass(frozen=True, slots=True, kw_only=True)
class WorkRow:
    """One kind of work: what was told of it, what is left, what was estimated for all of it."""

    words: str
    spent: str
    left: Decimal
    estimated: Decimal


@dataclass(frozen=True, slots=True, kw_only=True)
class YarnRow:
    """One colour's yarn in words; `short` says that some is to be bought."""

    colour: str
    code: str
    words: str
    ratio: str
    short: bool


@dataclass(frozen=True, slots=True, kw_only=True)
class PaymentRow:
    """One of the payments agreed: its amount, what is still to pay of it, and when.

    `come` says that it is time.
    """

    name: str
    amount: Decimal
    still: Decimal
    when: str
    come: bool


@dataclass(frozen=True, slots=True, kw_only=True)
class MakingView:
    """What the page of an order that is made shows; `ready` is None once it is finished."""

    hand: AtHand
    progress: Progress
    rows_words: str
    next_words: str
    bar: Markup
    left: HoursLeft
    ready: date | None
    work: tuple[WorkRow, ...]
    yarn: tuple[YarnRow, ...]
    due: MoneyDue
    due_now: Decimal
    payments: tuple[PaymentRow, ...]
    log: tuple[LogRow, ...]
    spent_words: str
    ends_words: str
    codes: Mapping[str, str]
    ticks: str
    one_tick: str
    yarn_and_ends: str
    untold_words: str = ""
    untold_id: int = 0

    @property
    def estimated(self) -> Hours:
        """The hours that the quote has."""
        return self.hand.quote.estimate.hours

    @property
    def wanted(self) -> date | None:
        """The day the buyer wants it by."""
        return self.hand.quote.order.wanted_by

    @property
    def late(self) -> bool:
        """Whether it will hardly be ready by the day it is wanted."""
        return self.ready is not None and self.wanted is not None and self.ready > self.wanted

    @property
    def offers_hook(self) -> bool:
        """Whether rows are told of an order that is not on the hook yet."""
        return self.hand.order.stage is Stage.AGREED and self.progress.rows_done > 0

    @property
    def is_finished(self) -> bool:
        """Whether it is known what all of it took."""
        return self.hand.order.stage in TOOK


def making_view(hand: AtHand, shop: Shop) -> MakingView:
    """Return the order as its page shows it. Errors: as `hours_left` and `yarn_left`."""
    speech = shop.speech
    progress, rows = hand.progress, made_rows(hand.quote)
    left = hours_left(hand.quote, hand.entries)
    yarns = yarn_left(hand.quote, hand.entries)
    words = rows_done_words(progress, hand.quote.plan, speech)
    waits = any(not yarn.is_enough for yarn in yarns)
    untold = untold_session(hand)
    due, come = money_due(hand.offer, hand.entries), dues_come(progress, hand.order.stage)
    return MakingView(
        hand=hand,
        progress=progress,
        rows_words=words,
        next_words=next_row_words(rows, progress.rows_done, speech),
        # The drawing escapes every word that it writes.
        bar=Markup(draw_rows_done(hand.quote, _done_of_one(rows, progress.rows_done), words)),  # noqa: S704
        left=left,
        ready=None if hand.order.stage in TOOK else _ready(hand.id, left, shop, waits=waits),
        work=tuple(_work(left, hand, speech)),
        yarn=tuple(_yarn(yarns, rows, hand, speech)),
        due=due,
        due_now=due.due_by(come),
        payments=tuple(_payment(each, come) for each in due.payments if each.due is not None),
        log=tuple(log_rows(hand, speech)),
        spent_words=minutes_words(left.spent_minutes, speech) if left.spent else "–",
        ends_words=ends_done_words(progress, main_fate(hand.quote), speech),
        codes=colour_codes(hand.quote),
        ticks=ticks_words(hand.quote.plan),
        one_tick=counted_ticks(hand.quote.plan)[0],
        yarn_and_ends=yarn_and_ends(hand.quote),
        untold_words="" if untold is None else log_words(untold.line, rows, speech),
        untold_id=0 if untold is None else untold.id,
    )


def _done_of_one(rows: MadeRows, done: int) -> int:
    """Return how many rows are done of the blanket in hand; of the last once all are."""
    before = min(rows.blankets - 1, done // rows.of_one)
    return done - rows.of_one * before


def _ready(order_id: int, left: HoursLeft, shop: Shop, *, waits: bool) -> date:
    """Return when it can be with its buyer, by the maker's calendar and queue of now.

    `waits` says that yarn is to be bought first.
    """
    now, calendar = shop.workshop, shop.workshop.calendar
    workshop = replace(left.workshop, calendar=calendar, hours_per_week=now.hours_per_week)
    queue, by_now = queue_now(), replace(left, workshop=workshop)
    turn = queue.turn_of(order_id)
    after = queue.ahead_of(order_id).made_by if turn is None else turn.waits_until
    return by_now.ready_by(shop.today(), after=after, yarn_to_come=waits)


def _work(left: HoursLeft, hand: AtHand, speech: Speech) -> Iterator[WorkRow]:
    for doing in Doing:
        spent = left.spent.get(doing)
        hours = hand.quote.estimate.hours
        yield WorkRow(
            words=doing_words(doing, hand.quote, speech),
            spent="–" if spent is None else minutes_words(spent, speech),
            left=left.of(doing),
            estimated=sum((hours.of(part) for part in doing.parts), Decimal(0)),
        )


def _payment(payment: PaymentDue, come: frozenset[Due]) -> PaymentRow:
    return PaymentRow(
        name=payment_name(payment),
        amount=payment.amount,
        still=payment.still,
        when=payment_when(payment),
        come=payment.due in come,
    )


def _yarn(
    yarns: tuple[YarnLeft, ...], rows: MadeRows, hand: AtHand, speech: Speech
) -> Iterator[YarnRow]:
    codes = colour_codes(hand.quote)
    for left in yarns:
        yield YarnRow(
            colour=left.colour,
            code=codes.get(left.colour, ""),
            words=yarn_left_words(left, hand.quote.plan, speech),
            ratio=yarn_ratio_words(left, rows, speech),
            short=not left.is_enough,
        )
