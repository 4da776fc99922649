"""What is typed into a kept order, saved as it was typed, with its figures once there are any."""

from __future__ import annotations

from dataclasses import dataclass
from datetime import date, datetime
from types import MappingProxyType

from flask import current_app, request, url_for
from werkzeug.datastructures import MultiDict

from quoting.core.order.order import Order
from quoting.core.quote.quote import Quote, quote_order
from quoting.store.order_content import Figures, KeptOrder, OrderContent, Overtaken, SetAside, Typed
from quoting.store.orders import kept_order, save_order
from quoting.web.book.given_so_far import GivenSoFar, given_so_far
from quoting.web.book.mark import OF_THE_PAGE, TURN, Mark, sent_mark
from quoting.web.forms.lines import part_of, typed_of
from quoting.web.forms.sent import Sent
from quoting.web.kept import book_now, moment_now
from quoting.web.orders.order_answer import Answer
from quoting.web.orders.order_form import sent_order
from quoting.web.shop import Shop

_LATEST = "quoting-latest-turns"


@dataclass(frozen=True, slots=True, kw_only=True)
class Standing:
    """A kept order beside its worktable: the mark of the page, and what has been set aside."""

    order: KeptOrder
    mark: Mark
    asides: tuple[SetAside, ...] = ()
    overtaken: bool = False
    saved: bool = False

    @property
    def home(self) -> str:
        """The order's own page."""
        return url_for("kept_orders.show", order_id=self.order.id)

    @property
    def given(self) -> GivenSoFar:
        """The quotes that were given of it."""
        return given_so_far(self.order)

    @property
    def quotable(self) -> int | None:
        """The order where a quote of it may be given."""
        return self.order.id if self.order.stage.is_open else None

    @property
    def saved_at(self) -> datetime:
        """When the order was saved last, by the clock of this computer."""
        return self.order.changed_at.astimezone()


def keep_answer(answer: Answer) -> Standing | None:
    """Save the order that a form was sent for, and return how it stands; None of a loose form.

    Errors: `order-missing`; as `Book.writing`.
    """
    mark = sent_mark()
    return None if mark is None else save_content(mark, content_of_answer(answer))


def save_content(mark: Mark, content: OrderContent) -> Standing:
    """Save what a page sent, unless that page has sent something later already.

    Errors: as `keep_answer`.
    """
    if not _is_latest(mark.writer):
        return unsaved_standing(mark)
    done = save_order(
        book_now(),
        mark.order_id,
        content,
        revision=mark.revision,
        writer=mark.writer,
        now=moment_now(),
    )
    if isinstance(done, Overtaken):
        return Standing(order=done.kept, mark=mark, asides=(done.aside,), overtaken=True)
    renewed = Mark(order_id=mark.order_id, revision=done.revision, writer=mark.writer)
    return Standing(order=done, mark=renewed, saved=True)


def unsaved_standing(mark: Mark) -> Standing:
    """Return how an order stands that a page shows, without saving. Errors: `order-missing`."""
    return Standing(order=kept_order(book_now(), mark.order_id), mark=mark)


def content_of_answer(answer: Answer) -> OrderContent:
    """Return what is kept of a form and its answer."""
    head = part_of(answer.form, "order")
    wanted_by = typed_of(head, "wanted_by").data
    quote = answer.quote
    return OrderContent(
        typed=typed_in(answer.sent),
        title=answer.sent.get("order.title", ""),
        buyer=answer.sent.get("order.buyer", ""),
        wanted_by=wanted_by if isinstance(wanted_by, date) else None,
        order=None if quote is None else quote.order,
        figures=None if quote is None else figures_of(quote),
    )


def content_of_order(order: Order, shop: Shop) -> OrderContent:
    """Return what is kept of an order that was never typed. Errors: as `quote_order`."""
    return OrderContent(
        typed=typed_in(sent_order(order, shop)),
        title=order.title,
        buyer=order.buyer,
        wanted_by=order.wanted_by,
        order=order,
        figures=figures_of(quote_order(order, shop.workshop, today=shop.today())),
    )


def figures_of(quote: Quote) -> Figures:
    """Return what a list shows of a quote."""
    price = quote.price
    return Figures(
        price=price.price,
        currency=price.currency,
        earned_per_hour=price.earned_per_hour,
        hours=quote.estimate.hours.total,
        ready_by=quote.ready_by,
    )


def typed_in(sent: Sent) -> Typed:
    """Return the fields of an order as they were typed."""
    fields = ((name, tuple(texts)) for name, texts in sent.lists() if name not in OF_THE_PAGE)
    return MappingProxyType(dict(fields))


def sent_again(typed: Typed) -> Sent:
    """Return what the form sends in which an order was typed."""
    return MultiDict([(name, text) for name, texts in typed.items() for text in texts])


def _is_latest(writer: str) -> bool:
    """Return whether a page sends now what it did not send before something else.

    Two of its requests may be at work at once, and end the other way round.
    """
    turn = request.form.get(TURN, type=float)
    if turn is None:
        return True
    latest: dict[str, float] = current_app.extensions.setdefault(_LATEST, {})
    if turn < latest.get(writer, turn):
        return False
    latest[writer] = turn
    return True
