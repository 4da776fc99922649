"""The number of a quote: its day, and eight signs that stand for everything that is offered."""

from __future__ import annotations

from collections.abc import Iterator, Mapping, Sequence
from dataclasses import fields, is_dataclass
from datetime import date
from decimal import Decimal
from hashlib import blake2b
from itertools import groupby

from quoting.core.order.order import Order
from quoting.core.plan.passes import Plan
from quoting.core.price.price import Price
from quoting.core.quote.own_stitch import own_stitch
from quoting.core.workshop.documents import Documents
from quoting.core.workshop.own_words import words_in
from quoting.core.workshop.selling import RestDue
from quoting.core.workshop.workshop import Workshop

SIGNS = "23456789BCDFGHJKMNPQRSTVWXYZ"
"""Digits and capitals that nobody takes for one another, with no vowels to make a word of."""

SIGNS_TOLD = 8
GROUP = 4


def quote_number(
    order: Order,
    workshop: Workshop,
    plan: Plan,
    price: Price,
    *,
    day: date,
    promised: Sequence[date],
) -> str:
    """Return a number that the same offer of the same day has again: `2026-1125-K7QM-3XPD`.

    It is made of what is asked and what comes out of it, however that was written down: of the
    blankets row by row and the yarns they are made from, of the price with its lines, and of the
    days `promised`. Of a thousand different offers of one day two bear the same number once in
    some 750,000 such days.
    """
    asked = (order.title, order.buyer, order.for_baby, order.quantity, *_extras(order), order.notes)
    told = (workshop.name, workshop.own_words, *_documents(order, workshop, plan))
    where = (workshop.tax, order.deliver_to, order.wanted_by, *promised)
    offer = (asked, told, where, _blanket(order, workshop, plan), _price(price, workshop))
    digest = blake2b(_text(offer).encode(), digest_size=16).digest()
    return f"{day:%Y-%m%d}-{_signs(int.from_bytes(digest, 'big'))}"


def _documents(order: Order, workshop: Workshop, plan: Plan) -> Iterator[object]:
    """Yield what the buyer is told otherwise than usual, and in which language."""
    if order.language is not None:
        yield order.language, words_in(order.language, workshop.own_words, workshop.words_in)
    if workshop.documents != Documents():
        yield workshop.documents
    pattern = workshop.pattern(own_stitch(order.design, plan))
    if pattern is not None and pattern.for_buyers:
        yield pattern.for_buyers


def _blanket(order: Order, workshop: Workshop, plan: Plan) -> object:
    """Return the size asked and made, every run of rows alike, and what they are made from.

    Of joined motifs also which lies where.
    """
    design = order.design
    made = groupby((p.work, p.colour, p.stitch, p.stitches) for p in plan.passes)
    rows = [(*row, len(list(alike))) for row, alike in made]
    sources = {row.colour: design.source_of(row.colour) for row in plan.passes}
    named = {source.yarn for source in sources.values()}
    yarns = {yarn.name: (yarn.fibre, yarn.colours) for yarn in workshop.yarns if yarn.name in named}
    sizes = (design.width_cm, design.height_cm, plan.width_cm, plan.height_cm)
    laid = () if plan.grid is None else (plan.grid,)
    return sizes, rows, sources, yarns, *laid


def _extras(order: Order) -> Iterator[object]:
    """Yield the extras, and which of them may be left out, if there are such."""
    yield [
        (extra.what, extra.cost, extra.minutes, extra.colour, extra.yarn_m)
        for extra in order.extras
    ]
    optional = [index for index, extra in enumerate(order.extras) if extra.optional]
    yield from [optional] if optional else []


def _price(price: Price, workshop: Workshop) -> object:
    """Return the price, its lines, and all that it was asked and is paid on.

    How it was solved is left out: it follows from these, and may be reckoned otherwise one day.
    """
    lines = (price.currency, price.target, price.lines, price.quantity, price.listed, price.price)
    sums = (price.delivery, price.cost, price.fees, price.tax, price.total, price.deposit)
    paid = (price.payments, price.hours, price.delivery_band_found, price.exchange)
    return *lines, *sums, *paid, *_paid_later(price, workshop.pricing.rest_due)


def _paid_later(price: Price, rest_due: RestDue) -> Iterator[object]:
    """Yield what is paid at half and when the rest is due, where that is not as usual."""
    if price.parts.at_half:
        yield price.parts.at_half
    if rest_due is not RestDue.BEFORE_SENDING:
        yield rest_due


def _signs(number: int) -> str:
    """Return so many signs for a number, in groups to be read out."""
    signs = ""
    for _ in range(SIGNS_TOLD):
        number, at = divmod(number, len(SIGNS))
        signs += SIGNS[at]
    return "-".join(signs[start : start + GROUP] for start in range(0, SIGNS_TOLD, GROUP))


def _text(value: object) -> str:
    """Return a value as text, equal for equal values, however they were written or ordered."""
    if is_dataclass(value):
        return _text([getattr(value, item.name) for item in fields(value)])
    if isinstance(value, Mapping):
        return f"{{{','.join(sorted(f'{_text(key)}:{_text(value[key])}' for key in value))}}}"
    if isinstance(value, str):
        return repr(str(value))
    if isinstance(value, Sequence):
        return f"[{','.join(map(_text, value))}]"
    if isinstance(value, Decimal):
        return format(value.normalize(), "f")
    return repr(float(value) if isinstance(value, int) else value)
