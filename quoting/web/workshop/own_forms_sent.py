"""What the pages of the workshop do with what is sent: lines changed, a version kept."""

from __future__ import annotations

from typing import Any

from flask import Blueprint, redirect, request, url_for
from flask.typing import ResponseReturnValue

from quoting.schema.several import is_number
from quoting.web.forms.line_changes import Changed
from quoting.web.forms.sent import Sent
from quoting.web.kept import book_now, moment_now
from quoting.web.shop import shop_now
from quoting.web.statuses import REFUSED
from quoting.web.workshop.clocked import take_clocked
from quoting.web.workshop.measurements import measurement_follows
from quoting.web.workshop.own_answer import OwnAnswer, shown
from quoting.web.workshop.own_keeping import kept_or_told
from quoting.web.workshop.own_lines import change_lines
from quoting.web.workshop.own_pages import MEASUREMENTS, OWN_PAGES, WORKSHOP, YARN, OwnPage
from quoting.web.workshop.own_views import page_with
from quoting.web.workshop.pages import workshop_follows
from quoting.web.workshop.suggested import take_suggested
from quoting.web.workshop.usual_minutes import take_usual
from quoting.web.workshop.yarn import yarn_follows

blueprint = Blueprint("own_pages", __name__)

BASED_ON = "based_on"
"""The hidden field with the version that a page was shown from."""

_FOLLOWS = {
    WORKSHOP: workshop_follows,
    MEASUREMENTS: measurement_follows,
    YARN: yarn_follows,
}
"""What each page tells besides its fields."""


@blueprint.post("/workshop")
def workshop() -> ResponseReturnValue:
    """Do what the Workshop page asks."""
    return _sent(WORKSHOP)


@blueprint.post("/measurements")
def measurements() -> ResponseReturnValue:
    """Do what the Measurements page asks."""
    return _sent(MEASUREMENTS)


@blueprint.post("/yarn")
def yarn() -> ResponseReturnValue:
    """Do what the Yarn page asks."""
    return _sent(YARN)


def resume() -> str:
    """Return the page with all that was typed, when it comes from before a restart."""
    page = next(page for page in OWN_PAGES if request.endpoint == page.changed)
    return _page(page, shown(page, request.form, shop_now()), based_on=_based_on(), stale=True)


def _page(page: OwnPage, answer: OwnAnswer, **more: Any) -> str:
    return page_with(page, answer, **_FOLLOWS[page](), **more)


def _sent(page: OwnPage) -> ResponseReturnValue:
    shop, sent = shop_now(), request.form
    asked = sent.get("do", "")
    clocked = take_clocked(asked, sent, shop.notation, shop.today())
    if clocked is not None:
        answer = shown(page, clocked.sent, shop)
        more = {"focus": clocked.focus, "clock_said": clocked.said}
        return _page(page, answer, based_on=_based_on(), **more)
    usual = take_usual(asked, sent, shop.notation)
    changed = Changed(usual, "") if usual is not None else _changed(asked, sent)
    if changed is not None:
        answer = shown(page, changed.sent, shop)
        return _page(page, answer, based_on=_based_on(), focus=changed.focus)
    answer = kept_or_told(page, sent, shop, book_now(), based_on=_based_on(), now=moment_now())
    if answer.version is not None:
        return redirect(url_for(f"{page.name}.show", saved=answer.version.number), 303)
    based_on = shop.version if answer.changed_elsewhere else _based_on()
    return _page(page, answer, based_on=based_on), REFUSED


def _changed(asked: str, sent: Sent) -> Changed | None:
    suggested = take_suggested(asked, sent, shop_now().workshop)
    return change_lines(asked, sent) if suggested is None else suggested


def _based_on() -> int:
    """Return the version that the page was shown from; 0, which is none, where it says none."""
    text = request.form.get(BASED_ON, "")
    return int(text) if is_number(text) else 0
