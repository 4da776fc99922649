"""The server of the pages: for this computer unless told otherwise, with bounds of its own."""

from __future__ import annotations

import logging
from typing import Any

from flask import Flask
from waitress.channel import HTTPChannel  # type: ignore[import-untyped]
from waitress.task import ErrorTask  # type: ignore[import-untyped]

from quoting.web.address import address_of
from quoting.web.app import MOST_BYTES
from quoting.web.security import HEADERS, name_cookie

MOST_BODY = 2 * MOST_BYTES
"""What is taken in at all; between the two the pages say in words that it is too much."""

THREADS = 8
"""Twice as many as large orders can hold, so that small ones always find one free."""

IDLE_SECONDS = 20
"""After which a connection on which nothing comes is closed."""


class GuardedError(ErrorTask):  # type: ignore[misc]
    """The server's own answer to what is no request, with the headers of all the others."""

    def execute(self) -> None:
        """Answer."""
        self.response_headers.extend(HEADERS.items())
        super().execute()


class GuardedChannel(HTTPChannel):  # type: ignore[misc]
    """A connection whose failures are answered so."""

    error_task_class = GuardedError


def open_server(app: Flask, port: int) -> Any:
    """Return the server of the pages, listening. Errors: OSError where the port cannot be had.

    What a proxy says of who asked is not believed: anybody could say it.
    """
    from waitress import create_server  # type: ignore[import-untyped]

    # A browser asks for several things at once, which then wait a moment: nothing to warn of.
    logging.getLogger("waitress.queue").setLevel(logging.ERROR)
    address = address_of(app)
    server = create_server(
        app,
        host=address.listens_at,
        port=port,
        url_scheme="https" if address.behind_tls else "http",
        clear_untrusted_proxy_headers=True,
        ident=None,
        threads=THREADS,
        max_request_body_size=MOST_BODY,
        channel_timeout=IDLE_SECONDS,
        cleanup_interval=IDLE_SECONDS // 4,
    )
    server.channel_class = GuardedChannel
    name_cookie(app, server.effective_port)
    return server
