"""Where the pages are found: what the server listens at, and the names that it answers to."""

from __future__ import annotations

import ipaddress
from dataclasses import dataclass
from typing import cast

from flask import Flask, current_app

LOOPBACK = "127.0.0.1"
LOOPBACK_NAMES = frozenset({"localhost", LOOPBACK, "[::1]"})

_ADDRESS = "quoting-address"


@dataclass(frozen=True, slots=True, kw_only=True)
class Address:
    """What the server listens at, a number of this computer's, and the `names` it answers to.

    Names are those that a browser sends, in small letters and without a port. `any_number` answers
    to every number, too: nobody's address book can point those here. `behind_tls` says that a
    proxy on this computer speaks TLS with the browsers and passes on what they ask.
    """

    listens_at: str = LOOPBACK
    names: frozenset[str] = LOOPBACK_NAMES
    shown: str = LOOPBACK
    any_number: bool = False
    behind_tls: bool = False

    @property
    def is_beyond(self) -> bool:
        """Whether others than who sits at this computer can ask for the pages."""
        return self.behind_tls or not ipaddress.ip_address(self.listens_at).is_loopback

    def answers_to(self, host: str) -> bool:
        """Return whether a request for a host, with its port or without, is one for here."""
        name, colon, port = host.lower().rpartition(":")
        if not (colon and port.isdecimal()):
            name = host.lower()
        return name in self.names or (self.any_number and _is_number(name.strip("[]")))

    def url(self, port: int) -> str:
        """Return what to open in a browser, by the port that the server has."""
        if self.behind_tls:
            return f"https://{self.shown}/"
        return f"http://{self.shown}:{port}/"


AT_HOME = Address()
"""For this computer alone."""


def serve_at(app: Flask, address: Address) -> None:
    """Have an application answer at an address and nowhere else."""
    app.extensions[_ADDRESS] = address


def address_of(app: Flask) -> Address:
    """Return where an application answers."""
    return cast("Address", app.extensions[_ADDRESS])


def address_now() -> Address:
    """Return where this application answers."""
    return address_of(current_app)


def _is_number(name: str) -> bool:
    try:
        ipaddress.ip_address(name)
    except ValueError:
        return False
    return True
