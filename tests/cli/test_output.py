"""Where the answer goes: odd terminals, closed and full outputs, and being stopped."""

from __future__ import annotations

import os
import subprocess
import sys
import tomllib
from importlib.metadata import EntryPoint
from pathlib import Path

import pytest

from quoting.__main__ import start
from quoting.cli import main
from tests.cli.running import ROOT, run, shell


def test_a_terminal_without_the_characters_gets_marks_instead() -> None:
    done = run("quote", "--demo", env={"PYTHONIOENCODING": "ascii"})
    assert done.returncode == 0
    assert "80 ? 100?cm" in done.stdout
    assert done.stderr == ""


def test_a_reader_who_stops_reading_is_no_trouble() -> None:
    script = f"{sys.executable} -m quoting quote --demo --json | head -c 10"
    done = subprocess.run(
        ["/bin/sh", "-c", script],
        capture_output=True,
        encoding="utf-8",
        env=os.environ | {"PYTHONPATH": str(ROOT)},
        check=False,
    )
    assert done.stderr == ""
    assert len(done.stdout) == 10


@pytest.mark.skipif(os.name == "nt", reason="needs a POSIX shell")
def test_with_its_output_closed_it_says_so_in_a_line(demo: Path) -> None:
    for command in ("quote order.toml", "compare order.toml --size 70x90cm"):
        done = shell(f"$Q {command} >&-", demo)
        assert done.returncode == 1
        assert done.stderr == "There is nowhere to print the answer to.\n"


@pytest.mark.skipif(os.name == "nt", reason="needs a POSIX shell")
def test_bad_input_is_bad_input_also_where_nobody_hears_of_it(demo: Path) -> None:
    assert shell("$Q quote missing.toml 2>&-", demo).returncode == 2


def test_a_full_output_is_told_in_a_sentence() -> None:
    full = Path("/dev/full")
    if not full.exists():
        pytest.skip("this system has no device that is always full")
    with full.open("w") as out:
        done = subprocess.run(
            [sys.executable, "-m", "quoting", "quote", "--demo"],
            stdout=out,
            stderr=subprocess.PIPE,
            encoding="utf-8",
            env=os.environ | {"PYTHONPATH": str(ROOT)},
            check=False,
        )
    assert done.returncode == 1
    assert done.stderr.count("\n") == 1
    assert "Traceback" not in done.stderr


def test_an_interrupt_is_quiet(
    capsys: pytest.CaptureFixture[str], monkeypatch: pytest.MonkeyPatch
) -> None:
    def stop(*_: object) -> None:
        raise KeyboardInterrupt

    monkeypatch.setattr("quoting.cli.quote.read_job", stop)
    assert main(["quote", "--demo"]) == 1
    assert capsys.readouterr() == ("", "")


def test_a_stop_while_the_program_is_still_loading_is_quiet() -> None:
    script = """
import sys
import quoting.__main__ as program

class Stop:
    def find_spec(self, name, *more):
        if name == "quoting.cli":
            raise KeyboardInterrupt

sys.meta_path.insert(0, Stop())
sys.exit(program.start())
"""
    command = [sys.executable, "-c", script]
    done = subprocess.run(command, cwd=ROOT, capture_output=True, text=True, check=False)
    assert (done.returncode, done.stdout, done.stderr) == (1, "", "")


def test_the_command_that_is_installed_is_the_one_that_stops_quietly() -> None:
    project = tomllib.loads((ROOT / "pyproject.toml").read_text("utf-8"))
    assert EntryPoint("quoting", project["project"]["scripts"]["quoting"], "").load() is start


def test_only_what_is_used_is_loaded() -> None:
    script = (
        "import sys; from quoting.cli import main; main(['quote', '--demo']);"
        "heavy = {'openpyxl', 'flask', 'requests', 'waitress', 'sqlalchemy', 'alembic', 'typst'};"
        "print(sorted(heavy & set(sys.modules)))"
    )
    done = subprocess.run(
        [sys.executable, "-c", script],
        capture_output=True,
        encoding="utf-8",
        env=os.environ | {"PYTHONPATH": str(ROOT)},
        check=True,
    )
    assert done.stdout.endswith("\n[]\n")
