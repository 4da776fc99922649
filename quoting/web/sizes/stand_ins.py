"""What stands in for fields of an order that are still blank, so that its sizes can be compared.

The page carries the names of those fields along, and they are blank again on the worktable.
"""

from __future__ import annotations

from collections.abc import Callable, Collection, Mapping

from werkzeug.datastructures import MultiDict

from quoting.core.ground.codes import MistakeCode
from quoting.core.ground.errors import Refused
from quoting.core.order.order import Order
from quoting.schema.blanket_shapes import BODIES
from quoting.web.forms.sent import Sent
from quoting.web.orders.beginning import beginning_sent
from quoting.web.orders.order_answer import Answer, answer_form
from quoting.web.orders.order_form import read_sent
from quoting.web.shop import Shop
from quoting.wording import Speech, listed

FIELD = "stood_in"
SIDES = frozenset({"blanket.width", "blanket.height"})

_WORDS: Mapping[str, tuple[str, Callable[[Order, Speech], str]]] = {
    "order.title": ("title", lambda order, _: f"“{order.title}”"),
    "blanket.width": ("width", lambda order, say: say.length(order.design.width_cm)),
    "blanket.height": ("length", lambda order, say: say.length(order.design.height_cm)),
    "blanket.stitch": ("stitch", lambda order, say: say.stitch(order.design.stitch)),
    "blanket.yarn": ("yarn", lambda order, _: order.design.yarn),
    "blanket.sections": ("stripes", lambda *_: "one plain stripe"),
    "blanket.sections.1.stripes": ("stripes", lambda *_: "one plain stripe"),
}
"""Each field, or list, that has a stand-in: what it is called, and what stands in for it."""


def answer_with_stand_ins(sent: Sent, shop: Shop) -> tuple[Answer, tuple[str, ...]]:
    """Return the answer to a form, its blanks filled, and the names of those.

    Where anything else is to be put right, it is the answer to the form as it was sent.
    """
    found = answer_form(sent, shop, patient=False)
    if found.quote is not None or found.form.meta.crowded is not None:
        return found, ()
    names: list[str] = []
    whole = sent
    while blanks := [name for name in _blanks(whole, shop) if name not in names]:
        names += blanks
        whole = _filled(whole, blanks, shop)
    filled = answer_form(whole, shop, patient=False) if names else found
    return (found, ()) if filled.quote is None else (filled, tuple(names))


def stood_in(text: str) -> tuple[str, ...]:
    """Return the names that a page carries along, in the order of the worktable."""
    carried = text.split()
    return tuple(name for name in _WORDS if name in carried)


def without_fields(sent: Sent, names: Collection[str]) -> Sent:
    """Return a form with some of its fields, or lists, left blank."""
    lists = tuple(f"{name}." for name in names)
    fields = sent.items(multi=True)
    return MultiDict([(n, t) for n, t in fields if n not in names and not n.startswith(lists)])


def stand_in_words(order: Order, names: Collection[str], say: Speech) -> str:
    """Return which fields are not given yet, and what stands in for them, as one sentence."""
    called = ", ".join(_WORDS[name][0] for name in names)
    meanwhile = listed((_WORDS[name][1](order, say) for name in names), "and")
    return f"Not given yet: {called}; compared with {meanwhile} meanwhile."


def _blanks(sent: Sent, shop: Shop) -> list[str]:
    """Return the names of the blanks of a form; none where it has other mistakes as well."""
    try:
        read_sent(sent, shop)
    except Refused as refused:
        names = [str(mistake.place) for mistake in refused.mistakes]
        missing = all(mistake.code == MistakeCode.MISSING for mistake in refused.mistakes)
        return names if missing and _WORDS.keys() >= set(names) else []
    return []


def _filled(sent: Sent, names: Collection[str], shop: Shop) -> Sent:
    start = beginning_sent(shop, BODIES.first)
    yarn = next((y for y in shop.workshop.yarns if y.name == sent.get("blanket.yarn")), None)
    if yarn is not None:
        start["blanket.sections.1.stripes.1.colour"] = next(iter(yarn.colours))
    filled = without_fields(sent, names)
    for name, text in start.items():
        if any(name == blank or name.startswith(f"{blank}.") for blank in names):
            filled[name] = text
    return filled
