"""Runs the program, inside the tests or as a command of its own, and changes what it reads."""

from __future__ import annotations

import json
import os
import subprocess
import sys
from pathlib import Path
from typing import Any

import pytest

from quoting.cli import main

ROOT = Path(__file__).parents[2]


def change(path: Path, old: str, new: str) -> None:
    text = path.read_text("utf-8")
    assert old in text
    path.write_text(text.replace(old, new, 1), "utf-8")


def record_of(capsys: pytest.CaptureFixture[str], *argv: str) -> Any:
    assert main(["quote", *argv, "--json"]) == 0
    said = capsys.readouterr()
    assert said.err == ""
    return json.loads(said.out)


def refusals(capsys: pytest.CaptureFixture[str], *argv: str) -> tuple[int, str]:
    status = main(argv)
    return status, capsys.readouterr().err


def run(*argv: str, **more: Any) -> subprocess.CompletedProcess[str]:
    environment = os.environ | {"PYTHONPATH": str(ROOT)} | more.pop("env", {})
    command = [sys.executable, "-m", "quoting", *argv]
    return subprocess.run(
        command, capture_output=True, encoding="utf-8", env=environment, check=False, **more
    )


def shell(script: str, folder: Path) -> subprocess.CompletedProcess[str]:
    """Run a line of shell in which `$Q` is the program."""
    environment = os.environ | {"PYTHONPATH": str(ROOT), "Q": f"{sys.executable} -m quoting"}
    command = ["sh", "-c", script]
    return subprocess.run(
        command, cwd=folder, env=environment, capture_output=True, text=True, check=False
    )
