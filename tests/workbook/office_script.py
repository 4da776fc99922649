"""Scripts that steer LibreOffice, run by the Python that has its `uno` module."""

from __future__ import annotations

import json
import subprocess
from pathlib import Path

from tests.programs import find_program, require_module, require_program

SECONDS = 300


def run_in_office(script: str, folder: Path, **asked: object) -> str:
    """Run a script of this folder with what is asked of it, as JSON; return what it says."""
    office = require_program("soffice", "libreoffice")
    python = require_module("uno", "/usr/bin/python3", find_program("python3") or "python3")
    done = subprocess.run(
        [python, str(Path(__file__).with_name(script))],
        input=json.dumps({"folder": str(folder), "office": office} | asked),
        text=True,
        encoding="utf-8",
        check=True,
        capture_output=True,
        timeout=SECONDS,
    )
    return done.stdout
