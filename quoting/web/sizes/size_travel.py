"""What was typed beside a size stays with that size when the order comes back at another one.

The order's own size has a line of its own, whichever size it is; its tick and its price move from
there to the line of their size, and those of the order's new size move in.
"""

from __future__ import annotations

from collections.abc import Collection, Iterator

from werkzeug.datastructures import MultiDict

from quoting.core.ground.errors import Refused
from quoting.core.order.order import Order
from quoting.core.order.resizing import Size, own_size
from quoting.notation import FILE_MARKS, LENGTH, Marks, read_size, write_measure, write_number
from quoting.web.forms.sent import Sent, line_numbers
from quoting.web.shop import Shop
from quoting.web.sizes.stand_ins import FIELD, SIDES, stood_in

ORDERED = "ordered"
TICKED = "yes"

_UNSAID = "unsaid"
"""Where a page says nothing of the order's own size; one that is not given yet is said as blank."""


def size_key(size: Size) -> str:
    """Return a size as the page sends it, exactly."""
    return f"{size.width_cm!r}x{size.height_cm!r}cm"


def for_order(sent: Sent, order: Order, shop: Shop) -> Sent:
    """Return what was sent, each tick and price beside the size that it was typed for."""
    names = stood_in(sent.get(FIELD, ""))
    moved, size = MultiDict(sent), given_size(order, names)
    said = sent.get(f"{ORDERED}.size", _UNSAID)
    before = _read(said, FILE_MARKS, "cm")
    moved[f"{ORDERED}.size"] = own_size_key(order, names)
    if before == size:
        return moved
    if before is not None:
        _move_out(moved, before, order, shop)
    if size is not None and (before is not None or not said):
        _move_in(moved, size, order, shop)
    return moved


def given_size(order: Order, names: Collection[str]) -> Size | None:
    """Return the order's own size; None where a side of it stands in for one not given yet."""
    return None if SIDES & set(names) else own_size(order)


def own_size_key(order: Order, names: Collection[str]) -> str:
    """Return the order's own size as the page sends it; nothing where it is not given yet."""
    size = given_size(order, names)
    return "" if size is None else size_key(size)


def _move_out(sent: Sent, size: Size, order: Order, shop: Shop) -> None:
    """Put the tick and the price of what was the order's own size in the line of that size."""
    ticked = bool(sent.poplist(f"{ORDERED}.take"))
    price = "".join(sent.poplist(f"{ORDERED}.price")[:1])
    line = _customary_line(size, shop)
    if line is not None:
        sent.setlist(f"{line}.take", [TICKED] * ticked)
        sent[f"{line}.price"] = price
    elif ticked or price.strip():
        line = next(_own_lines(sent, size, order, shop), None) or _blank_line(sent)
        sent[f"{line}.size"] = sent.get(f"{line}.size", "").strip() or _size_text(size, shop)
        sent[f"{line}.price"] = sent.get(f"{line}.price", "").strip() or price


def _move_in(sent: Sent, size: Size, order: Order, shop: Shop) -> None:
    """Tick the order's own size, and put its price beside it: the order's, or one typed before."""
    sent[f"{ORDERED}.take"] = TICKED
    own = [sent.get(f"{line}.price", "").strip() for line in _own_lines(sent, size, order, shop)]
    target, line = order.terms.target, _customary_line(size, shop)
    typed = "" if line is None else sent.get(f"{line}.price", "")
    if target is not None and target.given is not None:
        typed = write_number(target.given, shop.marks)
    sent[f"{ORDERED}.price"] = "" if any(own) else typed


def _customary_line(size: Size, shop: Shop) -> str | None:
    """Return the line of a size that people ask for by its name."""
    for number, known in enumerate(shop.sizes, 1):
        if Size(width_cm=known.width_cm, height_cm=known.height_cm) == size:
            return f"customary.{number}"
    return None


def _own_lines(sent: Sent, size: Size, order: Order, shop: Shop) -> Iterator[str]:
    """Yield the lines in which the maker typed a size herself."""
    unit, by_width = shop.unit_of(LENGTH), order.design.body.goes_by_width
    for number in line_numbers(sent).get("own", []):
        line = f"own.{number}"
        if _read(sent.get(f"{line}.size", ""), shop.marks, unit, by_width=by_width) == size:
            yield line


def _blank_line(sent: Sent) -> str:
    """Return the first line with nothing in it, or the next."""
    numbers = line_numbers(sent).get("own", [])
    for number in numbers:
        if not any(sent.get(f"own.{number}.{part}", "").strip() for part in ("size", "price")):
            return f"own.{number}"
    return f"own.{max(numbers, default=0) + 1}"


def _size_text(size: Size, shop: Shop) -> str:
    """Return a size as a maker would type it, in her unit or the one that says it shortest."""
    units = dict.fromkeys((shop.unit_of(LENGTH), "cm", "in"))
    return min((_in_unit(size, unit, shop.marks) for unit in units), key=len)


def _in_unit(size: Size, unit: str, marks: Marks) -> str:
    width, height = (
        write_measure(side_cm, marks, LENGTH, unit) for side_cm in (size.width_cm, size.height_cm)
    )
    return f"{width.removesuffix(unit).strip()} x {height}"


def _read(text: str, marks: Marks, unit: str, *, by_width: bool = False) -> Size | None:
    """Return a size as it was typed or sent; None where it is none."""
    try:
        width_cm, height_cm = read_size(text, marks, unit, by_width=by_width)
        return Size(width_cm=width_cm, height_cm=height_cm)
    except Refused:
        return None
