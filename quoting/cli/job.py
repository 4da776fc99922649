"""The order and the workshop that a command works on: which files, and what is in them."""

from __future__ import annotations

import argparse
import time
from dataclasses import dataclass
from datetime import date
from pathlib import Path

from quoting.cli.failures import BadInput, mistakes_told
from quoting.core.ground.errors import Mistake
from quoting.core.order.order import Order, check_order
from quoting.core.workshop.reference_rates import with_reference_rates
from quoting.core.workshop.workshop import Workshop
from quoting.files.toml_text import check_file
from quoting.places import demo_order, demo_workshop
from quoting.rates import kept_rates, kept_rates_path
from quoting.schema import load_order, load_workshop
from quoting.wording import FILE_SPEECH, Speech, is_locale, speech_of

WORKSHOP_FILE = "workshop.toml"

_ORDER_TABLES = {"order", "blanket", "extras"}


@dataclass(frozen=True, slots=True, kw_only=True)
class Job:
    """An order read against a workshop, and the files they were read from."""

    order: Order
    workshop: Workshop
    order_file: Path
    workshop_file: Path
    speech: Speech

    def file_of(self, mistake: Mistake) -> Path:
        """Return the file that a mistake's place is in."""
        table = next(iter(mistake.place.parts), "")
        own_target = table == "price" and self.order.terms.target is not None
        own_move = mistake.place.parts in {("price", "discount"), ("price", "rush")}
        in_order = table in _ORDER_TABLES or own_target or own_move
        return self.order_file if in_order else self.workshop_file


def add_files(parser: argparse.ArgumentParser) -> None:
    """Add the arguments that name the order and the workshop."""
    parser.add_argument("order", metavar="ORDER", nargs="?", type=Path, help="the order file")
    parser.add_argument(
        "--workshop",
        metavar="FILE",
        type=Path,
        help=f"the workshop file (default: {WORKSHOP_FILE} beside the order, then here)",
    )
    parser.add_argument("--demo", action="store_true", help="take the demo's order and workshop")


def read_job(args: argparse.Namespace) -> Job:
    """Return the order and the workshop that the arguments name. Errors: BadInput."""
    order_file = _order_file(args)
    workshop_file = args.workshop or (demo_workshop() if args.demo else _nearest(order_file))
    with mistakes_told(lambda _: workshop_file, FILE_SPEECH):
        workshop = with_reference_rates(
            load_workshop(workshop_file, is_locale), kept_rates(kept_rates_path())
        )
        speech = speech_of(workshop)
    with mistakes_told(lambda _: order_file, speech):
        order = load_order(order_file, workshop)
    return Job(
        order=order,
        workshop=workshop,
        order_file=order_file,
        workshop_file=workshop_file,
        speech=speech,
    )


def kept_job(order: Order, workshop: Workshop, book: Path) -> Job:
    """Return an order of a book with the workshop of the same book. Errors: BadInput."""
    workshop = with_reference_rates(workshop, kept_rates(kept_rates_path()))
    speech = speech_of(workshop)
    with mistakes_told(lambda _: book, speech):
        check_order(order, workshop)
    return Job(order=order, workshop=workshop, order_file=book, workshop_file=book, speech=speech)


def _order_file(args: argparse.Namespace) -> Path:
    order: Path | None = args.order
    if args.demo and order is not None:
        raise BadInput("Give either an order file or --demo, not both.")
    if args.demo:
        return demo_order()
    if order is None:
        raise BadInput("Give an order file, or --demo to see one.")
    return order


def _nearest(order_file: Path) -> Path:
    """Return the workshop file beside the order, else the one in the current folder.

    An order file that is not there is told first.
    """
    with mistakes_told(lambda _: order_file, FILE_SPEECH):
        check_file(order_file)
    for path in (order_file.parent / WORKSHOP_FILE, Path(WORKSHOP_FILE)):
        if path.is_file():
            return path
    raise BadInput(
        f"There is no {WORKSHOP_FILE} beside {order_file} or here; name one with --workshop."
    )


def this_day() -> date:
    """Return today's date where the maker is."""
    now = time.localtime()  # no zone is reckoned with, which near the last day of all overflows
    return date(now.tm_year, now.tm_mon, now.tm_mday)
