"""`quoting quote`: one order's plan, yarn, hours and price."""

from __future__ import annotations

import argparse
import sys
from collections.abc import Sequence
from pathlib import Path
from typing import Any

from exports.papers.offers import given_paper, quote_paper
from exports.papers.pdf import paper_pdf
from exports.records.near_record import near_record
from exports.records.plain_values import json_text
from exports.records.quote_record import quote_record
from quoting.cli.books import (
    add_book,
    book_address,
    book_order,
    book_quote,
    book_workshop,
    shown_address,
)
from quoting.cli.failures import BadInput, mistakes_told
from quoting.cli.job import Job, add_files, kept_job, read_job, this_day
from quoting.cli.near_table import near_table
from quoting.cli.quote_table import quote_table
from quoting.cli.whole_file import (
    add_pdf,
    add_workbook,
    check_pdf,
    check_workbook,
    write_beside,
)
from quoting.core.quote.given_number import GivenNumber, read_number
from quoting.core.quote.quote import Quote, quote_order
from quoting.core.weighing.neighbours import Neighbour, neighbours
from quoting.wording import speech_of
from quoting.wording.paper import Paper


def add_to(commands: Any) -> None:
    """Add the command to the parser's commands."""
    parser = commands.add_parser(
        "quote", help="plan, cost and price one order", description=__doc__
    )
    add_files(parser)
    parser.add_argument(
        "--order",
        metavar="NUMBER",
        type=_kept_number,
        dest="kept",
        help="an order of your book, or a quote that was given: 12, 2026-014, 2026-014/2",
    )
    add_book(parser)
    parser.add_argument(
        "--near",
        action="store_true",
        help="tell the next smaller and larger blankets besides, count by count",
    )
    parser.add_argument("--json", action="store_true", help="print one JSON object")
    add_workbook(parser)
    add_pdf(parser)
    parser.set_defaults(run=run)


def run(args: argparse.Namespace) -> None:
    """Quote the order, write the spreadsheet and the PDF if asked, print the answer.

    Errors: BadInput, NotDone.
    """
    check_workbook(args.workbook)
    check_pdf(args.pdf)
    if isinstance(args.kept, GivenNumber):
        _tell_given(args)
        return
    job = _job(args)
    with mistakes_told(job.file_of, job.speech):
        quote = quote_order(job.order, job.workshop, today=this_day())
        near = neighbours(quote, today=this_day()) if args.near else None
    if args.workbook is not None:
        _write_workbook(args.workbook, quote)
    if args.pdf is not None:
        _write_pdf(args.pdf, quote_paper(quote))
    sys.stdout.write(_told(quote, near, as_json=args.json))


def _told(quote: Quote, near: Sequence[Neighbour] | None, *, as_json: bool) -> str:
    """Return a quote as it is printed, with its neighbours where they are asked for."""
    if as_json:
        return json_text(
            quote_record(quote) | ({} if near is None else {"near": near_record(near)})
        )
    table = quote_table(quote)
    return table if near is None else f"{table}\n{near_table(quote, near)}"


def _kept_number(text: str) -> int | GivenNumber:
    """Return the number of an order or of a quote. Errors: ArgumentTypeError."""
    number = read_number(text)
    if number is not None:
        return number
    try:
        return int(text)
    except ValueError:
        raise argparse.ArgumentTypeError(
            f"{text!r} is the number neither of an order (12) nor of a quote (2026-014)"
        ) from None


def _tell_given(args: argparse.Namespace) -> None:
    """Tell a quote that was given as it was then. Errors: BadInput, NotDone."""
    _check_book_alone(args)
    if args.near:
        raise BadInput("--near is told of an order; a quote that was given stays as it is.")
    address = book_address(args)
    frozen = book_quote(address, args.kept).frozen
    with mistakes_told(lambda _: Path(shown_address(address)), speech_of(frozen.workshop)):
        if args.workbook is not None:
            _write_workbook(args.workbook, frozen.reckoned_again())
        if args.pdf is not None:
            _write_pdf(args.pdf, given_paper(frozen.offer, frozen.page))
        told = (
            json_text(dict(frozen.results)) if args.json else quote_table(frozen.reckoned_again())
        )
    sys.stdout.write(told)


def _job(args: argparse.Namespace) -> Job:
    """Return the order and the workshop that are meant. Errors: BadInput, NotDone."""
    if args.kept is None:
        if args.book is not None:
            raise BadInput("--book goes with --order, the number of an order in it.")
        return read_job(args)
    _check_book_alone(args)
    address = book_address(args)
    order = book_order(address, args.kept)
    return kept_job(order, book_workshop(address), Path(shown_address(address)))


def _check_book_alone(args: argparse.Namespace) -> None:
    """Check that nothing is named beside the book. Errors: BadInput."""
    if args.order is not None or args.workshop is not None or args.demo:
        raise BadInput("--order takes the order and the workshop of your book, and no other.")


def _write_workbook(path: Path, quote: Quote) -> None:
    from exports.costing_workbook import (
        workbook_bytes,  # its library is loaded only when it is wanted
    )

    write_beside(path, workbook_bytes(quote))


def _write_pdf(path: Path, paper: Paper) -> None:
    write_beside(path, paper_pdf(paper))
