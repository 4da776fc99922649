"""What templates may ask for: figures in the workshop's own notation, and the top bar."""

from __future__ import annotations

from typing import Any

from flask import Flask, current_app, request

from quoting.web.shop import shop_now
from quoting.wording import (
    line_quantity,
    line_rate,
    line_unit,
    line_what,
    part_words,
    pass_words,
    point_words,
    task_words,
)

BAR = {
    "orders": "Orders",
    "sizes": "Sizes",
    "measurements": "Measurements",
    "yarn": "Yarn",
    "workshop": "Workshop",
}
"""The places of the top bar, in order; one shows when its pages are registered."""


def register(app: Flask) -> None:
    """Give templates the workshop's speech, the words of the trade and the top bar."""
    app.context_processor(_shared)
    app.jinja_env.globals.update(
        line_what=line_what,
        line_unit=line_unit,
        line_quantity=line_quantity,
        line_rate=line_rate,
        part_words=part_words,
        pass_words=pass_words,
        point_words=point_words,
        task_words=task_words,
    )


def _shared() -> dict[str, Any]:
    shop = shop_now()
    bar = [(name, title) for name, title in BAR.items() if name in current_app.blueprints]
    return {"shop": shop, "say": shop.speech, "bar": bar, "here": request.blueprint}
