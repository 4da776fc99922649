"""What every answer carries, and which requests are turned away before anything is read."""

from __future__ import annotations

import logging
from typing import NoReturn

from flask import Flask, Response, request
from werkzeug.exceptions import BadRequest, Forbidden, HTTPException

LOOPBACK = frozenset({"localhost", "127.0.0.1", "[::1]"})

POLICY = "; ".join(
    (
        "default-src 'none'",
        "style-src 'self'",
        "script-src 'self'",
        "img-src 'self' data:",
        "connect-src 'self'",
        "form-action 'self'",
        "base-uri 'none'",
        "frame-ancestors 'none'",
    )
)

HEADERS = {
    "Content-Security-Policy": POLICY,
    "X-Content-Type-Options": "nosniff",
    "Referrer-Policy": "same-origin",
    "Cross-Origin-Opener-Policy": "same-origin",
    "Cross-Origin-Resource-Policy": "same-origin",
}

SAFE = frozenset({"GET", "HEAD", "OPTIONS"})
OWN_SITES = frozenset({"same-origin", "none"})
"""What browsers say of a request that one of these pages, or the user herself, has made."""

KEPT_NOWHERE = frozenset({"orders.quote", "orders.answer", "sizes.answer", "kept_orders.save"})
"""Answers to a form that nobody goes back to: the buyer's page, and parts of a page."""

log = logging.getLogger("quoting.web")


class WrongHost(BadRequest):
    """A request for a name that is not this computer's own."""

    description = "This page answers only at 127.0.0.1 and localhost."


class WrongSite(Forbidden):
    """A request that a page of another site has made."""

    description = "This was sent by a page of another site, so it was not read."


TURNED_AWAY = (WrongHost, WrongSite)


def guard(app: Flask) -> None:
    """Answer only to loopback names and to no other site, and send security headers always.

    It is to be the first to see a request, so that nothing is read of one that is turned away.
    """
    app.before_request(_check_host)
    app.before_request(_check_site)
    app.after_request(_add_headers)


def name_cookie(app: Flask, port: int) -> None:
    """Name the session's cookie for the program and its port.

    Cookies are kept by host without the port, so that two programs would take each other's.
    """
    app.config["SESSION_COOKIE_NAME"] = f"quoting-{port}"


def turn_away(why: HTTPException) -> NoReturn:
    """Refuse a request, and leave a line in the log that bears no word of it."""
    page = request.endpoint or "no page of these"
    log.warning("Turned away, %s, %s: %s", request.method[:8], page, why.description)
    raise why


def _check_host() -> None:
    """Refuse a name that somebody else's address book points here (DNS rebinding)."""
    try:
        host = request.host.lower()
    except BadRequest:
        turn_away(WrongHost())
    if _without_port(host) not in LOOPBACK:
        turn_away(WrongHost())


def _check_site() -> None:
    """Refuse what a page of another site asks, unless it only leads here.

    Browsers say who asks in `Sec-Fetch-Site`, older ones at least in `Origin`; what says neither
    is no page, and a form still needs its token.
    """
    site = request.headers.get("Sec-Fetch-Site")
    if site is not None:
        if site not in OWN_SITES and not _leads_here():
            turn_away(WrongSite())
        return
    origin = request.headers.get("Origin")
    if request.method not in SAFE and origin not in (None, request.host_url.rstrip("/")):
        turn_away(WrongSite())


def _leads_here() -> bool:
    """Return whether a link elsewhere was followed, in a window of its own."""
    went = request.headers.get("Sec-Fetch-Mode"), request.headers.get("Sec-Fetch-Dest")
    return request.method in SAFE and went == ("navigate", "document")


def _without_port(host: str) -> str:
    name, colon, port = host.rpartition(":")
    return name if colon and port.isdecimal() else host


def _add_headers(response: Response) -> Response:
    for name, value in HEADERS.items():
        response.headers.setdefault(name, value)
    if response.mimetype == "text/html":
        kept = request.method == "POST" and request.endpoint not in KEPT_NOWHERE
        # A form's page is kept for Back, which could not ask for it anew without sending it again.
        how = "no-cache" if kept else "no-store"
        response.headers.setdefault("Cache-Control", f"private, {how}")
    return response
