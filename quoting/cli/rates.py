"""`quoting rates`: fetch the day's euro reference rates and keep them."""

from __future__ import annotations

import argparse
import sys
from typing import Any

from quoting.cli.failures import NotDone
from quoting.core.ground.errors import Refused
from quoting.rates import fetch_rates, keep_rates, kept_rates_path
from quoting.wording import FILE_SPEECH, mistake_sentence


def add_to(commands: Any) -> None:
    """Add the command to the parser's commands."""
    parser = commands.add_parser(
        "rates", help="fetch reference rates for buyers abroad", description=__doc__
    )
    parser.set_defaults(run=run)


def run(args: argparse.Namespace) -> None:
    """Fetch, keep and name the rates. Errors: NotDone, with the rates kept before untouched."""
    del args
    try:
        rates = fetch_rates()
        keep_rates(rates, kept_rates_path())
    except Refused as refused:
        raise NotDone(mistake_sentence(refused.mistakes[0], FILE_SPEECH)) from refused
    except OSError as error:
        raise NotDone(f"The rates could not be kept: {error.strerror or error}.") from error
    day = FILE_SPEECH.day(rates.day)
    sys.stdout.write(f"Kept the euro reference rates of {day}: {len(rates.rates)} currencies.\n")
