"""How long the pages take from the command to the first answer, against a bare Flask application.

Three starts: on a new book, on one with the demo's workshop and orders, and with `--demo`. Each is
a process of its own, as a maker starts it. Run with `python tests/benchmarks/start.py`.
"""

from __future__ import annotations

import os
import statistics
import subprocess
import sys
import tempfile
import time
from collections.abc import Callable
from itertools import count
from pathlib import Path
from urllib.request import urlopen

ROOT = Path(__file__).parents[2]
TIMES = 5
SERVE = ("-m", "quoting", "serve", "--no-browser", "--port", "0")
FILL = """
from quoting.cli.books import opened_book
from quoting.cli.demo_book import fill
import os
with opened_book(os.environ["QUOTING_BOOK"]) as book:
    fill(book)
"""
BARE = """
import sys
from flask import Flask
from waitress import create_server
app = Flask("bare")
app.add_url_rule("/", view_func=lambda: "answer")
server = create_server(app, host="127.0.0.1", port=0)
print(f"Open http://127.0.0.1:{server.effective_port}/ in a browser.", file=sys.stderr, flush=True)
server.run()
"""


def seconds_to_answer(*arguments: str, book: Path) -> float:
    """Return how long a program takes that says where it is once it listens."""
    begun = time.perf_counter()
    with subprocess.Popen(
        [sys.executable, *arguments], stderr=subprocess.PIPE, text=True, env=surroundings(book)
    ) as program:
        assert program.stderr is not None
        with urlopen(program.stderr.readline().split()[1]) as answer:
            answer.read()
        taken_s = time.perf_counter() - begun
        program.terminate()
    return taken_s


def surroundings(book: Path) -> dict[str, str]:
    """Return the environment of a start; what is compiled is kept, as where it is installed."""
    kept = {"PYTHONPATH": str(ROOT), "PYTHONPYCACHEPREFIX": str(book.parent / "compiled")}
    everything = os.environ | kept | {"QUOTING_BOOK": str(book)}
    return {name: text for name, text in everything.items() if name != "PYTHONDONTWRITEBYTECODE"}


def main() -> None:
    """Print the middle of each, and how many bare starts that is."""
    with tempfile.TemporaryDirectory() as folder:
        filled = Path(folder) / "filled.db"
        numbers = count(1)
        subprocess.run([sys.executable, "-c", FILL], check=True, env=surroundings(filled))
        starts: dict[str, Callable[[], float]] = {
            "bare Flask": lambda: seconds_to_answer("-c", BARE, book=filled),
            "a filled book": lambda: seconds_to_answer(*SERVE, book=filled),
            "a new book": lambda: seconds_to_answer(
                *SERVE, book=Path(folder) / f"new {next(numbers)}.db"
            ),
            "--demo": lambda: seconds_to_answer(*SERVE, "--demo", book=filled),
        }
        bare_s = 0.0
        for name, start in starts.items():
            start()  # compiles what is not compiled yet
            taken_s = statistics.median(start() for _ in range(TIMES))
            bare_s = bare_s or taken_s
            print(f"{name:>14}: {taken_s:6.2f} s, {taken_s / bare_s:5.1f} bare starts")


if __name__ == "__main__":
    main()
