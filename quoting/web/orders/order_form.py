"""The order form: a field for every key of an order, and orders as it sends them."""

from __future__ import annotations

from typing import Any

from werkzeug.datastructures import MultiDict
from wtforms import Form

from quoting.core.ground.errors import Refused
from quoting.core.order.order import Order
from quoting.core.workshop.workshop import Workshop
from quoting.schema.blanket_shapes import BODIES, DESIGN
from quoting.schema.order_shape import ORDER
from quoting.schema.reading import read_order
from quoting.web.forms.from_shape import form_of
from quoting.web.forms.sent import Sent, content_of, line_numbers, sent_as
from quoting.web.orders.body_forms import start_of_body, usual_construction
from quoting.web.orders.form_room import lines_with_room
from quoting.web.orders.price_choice import chosen_way, way_left_blank, without_other_ways
from quoting.web.orders.resting import without_resting
from quoting.web.orders.squares_form import squares_measured
from quoting.web.orders.stripe_list import folded, spread, texts_of
from quoting.web.shop import Shop

START_TITLE = "Blanket"


def bind_form(shop: Shop, sent: Sent) -> Form:
    """Return the form with what was sent in it, as far as it has room for its lines."""
    sent = without_resting(sent)
    texts, sent = texts_of(sent), spread(sent)
    lines, crowded = lines_with_room(line_numbers(sent), shop)
    about = {"shop": shop, "lines": lines, "crowded": crowded, "price_by": chosen_way(sent)}
    return form_of(ORDER)(sent, meta=about | {"texts": texts})


def read_sent(sent: Sent, shop: Shop) -> Order:
    """Return the order that was sent. Errors: one refusal with every mistake."""
    blank = tuple(way_left_blank(sent))
    try:
        order = read_order(
            content_of(without_other_ways(spread(without_resting(sent)))),
            shop.workshop,
            shop.notation,
        )
    except Refused as refused:
        raise Refused(*refused.mistakes, *blank) from refused
    if blank:
        raise Refused(*blank)
    return order


def sent_order(order: Order, shop: Shop) -> Sent:
    """Return what the form of an order sends."""
    return folded(MultiDict(sent_as(ORDER.write(order, shop.notation))))


def sent_with_design(sent: Sent, asked: Order, other: Order, shop: Shop) -> Sent:
    """Return a form as it was typed, but for what the design of another order has otherwise."""
    before, after = (DESIGN.write(order.design, shop.notation) for order in (asked, other))
    changed = [key for key in {**before, **after} if before.get(key) != after.get(key)]
    names = tuple(f"blanket.{key}" for key in changed)
    inner = tuple(f"{name}." for name in names)
    kept = [
        (name, text)
        for name, text in sent.items(multi=True)
        if name not in names and not name.startswith(inner)
    ]
    new = sent_as({"blanket": {key: after[key] for key in changed if key in after}})
    return MultiDict([*kept, *new])


def start_sent(workshop: Workshop, construction: str | None = None) -> Sent:
    """Return what an empty form begins with of a construction, or the usual: all but the size."""
    word = construction or usual_construction(workshop)
    swatch = next(iter(workshop.swatches), None)
    measured = swatch or next(iter(squares_measured(workshop)), None)
    yarn = workshop.yarn(measured.yarn) if measured else workshop.yarns[0]
    start: dict[str, Any] = {
        "order": {"title": START_TITLE, "quantity": "1"},
        "blanket": {
            "yarn": yarn.name,
            "stitch": swatch.stitch if swatch else workshop.timings[0].stitch,
            **({} if word == BODIES.first else {BODIES.key: word}),
            **start_of_body(workshop, yarn, word),
        },
    }
    return MultiDict(sent_as(start))
