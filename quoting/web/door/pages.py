"""The sign-in page, and the way out."""

from __future__ import annotations

from math import ceil

from flask import (
    Blueprint,
    current_app,
    g,
    make_response,
    redirect,
    render_template,
    request,
    session,
    url_for,
)
from flask.typing import ResponseReturnValue

from quoting.files.security_log import SecurityEvent, tell_event
from quoting.store.door import LetIn, Missed, TooSoon, end_sign_in, try_passphrase
from quoting.web.door.local_path import local_path
from quoting.web.door.watch import give_token, sent_token, take_token
from quoting.web.kept import book_now, moment_now
from quoting.wording import wait_words

blueprint = Blueprint("door", __name__, url_prefix="/door")

REFUSED, TOO_SOON = 422, 429

_TOLD = "quoting-waits-told"
"""After which misses it has been written down that somebody did not wait: not a thousand times."""


@blueprint.get("")
def show() -> ResponseReturnValue:
    """Show the sign-in page; who is in already goes on to where she wanted."""
    to = local_path(request.args.get("to", ""))
    return _sign_in(to) if _is_shut() else redirect(to, 303)


@blueprint.post("")
def enter() -> ResponseReturnValue:
    """Let in whoever has the passphrase, and lead her to the page that she asked for."""
    to = local_path(request.form.get("to", ""))
    if not _is_shut():
        return redirect(to, 303)
    tried = try_passphrase(book_now(), request.form.get("passphrase", ""), now=moment_now())
    _tell(tried)
    if isinstance(tried, LetIn):
        session.clear()  # with it goes the token of the forms from before
        response = make_response(redirect(to, 303))
        give_token(response, tried.token)
        return response
    wait_s = ceil(tried.wait_s)
    if isinstance(tried, Missed):
        said = f"That is not the passphrase. The next is looked at {wait_words(wait_s)}."
        return _sign_in(to, said), REFUSED
    said = f"Too soon after a wrong one, so it was not looked at. Try again {wait_words(wait_s)}."
    return _sign_in(to, said), TOO_SOON, {"Retry-After": str(wait_s)}


@blueprint.post("/out")
def leave() -> ResponseReturnValue:
    """End this browser's sign-in."""
    token = sent_token()
    if token is not None and _is_inside():
        end_sign_in(book_now(), token)
        tell_event(SecurityEvent.SIGNED_OUT, request.remote_addr)
    session.clear()
    response = make_response(redirect(url_for("door.show"), 303))
    take_token(response)
    return response


def resume() -> str:
    """Return the sign-in page again, where its form comes from before a restart."""
    return _sign_in(local_path(request.form.get("to", "")), "This page was too old. Once more.")


def _tell(tried: LetIn | Missed | TooSoon) -> None:
    """Write down what became of a try; of those that came too soon after one miss, the first."""
    told: set[int] = current_app.extensions.setdefault(_TOLD, set())
    if isinstance(tried, TooSoon):
        if tried.misses not in told:
            told.add(tried.misses)
            tell_event(SecurityEvent.TRIED_TOO_SOON, request.remote_addr)
        return
    let_in = isinstance(tried, LetIn)
    if let_in:
        told.clear()
    event = SecurityEvent.SIGNED_IN if let_in else SecurityEvent.WRONG_PASSPHRASE
    tell_event(event, request.remote_addr)


def _sign_in(to: str, said: str = "") -> str:
    return render_template("door/sign_in.html", to=to, said=said, unread=False)


def _is_shut() -> bool:
    """Return whether there is a passphrase to ask this browser for."""
    return not g.get("signed_in", True)


def _is_inside() -> bool:
    return bool(g.get("signed_in", False))
