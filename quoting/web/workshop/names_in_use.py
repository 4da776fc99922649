"""What an open order uses is not taken away in silence."""

from __future__ import annotations

from collections.abc import Iterable

from quoting.core.workshop.workshop import Workshop
from quoting.store.book import Book
from quoting.store.order_uses import OrderUse, order_uses


def uses_of_lost(before: Workshop, after: Workshop, book: Book) -> tuple[OrderUse, ...]:
    """Return the open orders that use a yarn, a colour or a pattern that is no longer there."""
    yarns = _names(y.name for y in before.yarns) - _names(y.name for y in after.yarns)
    patterns = _names(p.name for p in before.patterns) - _names(p.name for p in after.patterns)
    colours = {
        (yarn.name, colour)
        for yarn in before.yarns
        if yarn.name not in yarns
        for colour in yarn.colours.keys() - after.yarn(yarn.name).colours.keys()
    }
    if not (yarns or patterns or colours):
        return ()
    return order_uses(book, yarns=yarns, patterns=patterns, colours=frozenset(colours))


def _names(names: Iterable[str]) -> frozenset[str]:
    return frozenset(names)
