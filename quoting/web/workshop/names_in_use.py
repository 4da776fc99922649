"""What an open order uses is not taken away in silence."""

from __future__ import annotations

from collections.abc import Iterable

from quoting.core.workshop.workshop import Workshop
from quoting.store.book import Book
from quoting.store.order_uses import Lost, OrderUse, order_uses
from quoting.store.renames import Renames


def uses_of_lost(
    before: Workshop, after: Workshop, book: Book, renames: Renames | None = None
) -> tuple[OrderUse, ...]:
    """Return the open orders that use a yarn, a colour, a pattern or a motif that is gone.

    Those that are not yet quoted follow `renames`.
    """
    yarns = _names(y.name for y in before.yarns) - _names(y.name for y in after.yarns)
    patterns = _names(p.name for p in before.patterns) - _names(p.name for p in after.patterns)
    motifs = _names(m.name for m in before.motifs) - _names(m.name for m in after.motifs)
    new_names = renames.yarns if renames else {}
    there = {yarn.name: yarn.colours.keys() for yarn in after.yarns}
    colours = {
        (name, colour)
        for yarn in before.yarns
        if (name := new_names.get(yarn.name, yarn.name)) in there
        for colour in yarn.colours.keys() - there[name]
    }
    if not (yarns or patterns or motifs or colours):
        return ()
    lost = Lost(yarns=yarns, patterns=patterns, motifs=motifs, colours=frozenset(colours))
    return order_uses(book, lost, renames=renames)


def _names(names: Iterable[str]) -> frozenset[str]:
    return frozenset(names)
