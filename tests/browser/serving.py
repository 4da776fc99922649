"""The demo's pages served by a process of their own, as a maker serves hers."""

from __future__ import annotations

import subprocess
import sys
from collections.abc import Iterator
from contextlib import contextmanager
from pathlib import Path

ROOT = Path(__file__).parents[2]
BROWSERS = ("chromium-headless-shell", "chromium", "chromium-browser", "google-chrome")
"""Programs of the browser, the lightest first."""

CALM = ("--no-sandbox", "--disable-gpu", "--disable-background-networking")
"""What the browser is told, so that it runs anywhere and speaks to nobody."""


def start(module: str, *options: str, folder: Path) -> tuple[subprocess.Popen[str], str]:
    """Run a module that serves pages, from a folder; return it and the address that it names."""
    command = [sys.executable, "-m", module, *options]
    process = subprocess.Popen(
        command, stderr=subprocess.PIPE, text=True, cwd=folder, env={"PYTHONPATH": str(ROOT)}
    )
    assert process.stderr is not None
    return process, process.stderr.readline().split()[1]


def start_worktable(port: str = "0", *, folder: Path) -> tuple[subprocess.Popen[str], str]:
    """Start the demo's worktable without a book."""
    return start("tests.browser.demo_worktable", port, folder=folder)


def stop(process: subprocess.Popen[str]) -> None:
    """End the pages and let go of their messages."""
    process.terminate()
    process.communicate()


@contextmanager
def serving(module: str, *options: str, folder: Path) -> Iterator[str]:
    """Serve the pages of a module meanwhile; yield their address."""
    process, address = start(module, *options, folder=folder)
    try:
        yield address
    finally:
        stop(process)
