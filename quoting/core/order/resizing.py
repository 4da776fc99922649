"""The same design at another size."""

from __future__ import annotations

from dataclasses import dataclass, replace

from quoting.core.ground.errors import Checks
from quoting.core.order.design import MAX_SIDE_CM
from quoting.core.order.order import Order


@dataclass(frozen=True, slots=True, kw_only=True)
class Size:
    """A finished size: width across the rows, height along them. `label` is as it was asked."""

    width_cm: float
    height_cm: float
    label: str = ""

    def __post_init__(self) -> None:
        checks = Checks()
        checks.number("width", self.width_cm, above=0, most=MAX_SIDE_CM)
        checks.number("height", self.height_cm, above=0, most=MAX_SIDE_CM)
        checks.done()

    def __eq__(self, other: object) -> bool:
        """Two sizes are the same when both sides are, whatever they were called."""
        if not isinstance(other, Size):
            return NotImplemented
        return self._sides == other._sides

    def __hash__(self) -> int:
        return hash(self._sides)

    def __str__(self) -> str:
        return self.label or f"{self.width_cm:g}x{self.height_cm:g}cm"

    @property
    def _sides(self) -> tuple[float, float]:
        return round(self.width_cm, 6), round(self.height_cm, 6)


def own_size(order: Order) -> Size:
    """Return the size that an order asks for."""
    return Size(width_cm=order.design.width_cm, height_cm=order.design.height_cm)


def resize_order(order: Order, size: Size) -> Order:
    """Return the order at another size, its body without what belongs to one size.

    At its own size it is the order as it is.
    """
    if size == own_size(order):
        return order
    design = replace(
        order.design,
        width_cm=size.width_cm,
        height_cm=size.height_cm,
        body=order.design.body.resized(),
    )
    return replace(order, design=design)
