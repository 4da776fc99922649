"""`quoting compare`: the same design at several sizes, at the target or at given prices."""

from __future__ import annotations

import argparse
import sys
from collections.abc import Mapping
from decimal import Decimal
from pathlib import Path
from typing import Any

from exports.records.comparison_record import comparison_record
from exports.records.plain_values import json_text
from quoting.cli.comparison_table import comparison_table
from quoting.cli.failures import BadInput, mistakes_told
from quoting.cli.job import Job, add_files, read_job, this_day
from quoting.cli.whole_file import add_workbook, check_workbook, write_beside
from quoting.core.ground.codes import MistakeCode
from quoting.core.ground.errors import Mistake, Refused
from quoting.core.ground.place import NOWHERE
from quoting.core.order.resizing import Size
from quoting.core.weighing.comparison import MOST_SIZES, Comparison, compare_sizes
from quoting.schema import load_price_list, size_of
from quoting.wording import FILE_SPEECH, Speech, mistake_sentence, refusal_words, verdict


def add_to(commands: Any) -> None:
    """Add the command to the parser's commands."""
    parser = commands.add_parser(
        "compare", help="quote the same design at several sizes", description=__doc__
    )
    add_files(parser)
    parser.add_argument(
        "--size",
        metavar="70x90cm",
        action="append",
        required=True,
        help="a finished width and length, or 90cm for the width of a circle or a hexagon; "
        "give it once for each size",
    )
    parser.add_argument(
        "--prices", metavar="FILE", type=Path, help="compare at the prices in this TOML file"
    )
    parser.add_argument("--json", action="store_true", help="print one JSON object")
    add_workbook(parser)
    parser.set_defaults(run=run)


def run(args: argparse.Namespace) -> None:
    """Compare the sizes, write the spreadsheet if asked, print the answer.

    Errors: BadInput, also where none of the sizes can be made; NotDone.
    """
    check_workbook(args.workbook)
    job = read_job(args)
    sizes = _sizes(args.size, by_width=job.order.design.body.goes_by_width)
    prices = _prices(args.prices, job.speech)
    with mistakes_told(lambda mistake: _file_of(mistake, job, args.prices), job.speech):
        comparison = compare_sizes(job.order, job.workshop, sizes, today=this_day(), prices=prices)
    if args.workbook is not None:
        _write_workbook(args.workbook, comparison)
    sys.stdout.write(
        json_text(comparison_record(comparison, job.speech))
        if args.json
        else comparison_table(comparison, job.speech)
    )
    if not comparison.sizes:
        raise BadInput(verdict(comparison, job.speech), *_reasons(comparison, job.speech))


def _reasons(comparison: Comparison, speech: Speech) -> list[str]:
    return [f"{refusal.size}: {refusal_words(refusal, speech)}" for refusal in comparison.refused]


def _sizes(texts: list[str], *, by_width: bool) -> list[Size]:
    """Return the sizes typed. Errors: BadInput, with every one that cannot be read, or too many."""
    if len(texts) > MOST_SIZES:
        many = Mistake(NOWHERE, MistakeCode.TOO_MANY, {"read": len(texts), "limit": MOST_SIZES})
        raise BadInput(f"--size: {mistake_sentence(many, FILE_SPEECH)}")
    sizes, mistakes = [], []
    for text in texts:
        try:
            sizes.append(size_of(text, by_width=by_width))
        except Refused as refused:
            said = (mistake_sentence(mistake, FILE_SPEECH) for mistake in refused.mistakes)
            mistakes.append(f"--size {text[:60]!r}: {' '.join(said)}")
    if mistakes:
        raise BadInput(*mistakes)
    return sizes


def _prices(path: Path | None, speech: Speech) -> Mapping[Size, Decimal] | None:
    if path is None:
        return None
    with mistakes_told(lambda _: path, speech):
        return load_price_list(path)


def _file_of(mistake: Mistake, job: Job, prices: Path | None) -> Path:
    in_prices = mistake.place.parts[:1] == ("prices",)
    return prices if prices is not None and in_prices else job.file_of(mistake)


def _write_workbook(path: Path, comparison: Comparison) -> None:
    from exports.comparison_workbook import comparison_bytes  # loaded only when it is wanted

    write_beside(path, comparison_bytes(comparison))
