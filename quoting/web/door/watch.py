"""Who asks for a page of a book, before anything of the request is read."""

from __future__ import annotations

from flask import Flask, Response, current_app, g, redirect, render_template, request, url_for
from flask.typing import ResponseReturnValue

from quoting.store.door import LONGEST, Standing, standing_of
from quoting.web.address import address_now
from quoting.web.kept import book_now, moment_now
from quoting.web.security import SAFE, NoPassphrase, turn_away
from quoting.web.shop import look_again

OUTSIDE = 403
"""The status of what was sent by somebody who is not signed in, and was not read."""

_OPEN_TO_ALL = frozenset({"static", "door.show", "door.enter"})
"""What there is to see from outside: the sign-in page, and the style sheets of every page."""


def watch(app: Flask) -> None:
    """Lead whoever is not signed in to the sign-in page, where the book has a passphrase.

    It is asked on every computer, this one too: who else sits at it is not known either.
    """
    app.before_request(_check)


def _check() -> ResponseReturnValue | None:
    if request.endpoint == "static":
        return None
    g.shop = None  # nobody outside is told whose workshop this is, whatever fails
    standing = standing_of(book_now(), sent_token(), now=moment_now())
    if standing is Standing.OPEN and address_now().is_beyond:
        turn_away(NoPassphrase())
    if standing is not Standing.OPEN:
        g.is_private, g.signed_in = True, standing is Standing.INSIDE
    if standing is not Standing.OUTSIDE:
        look_again()
        return None
    if request.endpoint in _OPEN_TO_ALL:
        return None
    if request.method in SAFE:
        return redirect(url_for("door.show", to=request.full_path.rstrip("?")), 303)
    return render_template("door/sign_in.html", unread=True, to="", said=""), OUTSIDE


def sent_token() -> str | None:
    """Return the token that a browser bears, None where it bears none."""
    return request.cookies.get(current_app.config["DOOR_COOKIE_NAME"])


def give_token(response: Response, token: str) -> None:
    """Have the browser bear a token from now on.

    A link elsewhere may lead to a page (`Lax`): a maker who comes from her letters would find the
    door shut otherwise, and no page changes anything by being opened.
    """
    response.set_cookie(
        current_app.config["DOOR_COOKIE_NAME"],
        token,
        max_age=LONGEST,
        secure=address_now().behind_tls,
        httponly=True,
        samesite="Lax",
    )


def take_token(response: Response) -> None:
    """Have the browser forget its token."""
    response.delete_cookie(
        current_app.config["DOOR_COOKIE_NAME"],
        secure=address_now().behind_tls,
        httponly=True,
        samesite="Lax",
    )
