"""The quotes that were given of an order, beside what is on its worktable now."""

from __future__ import annotations

from dataclasses import dataclass

from quoting.store.order_content import KeptOrder
from quoting.store.quote_content import QuoteLine
from quoting.store.quotes import quote_lines, quoted_order
from quoting.web.kept import book_now
from quoting.web.shop import shop_now


@dataclass(frozen=True, slots=True, kw_only=True)
class GivenSoFar:
    """Every version, the latest first, and whether its order or the workshop was changed since."""

    lines: tuple[QuoteLine, ...] = ()
    order_changed: bool = False
    workshop_changed: bool = False

    @property
    def last(self) -> QuoteLine | None:
        """The version that was given last, if any was."""
        return next(iter(self.lines), None)


def given_so_far(order: KeptOrder) -> GivenSoFar:
    """Return what was given of an order. Errors: as `Book.reading`."""
    lines = quote_lines(book_now(), order.id)
    if not lines:
        return GivenSoFar()
    return GivenSoFar(
        lines=lines,
        order_changed=order.content.order != quoted_order(book_now(), order.id),
        workshop_changed=shop_now().version != lines[0].workshop_version,
    )
