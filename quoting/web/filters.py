"""What templates may ask for: figures in the workshop's own notation, and the top bar."""

from __future__ import annotations

from collections.abc import Callable, Iterator
from typing import Any

from flask import Flask, current_app, g, request
from jinja2 import pass_context
from jinja2.runtime import Context
from markupsafe import Markup

from exports.papers.typesetter import can_set
from quoting.core.quote.advice import MANY_ENDS
from quoting.core.weighing.calmer_designs import can_be_calmed
from quoting.core.weighing.neighbours import has_neighbours
from quoting.web.book.mark import order_home, sent_mark
from quoting.web.long_tables import beginning
from quoting.web.orders import reckonings
from quoting.web.orders.body_forms import FORMS, counts_template
from quoting.web.shop import shop_if_any, speech_now
from quoting.wording import (
    ahead_words,
    category_words,
    change_words,
    earning_short,
    exchange_rate,
    exchange_words,
    fabric_words,
    foundation_words,
    hours_widened_words,
    line_quantity,
    line_rate,
    line_unit,
    line_what,
    number_words,
    off_sentence,
    outturn_words,
    part_words,
    pass_words,
    point_words,
    price_low,
    ranges_words,
    ready_late,
    refusal_words,
    rows_heading,
    rule_words,
    shape_words,
    stage_words,
    stitch_names_meant,
    sureness_words,
    task_words,
    timed_words,
    wish_words,
    work_words,
)
from quoting.wording.ends import ends_briefly, ends_to_do
from quoting.wording.shapes import asked_size, made_size, sides_note, width_note
from quoting.wording.trade_words import centimetre_words

BAR = {
    "orders": "Orders",
    "sizes": "Sizes",
    "measurements": "Measurements",
    "yarn": "Yarn",
    "workshop": "Workshop",
}
"""The places of the top bar, in order; one shows when its pages are registered."""

SUMS = (
    reckonings.body_gauge,
    reckonings.main_gauge,
    reckonings.task_sum,
    reckonings.yarn_sum,
    reckonings.reserve_words,
    reckonings.ends_words,
    reckonings.border_round_words,
    reckonings.price_sum,
    reckonings.target_words,
    reckonings.earned_sum,
    reckonings.bare_yarn,
)

_DOT = Markup(
    '<svg class="dot" viewBox="0 0 10 10" width="16" height="16" aria-hidden="true">'
    '<circle cx="5" cy="5" r="4.6" fill="{}" stroke="currentColor" stroke-width=".4"/></svg>'
)


def dot(code: str | None) -> Markup:
    """Return a dot of a colour, or an empty one."""
    return _DOT.format(code or "none")


@pass_context
def worded(context: Context, text: str) -> str:
    """Return a text of the program's own in the words and the spelling of this workshop.

    The context keeps it from being said once for all, as the template is compiled.
    """
    del context
    return speech_now().worded(text)


WORDS: tuple[Callable[..., object], ...] = (
    ahead_words,
    asked_size,
    beginning,
    can_be_calmed,
    can_set,
    category_words,
    centimetre_words,
    change_words,
    counts_template,
    dot,
    earning_short,
    ends_briefly,
    ends_to_do,
    exchange_rate,
    exchange_words,
    fabric_words,
    foundation_words,
    has_neighbours,
    hours_widened_words,
    line_quantity,
    line_rate,
    line_unit,
    line_what,
    made_size,
    number_words,
    off_sentence,
    order_home,
    outturn_words,
    part_words,
    pass_words,
    point_words,
    price_low,
    ranges_words,
    ready_late,
    refusal_words,
    rows_heading,
    rule_words,
    sent_mark,
    shape_words,
    sides_note,
    stage_words,
    stitch_names_meant,
    sureness_words,
    task_words,
    timed_words,
    width_note,
    wish_words,
    work_words,
)
"""What templates ask for by its own name, for words or for what a page shows."""


def register(app: Flask) -> None:
    """Give templates the workshop's speech, the words of the trade and the top bar."""
    app.context_processor(_shared)
    app.jinja_env.filters["worded"] = worded
    named = (*WORDS, *SUMS, *_sums_of_bodies())
    app.jinja_env.globals.update({function.__name__: function for function in named})
    app.jinja_env.globals["many_ends"] = MANY_ENDS


def _sums_of_bodies() -> Iterator[Callable[..., object]]:
    for part in FORMS.values():
        yield from part.sums


def _shared() -> dict[str, Any]:
    shop, say = shop_if_any(), speech_now()
    places = BAR if shop is not None else {}
    bar = [(name, title) for name, title in places.items() if name in current_app.blueprints]
    signed_in = g.get("signed_in", False)
    here = request.blueprint
    return {"shop": shop, "say": say, "bar": bar, "here": here, "signed_in": signed_in}
