"""How far the size that comes out is off what was asked."""

from __future__ import annotations

from quoting.core.quote.quote import Quote
from quoting.wording import Speech, listed

LEAST_CM = 0.05
"""Less is no difference that one reads off a tape."""


def size_off_words(quote: Quote, say: Speech, *, by_width: bool = False) -> str:
    """Return by how much the blanket is off, in a sentence; empty where it is as asked.

    `by_width`: its width alone says how large it is to be.
    """
    plan, design = quote.plan, quote.order.design
    off = [(plan.width_cm - design.width_cm, "wider", "narrower")]
    if not by_width:
        off.append((plan.height_cm - design.height_cm, "longer", "shorter"))
    said = [
        f"{say.length(abs(more_cm))} {larger if more_cm > 0 else smaller}"
        for more_cm, larger, smaller in off
        if abs(more_cm) >= LEAST_CM
    ]
    return f"That is {listed(said, 'and')} than asked." if said else ""
