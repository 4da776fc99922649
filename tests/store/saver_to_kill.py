"""The program that saves, started, listened to and killed."""

from __future__ import annotations

import os
import signal
import subprocess
import sys
from collections.abc import Iterator
from contextlib import contextmanager
from pathlib import Path

import pytest

ROOT = Path(__file__).parents[2]


class Saver:
    """The program, of which one child at a time saves."""

    def __init__(self, program: subprocess.Popen[str]) -> None:
        assert program.stdin is not None
        assert program.stdout is not None
        self._tell, self._says = program.stdin, program.stdout
        self._child = 0
        self._said: list[str] = []

    def start(self) -> None:
        """Have it begin to save."""
        self._tell.write("save\n")
        self._tell.flush()
        self._child = int(self._says.readline().removeprefix("pid "))
        self._said = []

    def hear(self, saves: int) -> None:
        """Wait until so many saves are acknowledged."""
        self._said += [self._says.readline() for _ in range(saves)]

    def kill(self) -> dict[str, int]:
        """Kill it, and return what it said was saved last of each thing."""
        os.kill(self._child, signal.SIGKILL)
        self._said += iter(self._says.readline, "ended\n")
        return {what: int(number) for what, number in (line.split() for line in self._said)}

    def end(self) -> None:
        """Let the program end."""
        self._tell.close()


@contextmanager
def saver(address: str) -> Iterator[Saver]:
    """Start the program that saves the first order of a book."""
    if not hasattr(os, "fork"):
        pytest.skip("needs a system whose programs can fork")
    with subprocess.Popen(
        [sys.executable, "-m", "tests.store.saver", address],
        stdin=subprocess.PIPE,
        stdout=subprocess.PIPE,
        text=True,
        cwd=ROOT,
        env=os.environ | {"PYTHONPATH": str(ROOT)},
    ) as program:
        started = Saver(program)
        try:
            yield started
        finally:
            started.end()
