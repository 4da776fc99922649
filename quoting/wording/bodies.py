"""How the body of a design is told in words."""

from __future__ import annotations

from collections.abc import Callable
from typing import Any

from quoting.core.order.bodies import Body
from quoting.core.order.in_rows import InRows


def _sections(body: InRows) -> tuple[str, ...]:
    return tuple(
        ", ".join(f"{stripe.rows} {stripe.colour}" for stripe in section.stripes)
        for section in body.sections
    )


TOLD: dict[type[Body], Callable[[Any], tuple[str, ...]]] = {InRows: _sections}
"""What tells each kind of body, which takes that kind alone."""


def body_words(body: Body) -> tuple[str, ...]:
    """Return the stripes of a body, section by section, in the order worked: `2 teal, 1 oat`."""
    return TOLD[type(body)](body)
