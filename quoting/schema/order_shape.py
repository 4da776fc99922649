"""The shape of an order."""

from __future__ import annotations

from quoting.core.order.order import Extra, Order
from quoting.schema.blanket_shapes import DESIGN
from quoting.schema.figures import COUNT, METRES, MONEY, NUMBER
from quoting.schema.selling_shapes import TERMS
from quoting.schema.several import Several
from quoting.schema.shape import Fields, Shape
from quoting.schema.words import DAY, NAME, TEXT, YES_NO

_extra = Fields(Extra)
EXTRA = Shape(
    Extra,
    _extra(lambda extra: extra.what, TEXT, "What"),
    _extra(lambda extra: extra.cost, MONEY, "Cost"),
    _extra(lambda extra: extra.minutes, NUMBER, "Minutes", usual=0.0),
    _extra(lambda extra: extra.colour, NAME, "Yarn colour"),
    _extra(lambda extra: extra.yarn_m, METRES, "Length of yarn", name="metres", usual=0.0),
    _extra(lambda extra: extra.optional, YES_NO, "The buyer may leave it out"),
)

_order = Fields(Order)
_head = Fields(Order, table="order")
ORDER = Shape(
    Order,
    _head(lambda order: order.title, TEXT, "Title"),
    _head(lambda order: order.buyer, TEXT, "Buyer", blank=""),
    _head(lambda order: order.for_baby, YES_NO, "For a baby or a child under three"),
    _head(lambda order: order.quantity, COUNT, "How many"),
    _head(lambda order: order.wanted_by, DAY, "Wanted by"),
    _head(lambda order: order.deliver_to, TEXT, "Country"),
    _head(lambda order: order.pays_in, NAME, "Buyer pays in"),
    _head(lambda order: order.notes, TEXT, "Notes"),
    _order(lambda order: order.design, DESIGN, name="blanket"),
    _order(lambda order: order.extras, Several(EXTRA), "Extras"),
    _order(lambda order: order.terms, TERMS, name="price"),
)
