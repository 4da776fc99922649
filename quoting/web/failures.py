"""Pages for what goes wrong with a request, in the same look as the others."""

from __future__ import annotations

from collections.abc import Callable

from flask import Flask, Response, current_app, redirect, render_template, request, url_for
from flask.typing import ResponseReturnValue
from flask_wtf.csrf import CSRFError
from werkzeug.exceptions import HTTPException

from exports.papers.typesetter import NoTypesetter
from quoting.core.ground.codes import MistakeCode
from quoting.core.ground.errors import Refused
from quoting.web.orders import pages as orders
from quoting.web.security import TURNED_AWAY, log
from quoting.web.shop import NoWorkshop, shop_if_any
from quoting.web.sizes import pages as comparing
from quoting.web.statuses import REFUSED
from quoting.web.workshop import forms_sent as workshop_forms
from quoting.wording import BOOK_FAILURES, FILE_SPEECH, mistake_sentence

_WORDS = {
    400: "That request could not be read.",
    404: "There is no such page.",
    405: "This page is not asked in that way.",
    409: "The page is from before the program was started again: nothing was done. Once more.",
    413: "That is more than can be taken at once.",
    422: "That cannot be taken as it is.",
    501: "There is no PDF yet on this computer.",
    500: "Something went wrong here, and it is not your doing.",
    503: "The book cannot be read or written to just now.",
    429: "Several large orders are being worked out just now; ask again in a moment.",
}

BOOK_FAILS, NOT_THERE, STALE, NOT_INSTALLED = 503, 404, 409, 501

_DEEDS = frozenset(
    {"door.leave", "forgetting.forget"}
    | {"first_steps.read", "versions.read", "versions.back"}
    | {"papers.receipt", "printed.cancel"}
    | {"making.hook", "corrections.take_back", "took.take", "row.back"}
    | {"giving.give_as_kept", "given_quotes.accept", "given_quotes.decline"}
    | {f"kept_orders.{deed}" for deed in ("new", "read", "copy", "stage", "bring_back", "aside")}
)
"""What a button alone does, without a form in which anything was typed."""

_MISSING = frozenset(
    {MistakeCode.ORDER_MISSING, MistakeCode.QUOTE_MISSING, MistakeCode.PAPER_MISSING}
)
"""What an address names that is not in the book."""

_KEPT_HEADERS = frozenset({"Allow", "Retry-After"})
"""What a failure says beside its page."""


def handle_failures(app: Flask) -> None:
    """Give every failure a plain page; a form that waited too long keeps all that was typed."""
    app.register_error_handler(CSRFError, _stale)
    app.register_error_handler(HTTPException, _failed)
    app.register_error_handler(Refused, _refused)
    app.register_error_handler(NoWorkshop, _no_workshop)
    app.register_error_handler(NoTypesetter, _no_typesetter)
    for turned_away in TURNED_AWAY:
        app.register_error_handler(turned_away, _turned_away)


def _stale(error: CSRFError) -> ResponseReturnValue:
    log.warning("Not done, %s: %s", request.endpoint, error.description)
    if request.endpoint == "orders.read":
        # A file comes alone, without the order that the tab keeps.
        return redirect(url_for("orders.once_more"), 303)
    if request.endpoint in _DEEDS:
        page = render_template("failures/failure.html", code=STALE, words=_WORDS[STALE], said="")
        return page, STALE
    pages = {"sizes": comparing.resume, "workshop_forms": workshop_forms.resume}
    if request.blueprint in {"own_pages", "first_steps", "door"}:
        from quoting.web.door import pages as door  # loaded already, with a book
        from quoting.web.workshop import first_steps, own_forms_sent

        pages |= {
            "own_pages": own_forms_sent.resume,
            "first_steps": first_steps.resume,
            "door": door.resume,
        }
    if request.blueprint in {"making", "corrections", "papers"}:
        from quoting.web.making import corrections
        from quoting.web.making import pages as making
        from quoting.web.papers import pages as papers

        of_making = {"making": making.resume, "corrections": corrections.resume}
        pages |= of_making | {"papers": papers.resume}
    if request.blueprint == "row":
        from quoting.web.guide import row_pages

        pages |= {"row": row_pages.resume}
    return _resumed(pages.get(request.blueprint or "", orders.resume))


def _resumed(page: Callable[[], str]) -> ResponseReturnValue:
    """Return the page of a form that waited too long, or what is told where there is none."""
    try:
        return page(), STALE
    except Exception as error:  # of what a handler raises, Flask asks no other
        return current_app.handle_user_exception(error)


def _turned_away(error: HTTPException) -> ResponseReturnValue:
    """Return one sentence alone: whoever is turned away is not told whose workshop this is."""
    return Response(f"{error.description}\n", error.code, content_type="text/plain; charset=utf-8")


def _no_workshop(error: NoWorkshop) -> ResponseReturnValue:
    """Lead to where a workshop is begun."""
    del error
    return redirect(url_for("first_steps.show"), 303)


def _no_typesetter(error: NoTypesetter) -> ResponseReturnValue:
    code = NOT_INSTALLED
    page = render_template("failures/failure.html", code=code, words=_WORDS[code], said=str(error))
    return page, code


def _refused(refused: Refused) -> ResponseReturnValue:
    """Return what is wrong with an order that no page of its own can show."""
    shop = shop_if_any()
    speech = FILE_SPEECH if shop is None else shop.speech
    said = " ".join(mistake_sentence(m, speech) for m in refused.mistakes)
    code = _status_of(refused.mistakes[0].code)
    page = render_template("failures/failure.html", code=code, words=_WORDS[code], said=said)
    return page, code


def _status_of(code: MistakeCode) -> int:
    if code in _MISSING:
        return NOT_THERE
    return BOOK_FAILS if code in BOOK_FAILURES else REFUSED


def _failed(error: HTTPException) -> ResponseReturnValue:
    code = error.code or 500
    words = _WORDS.get(code, error.name)
    page = render_template("failures/failure.html", code=code, words=words, said="")
    kept = [(name, value) for name, value in error.get_headers() if name in _KEPT_HEADERS]
    return page, code, kept
