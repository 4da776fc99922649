"""`quoting serve`: the web pages, for this computer alone unless you say otherwise."""

from __future__ import annotations

import argparse
import sys
from collections.abc import Iterator
from contextlib import contextmanager
from pathlib import Path
from typing import TYPE_CHECKING, Any

from quoting.cli.books import add_book, book_address, opened_book, this_moment
from quoting.cli.browser import show_in_browser
from quoting.cli.failures import BadInput, NotDone, mistakes_told
from quoting.cli.host import add_host, asked_address, check_door, tell_who_can_hear
from quoting.cli.job import this_day
from quoting.files.security_log import security_logged
from quoting.rates import kept_rates, kept_rates_path
from quoting.schema import load_workshop
from quoting.wording import FILE_SPEECH, is_locale

if TYPE_CHECKING:
    from quoting.store.book import Book
    from quoting.web.address import Address
    from quoting.web.kept import KeptShop
    from quoting.web.shop import Shop

PORT = 8777
MOST_PORT = 65535


def add_to(commands: Any) -> None:
    """Add the command to the parser's commands."""
    parser = commands.add_parser("serve", help="show the web pages", description=__doc__)
    parser.add_argument("--port", type=int, default=PORT, help=f"default {PORT}; 0: any free one")
    add_host(parser)
    add_book(parser)
    parser.add_argument(
        "--workshop",
        metavar="FILE",
        type=Path,
        help="serve a workshop file, without a book; nothing is kept",
    )
    parser.add_argument(
        "--demo", action="store_true", help="open a book of the demo's, thrown away at the end"
    )
    parser.add_argument(
        "--no-browser", action="store_true", help="do not open the pages in your browser"
    )
    parser.set_defaults(run=run)


def run(args: argparse.Namespace) -> None:
    """Serve the pages until interrupted. Errors: BadInput, NotDone."""
    if not 0 <= args.port <= MOST_PORT:
        raise BadInput(f"--port: {args.port} is no port; they go from 0 to {MOST_PORT}.")
    if sum((args.workshop is not None, args.book is not None, args.demo)) > 1:
        raise BadInput("Give one of --book, --workshop and --demo, not several.")
    address = asked_address(args)
    with _served(args, address) as shop:
        _serve(shop, address, args.port, in_browser=not args.no_browser)


def _serve(shop: Shop | KeptShop, address: Address, port: int, *, in_browser: bool) -> None:
    # Imported here: the other commands have no use for them.
    from quoting.web import create_app
    from quoting.web.server import open_server

    try:
        server = open_server(create_app(shop, address), port)
    except OSError as error:
        reason = error.strerror or error
        raise NotDone(f"Port {port} cannot be had ({reason}); try --port 0.") from error
    url = address.url(server.effective_port)
    tell_who_can_hear(address)
    sys.stderr.write(f"Open {url} in a browser. Ctrl+C ends it.\n")
    sys.stderr.flush()
    if in_browser:
        show_in_browser(url)
    try:
        server.run()
    finally:
        server.close()


@contextmanager
def _served(args: argparse.Namespace, address: Address) -> Iterator[Shop | KeptShop]:
    """Yield what the pages are served from, and let go of it at the end.

    Errors: BadInput, too, where others could ask for what no passphrase keeps from them.
    """
    if args.workshop is not None:
        check_door(address, args, None)
        yield _shop_of(args.workshop)
    elif args.demo:
        from quoting.cli.demo_book import demo_book

        check_door(address, args, None)
        with demo_book() as book:
            yield _kept_shop(book, passing=True)
    else:
        with opened_book(book_address(args)) as book, security_logged(book.path):
            check_door(address, args, book)
            shop = _kept_shop(book)
            if shop.copy_daily():
                sys.stderr.write("The copy of the day could not be made; is there room for it?\n")
            yield shop


def _kept_shop(book: Book, *, passing: bool = False) -> KeptShop:
    from quoting.web.kept import KeptShop

    file = kept_rates_path()
    return KeptShop(
        book=book,
        now=this_moment,
        today=this_day,
        passing=passing,
        rates=kept_rates(file),
        rates_file=file,
    )


def _shop_of(file: Path) -> Shop:
    from quoting.web.shop import open_shop

    with mistakes_told(lambda _: file, FILE_SPEECH):
        shop = open_shop(load_workshop(file, is_locale), today=this_day, file=str(file))
    rates_file = kept_rates_path()
    return shop.keeping_rates_in(rates_file).with_rates(kept_rates(rates_file))
