"""Where the pages are to answer, and what has to be so before others can ask for them."""

from __future__ import annotations

import argparse
import ipaddress
import re
import shlex
import socket
import sys
from typing import TYPE_CHECKING

from quoting.cli.failures import BadInput

if TYPE_CHECKING:
    from quoting.store.book import Book
    from quoting.web.address import Address

_NAME = re.compile(r"(?=.{1,253}$)[a-z0-9](?:[a-z0-9.-]*[a-z0-9])?")

_OVERHEARD = (
    "What goes to other devices this way can be overheard and changed by anybody on the same "
    "network, the passphrase too: do it only in a home network that you trust, never in a café's "
    "or across the internet. A proxy that speaks TLS, with --tls-in-front, is safe there, too.\n"
)


def add_host(parser: argparse.ArgumentParser) -> None:
    """Add the arguments that say where the pages answer."""
    parser.add_argument(
        "--host",
        metavar="H",
        help="answer at this address or name of this computer, for other devices, too; "
        "0.0.0.0: at all of its addresses (wants a passphrase)",
    )
    parser.add_argument(
        "--tls-in-front",
        action="store_true",
        help="a proxy on this computer speaks TLS for --host, and passes on what is asked",
    )


def asked_address(args: argparse.Namespace) -> Address:
    """Return where the pages are to answer. Errors: BadInput."""
    from quoting.web.address import AT_HOME, Address  # with the pages, which are served only here

    if args.host is None:
        if args.tls_in_front:
            raise BadInput("--tls-in-front: say with --host by which name the proxy is asked.")
        return AT_HOME
    host = _read_host(args.host)
    name = _as_sent(host)
    if args.tls_in_front:
        return Address(names=frozenset({name}), shown=name, behind_tls=True)
    number = _number_of(host)
    if not number.is_unspecified:
        names = frozenset({name, _as_sent(str(number))})
        own = AT_HOME.names if number.is_loopback else frozenset()
        return Address(listens_at=str(number), names=names | own, shown=name)
    own_name = socket.gethostname().lower()
    names = AT_HOME.names | {own_name, f"{own_name}.local"}
    return Address(listens_at=str(number), names=names, any_number=True)


def check_door(address: Address, args: argparse.Namespace, book: Book | None) -> None:
    """Refuse to show others what no passphrase keeps from them. Errors: BadInput."""
    if not address.is_beyond:
        return
    if book is None:
        raise BadInput("--host: only a book has a passphrase, so only a book is shown to others.")
    from quoting.store.door import has_passphrase  # loaded with the book

    if not has_passphrase(book):
        named = f" --book {shlex.quote(args.book)}" if args.book else ""
        raise BadInput(
            f"--host {args.host}: others could open these pages. Set a passphrase first, with "
            f"`quoting passphrase{named}`."
        )


def tell_who_can_hear(address: Address) -> None:
    """Say what plain HTTP means beyond this computer, and which addresses are not beyond it."""
    from quoting.web.address import LOOPBACK_NAMES

    if address.is_beyond and not address.behind_tls:
        sys.stderr.write(_OVERHEARD)
    if not address.is_beyond and address.shown not in LOOPBACK_NAMES:
        sys.stderr.write("That is an address for this computer alone: no other device can ask.\n")
    if address.any_number:
        sys.stderr.write("Other devices ask for the pages by an address of this computer's.\n")


def _read_host(typed: str) -> str:
    """Return an address or a name without the brackets of an address."""
    host = typed.strip().lower().removeprefix("[").removesuffix("]")
    if _NAME.fullmatch(host) or _as_number(host) is not None:
        return host
    raise BadInput(f"--host: {typed} is no address and no name; write it without http:// or port.")


def _number_of(host: str) -> ipaddress.IPv4Address | ipaddress.IPv6Address:
    """Return the address of a name, which has to be one of this computer's to listen at."""
    number = _as_number(host)
    if number is not None:
        return number
    try:
        found = socket.getaddrinfo(host, None, type=socket.SOCK_STREAM)
    except OSError as error:
        raise BadInput(f"--host: nothing on this network is known as {host}.") from error
    return ipaddress.ip_address(str(found[0][4][0]).partition("%")[0])


def _as_number(host: str) -> ipaddress.IPv4Address | ipaddress.IPv6Address | None:
    try:
        return ipaddress.ip_address(host)
    except ValueError:
        return None


def _as_sent(host: str) -> str:
    """Return a host as browsers send it: an address with colons in brackets."""
    return f"[{host}]" if ":" in host else host
