"""`quoting serve`: the web pages, for this computer alone."""

from __future__ import annotations

import argparse
import sys
from pathlib import Path
from typing import TYPE_CHECKING, Any

from quoting.cli.failures import BadInput, NotDone, mistakes_told
from quoting.cli.job import WORKSHOP_FILE, this_day
from quoting.places import demo_order, demo_workshop
from quoting.rates import kept_rates, kept_rates_path
from quoting.schema import load_order, load_workshop
from quoting.wording import FILE_SPEECH, is_locale

if TYPE_CHECKING:
    from quoting.web.shop import Shop

PORT = 8777
MOST_PORT = 65535


def add_to(commands: Any) -> None:
    """Add the command to the parser's commands."""
    parser = commands.add_parser("serve", help="show the web pages", description=__doc__)
    parser.add_argument("--port", type=int, default=PORT, help=f"default {PORT}; 0: any free one")
    parser.add_argument(
        "--workshop",
        metavar="FILE",
        type=Path,
        help=f"the workshop file (default: {WORKSHOP_FILE} here, else the demo's)",
    )
    parser.add_argument("--demo", action="store_true", help="start with the demo's order")
    parser.set_defaults(run=run)


def run(args: argparse.Namespace) -> None:
    """Serve the pages until interrupted. Errors: BadInput, NotDone."""
    if not 0 <= args.port <= MOST_PORT:
        raise BadInput(f"--port: {args.port} is no port; they go from 0 to {MOST_PORT}.")
    shop = _shop(args)
    # Imported here: the other commands have no use for them.
    from quoting.web import create_app
    from quoting.web.server import LOOPBACK, open_server

    try:
        server = open_server(create_app(shop), args.port)
    except OSError as error:
        reason = error.strerror or error
        raise NotDone(f"Port {args.port} cannot be had ({reason}); try --port 0.") from error
    address = f"http://{LOOPBACK}:{server.effective_port}/"
    sys.stderr.write(f"Open {address} in a browser. Ctrl+C ends it.\n")
    sys.stderr.flush()
    try:
        server.run()
    finally:
        server.close()


def _shop(args: argparse.Namespace) -> Shop:
    from quoting.web.shop import open_shop

    path = _workshop_file(args)
    borrowed = path is None
    file = path or demo_workshop()
    with mistakes_told(lambda _: file, FILE_SPEECH):
        shop = open_shop(
            load_workshop(file, is_locale),
            today=this_day,
            file=str(path or WORKSHOP_FILE),
            borrowed=borrowed,
        )
    rates_file = kept_rates_path()
    shop = shop.keeping_rates_in(rates_file).with_rates(kept_rates(rates_file))
    if not args.demo:
        return shop
    with mistakes_told(lambda _: demo_order(), shop.speech):
        return shop.starting_with(load_order(demo_order(), shop.workshop))


def _workshop_file(args: argparse.Namespace) -> Path | None:
    """Return the maker's own workshop file; None where the demo's stands in for it."""
    named: Path | None = args.workshop
    if named is not None and args.demo:
        raise BadInput("Give either --workshop or --demo, not both.")
    if named is not None:
        return named
    here = Path(WORKSHOP_FILE)
    return here if here.is_file() and not args.demo else None
