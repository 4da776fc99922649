"""Pages for what goes wrong with a request, in the same look as the others."""

from __future__ import annotations

from flask import Flask, redirect, render_template, request, url_for
from flask.typing import ResponseReturnValue
from flask_wtf.csrf import CSRFError
from werkzeug.exceptions import HTTPException

from quoting.web import comparing, orders, workshop_forms

_WORDS = {
    400: "That request could not be read.",
    404: "There is no such page.",
    405: "This page is not asked in that way.",
    413: "That is more than can be taken at once.",
    500: "Something went wrong here, and it is not your doing.",
}


def handle_failures(app: Flask) -> None:
    """Give every failure a plain page; a form that waited too long keeps all that was typed."""
    app.register_error_handler(CSRFError, _stale)
    app.register_error_handler(HTTPException, _failed)


def _stale(error: CSRFError) -> ResponseReturnValue:
    del error
    if request.endpoint == "orders.read":
        # A file comes alone, without the order that the tab keeps.
        return redirect(url_for("orders.once_more"), 303)
    pages = {"sizes": comparing.resume, "workshop_forms": workshop_forms.resume}
    return pages.get(request.blueprint or "", orders.resume)(), 409


def _failed(error: HTTPException) -> ResponseReturnValue:
    code = error.code or 500
    words = _WORDS.get(code, error.name)
    said = error.description if code == 400 and "127.0.0.1" in str(error.description) else ""
    return render_template("failures/failure.html", code=code, words=words, said=said), code
