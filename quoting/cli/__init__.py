"""The command line: one module per command, each adding itself to the parser.

Exit status: 0 done, 1 could not be done, 2 bad input. Messages go to standard error.
"""

from __future__ import annotations

import argparse
import contextlib
import io
import os
import sys
from collections.abc import Sequence
from pathlib import Path

from quoting.cli import backup, compare, passphrase, quote, rates, restore, serve, workshop
from quoting.cli.failures import BadInput, NotDone, steers_nothing

DONE, NOT_DONE, BAD_INPUT = 0, 1, 2

COMMANDS = (serve, quote, compare, workshop, backup, restore, passphrase, rates)


def main(argv: Sequence[str] | None = None) -> int:
    """Run one command and return its exit status."""
    _show_any_text()
    if sys.stdout is None:
        return _tell(["There is nowhere to print the answer to."], NOT_DONE)
    try:
        args = _parser().parse_args(argv)
        args.run(args)
        sys.stdout.flush()
    except SystemExit as done:  # the parser has said what it had to say
        return done.code if isinstance(done.code, int) else NOT_DONE
    except BadInput as failure:
        return _tell(failure.lines, BAD_INPUT)
    except NotDone as failure:
        return _tell([str(failure)], NOT_DONE)
    except BrokenPipeError:
        _close_output()
        return NOT_DONE
    except OSError as error:
        _close_output()
        return _tell([f"This could not be done: {error.strerror or error}."], NOT_DONE)
    except KeyboardInterrupt:
        return NOT_DONE
    return DONE


def _parser() -> argparse.ArgumentParser:
    parser = argparse.ArgumentParser(
        prog="quoting", description="Costs and quotes a hand-crocheted blanket made to order."
    )
    commands = parser.add_subparsers(title="commands", required=True, metavar="COMMAND")
    for command in COMMANDS:
        command.add_to(commands)
    return parser


def _show_any_text() -> None:
    """Let a terminal that lacks a character show a mark for it."""
    for stream in (sys.stdout, sys.stderr):
        if isinstance(stream, io.TextIOWrapper):
            stream.reconfigure(errors="replace")


def _tell(lines: Sequence[str], status: int) -> int:
    if sys.stderr is None:  # closed by whoever started the program
        return status
    with contextlib.suppress(OSError):
        sys.stderr.write("".join(f"{steers_nothing(line)}\n" for line in lines))
    return status


def _close_output() -> None:
    """Send what is still to be written nowhere, so that nothing fails again at the end."""
    with contextlib.suppress(OSError), Path(os.devnull).open("w", encoding="utf-8") as nowhere:
        os.dup2(nowhere.fileno(), sys.stdout.fileno())
