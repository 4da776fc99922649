"""The weeks ahead: the turns of all agreed orders, in a picture and a table, and the hours free."""

from __future__ import annotations

from flask import Blueprint, render_template
from markupsafe import Markup

from exports.charts import weeks_chart
from quoting.core.workshop.weeks import weeks_ahead
from quoting.store.queue import agreed_without_quote
from quoting.web.kept import book_now
from quoting.web.queue_now import queue_now
from quoting.web.shop import shop_now
from quoting.wording import turn_words

blueprint = Blueprint("weeks", __name__)


@blueprint.get("/orders/weeks")
def show() -> str:
    """Show when each agreed order is made, and which hours of the weeks to come are free."""
    shop, queue = shop_now(), queue_now()
    workshop, today = shop.workshop, shop.today()
    drawn = weeks_chart(queue.turns, workshop, shop.speech, today=today) if queue.turns else ""
    return render_template(
        "book/weeks.html",
        here="orders",
        turns=queue.turns,
        turn_words=turn_words,
        # The chart escapes every word that it writes.
        picture=Markup(drawn),  # noqa: S704
        weeks=weeks_ahead(queue, workshop, today=today),
        without_quote=agreed_without_quote(book_now()),
    )
