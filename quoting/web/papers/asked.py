"""What is typed of a paper before it is made: a bill's day, what a finished blanket measures."""

from __future__ import annotations

from collections.abc import Mapping
from dataclasses import dataclass, field, replace
from datetime import date
from types import MappingProxyType
from typing import Any, TypeVar

from werkzeug.datastructures import MultiDict
from wtforms import Form

from quoting.core.ground.errors import Mistake
from quoting.core.ground.place import Document
from quoting.core.making.log_lines import Moved
from quoting.core.order.stage import Stage
from quoting.core.papers.head import PaperKind
from quoting.schema.paper_shapes import BATCH_ASKED, BILL_ASKED
from quoting.schema.reading import read_value
from quoting.schema.shape import Shape
from quoting.schema.words import DAY
from quoting.web.beside import label_of, say_beside
from quoting.web.forms.from_shape import form_of
from quoting.web.forms.sent import Sent, content_of, line_numbers
from quoting.web.making.at_hand import AtHand
from quoting.web.orders.order_answer import Said
from quoting.web.shop import Shop

T = TypeVar("T")

ASKED: Mapping[PaperKind, Shape[Any]] = MappingProxyType(
    {PaperKind.BILL: BILL_ASKED, PaperKind.BATCH: BATCH_ASKED}
)
"""The kinds of papers of which something is typed."""


@dataclass(frozen=True, slots=True, kw_only=True)
class PaperForms:
    """The forms of the page with what was typed in them, and what is said of it.

    `stale` says that the page was opened before the program was started again.
    """

    bill: Form
    batch: Form
    said: tuple[Said, ...] = field(default=())
    stale: bool = False


def new_paper_forms(hand: AtHand, shop: Shop) -> PaperForms:
    """Return the forms as they begin: blankets are done when the order was."""
    finished = DAY.show(_finished_on(hand) or shop.today(), shop.notation)
    return PaperForms(
        bill=_form(PaperKind.BILL, MultiDict(), shop),
        batch=_form(PaperKind.BATCH, MultiDict({f"{PaperKind.BATCH}.finished": finished}), shop),
    )


def paper_forms_sent(
    kind: PaperKind,
    sent: Sent,
    hand: AtHand,
    shop: Shop,
    mistakes: tuple[Mistake, ...] = (),
    *,
    stale: bool = False,
) -> PaperForms:
    """Return the forms with one as it was typed, and its mistakes."""
    form = _form(kind, sent, shop)
    said = say_beside(form, mistakes, shop.speech, label_of)
    forms = replace(new_paper_forms(hand, shop), said=said, stale=stale)
    return replace(forms, bill=form) if kind is PaperKind.BILL else replace(forms, batch=form)


def read_asked(kind: PaperKind, shape: Shape[T], sent: Sent, shop: Shop) -> T:
    """Return what was typed of a paper. Errors: one refusal with every mistake."""
    content = content_of(sent).get(kind.value, {})
    typed = content if isinstance(content, dict) else {}
    return read_value(typed, shape, Document.PAPER, shop.notation)


def _form(kind: PaperKind, sent: Sent, shop: Shop) -> Form:
    meta = {"shop": shop, "lines": line_numbers(sent)}
    return form_of(ASKED[kind])(sent, prefix=f"{kind.value}.", meta=meta)


def _finished_on(hand: AtHand) -> date | None:
    """Return the day that the order was finished on last, None where it was not."""
    for entry in reversed(hand.standing):
        if isinstance(entry.line, Moved) and entry.line.stage is Stage.FINISHED:
            return entry.at.astimezone().date()
    return None
