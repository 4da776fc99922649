"""What every answer carries, and which requests are turned away before anything is read."""

from __future__ import annotations

from flask import Flask, Response, abort, request

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


def guard(app: Flask) -> None:
    """Answer only to loopback names, and send the security headers with everything."""
    app.before_request(_check_host)
    app.after_request(_add_headers)


def _check_host() -> None:
    """Refuse a name that somebody else's address book points here (DNS rebinding)."""
    if _without_port(request.host.lower()) not in LOOPBACK:
        abort(400, "This page answers only at 127.0.0.1 and localhost.")


def _without_port(host: str) -> str:
    name, colon, port = host.rpartition(":")
    return name if colon and port.isdecimal() else host


def _add_headers(response: Response) -> Response:
    for name, value in HEADERS.items():
        response.headers.setdefault(name, value)
    if response.mimetype == "text/html":
        # A page made by sending a form is kept for Back, which could not ask for it anew.
        kept = "no-cache" if request.method == "POST" else "no-store"
        response.headers.setdefault("Cache-Control", f"private, {kept}")
    return response
