"""What every answer carries, and which requests are turned away before anything is read."""

from __future__ import annotations

import logging
from typing import NoReturn

from flask import Flask, Response, g, request
from werkzeug.exceptions import BadRequest, Forbidden

from quoting.files.security_log import SecurityEvent, tell_event
from quoting.web.address import AT_HOME, address_now

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

KEPT_NOWHERE = frozenset(
    {"orders.quote", "to_send.message", "orders.answer", "sizes.answer", "kept_orders.save"}
)
"""Answers to a form that nobody goes back to: the buyer's page, and parts of a page."""

log = logging.getLogger("quoting.web")


class WrongHost(BadRequest):
    """A request for a name that is not this computer's own."""

    description = "This page answers only at 127.0.0.1 and localhost."
    event = SecurityEvent.FOREIGN_NAME


class WrongName(WrongHost):
    """A request for a name that others than this computer's user were not given."""

    description = "This page does not answer to that name, only to the one it was started with."


class WrongSite(Forbidden):
    """A request that a page of another site has made."""

    description = "This was sent by a page of another site, so it was not read."
    event = SecurityEvent.FOREIGN_PAGE


class NoPassphrase(Forbidden):
    """A request from beyond this computer where no passphrase is asked any more."""

    description = "This page is not shown to others while it has no passphrase."
    event = SecurityEvent.NO_PASSPHRASE


TurnedAway = WrongHost | WrongSite | NoPassphrase
TURNED_AWAY = (WrongHost, WrongName, WrongSite, NoPassphrase)


def guard(app: Flask) -> None:
    """Answer only to its own names and to no other site, and send security headers always.

    It is to be the first to see a request, so that nothing is read of one that is turned away.
    """
    app.before_request(_check_host)
    app.before_request(_check_site)
    app.after_request(_add_headers)


def name_cookie(app: Flask, port: int) -> None:
    """Name the session's cookie for the program and its port.

    Cookies are kept by host without the port, so that two programs would take each other's.
    """
    app.config.update(
        SESSION_COOKIE_NAME=f"quoting-{port}",
        DOOR_COOKIE_NAME=f"{app.config['DOOR_COOKIE_NAME']}-{port}",
    )


def turn_away(why: TurnedAway) -> NoReturn:
    """Refuse a request, and leave a line in the log that bears no word of it."""
    page = request.endpoint or "no page of these"
    log.warning("Turned away, %s, %s: %s", request.method[:8], page, why.description)
    tell_event(why.event, request.remote_addr)
    raise why


def _check_host() -> None:
    """Refuse a name that somebody else's address book points here (DNS rebinding)."""
    address = address_now()
    wrong = WrongHost() if address == AT_HOME else WrongName()
    try:
        host = request.host
    except BadRequest:
        turn_away(wrong)
    if not address.answers_to(host):
        turn_away(wrong)


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


def _add_headers(response: Response) -> Response:
    for name, value in HEADERS.items():
        response.headers.setdefault(name, value)
    if g.get("is_private"):
        response.headers["Cache-Control"] = "private, no-store"
    elif response.mimetype == "text/html":
        kept = request.method == "POST" and request.endpoint not in KEPT_NOWHERE
        # A form's page is kept for Back, which could not ask for it anew without sending it again.
        how = "no-cache" if kept else "no-store"
        response.headers.setdefault("Cache-Control", f"private, {how}")
    return response
