"""Clocks, zones, pipes, names and endings that nobody expects, each answered or tidied up after."""

from __future__ import annotations

import io
import os
import signal
import subprocess
import sys
import time
import zipfile
from datetime import UTC, datetime
from pathlib import Path

import pytest
import time_machine

from quoting.cli import main
from quoting.cli.job import this_day
from tests.cli.running import ROOT, refusals, run

CLOCKS = [
    datetime(1970, 1, 1, 12, tzinfo=UTC),
    datetime(1979, 12, 31, 12, tzinfo=UTC),
    datetime(2108, 1, 1, 12, tzinfo=UTC),
    datetime(9999, 12, 31, 12, tzinfo=UTC),
]


@pytest.mark.parametrize("clock", CLOCKS, ids=lambda clock: f"{clock:%Y-%m-%d}")
@pytest.mark.parametrize(
    "asked", [["quote", "--demo"], ["compare", "--demo", "--size", "70x90cm"]], ids=lambda a: a[0]
)
def test_whatever_the_clock_says_there_is_an_answer_and_a_spreadsheet(
    clock: datetime, asked: list[str], tmp_path: Path, capsys: pytest.CaptureFixture[str]
) -> None:
    file = tmp_path / "costing.xlsx"
    with time_machine.travel(clock, tick=False):
        assert main([*asked, "--workbook", str(file)]) == 0
    assert capsys.readouterr().out
    with zipfile.ZipFile(io.BytesIO(file.read_bytes())) as book:
        assert book.testzip() is None


def test_the_day_is_the_makers_own_near_midnight_at_the_end_of_all_days() -> None:
    with time_machine.travel(datetime(9999, 12, 31, 23, 30, tzinfo=UTC), tick=False):
        assert this_day().year == 9999


@pytest.mark.skipif(os.name == "nt", reason="zones are set otherwise there")
@pytest.mark.parametrize("zone", ["/", "/etc/passwd", "Nowhere/Land", ":", "../..", "Europe"])
def test_whatever_the_time_zone_is_called_there_is_an_answer(zone: str) -> None:
    done = run("quote", "--demo", env={"TZ": zone})
    assert (done.returncode, done.stderr) == (0, "")


def test_a_name_that_no_file_can_have_is_bad_input_and_told_shortly(
    demo: Path, capsys: pytest.CaptureFixture[str]
) -> None:
    name, order = "x" * 100_000, str(demo / "order.toml")
    for asked in (
        ["quote", name],
        ["quote", order, "--workshop", name],
        ["quote", order, "--workbook", f"{name}.xlsx"],
        ["compare", order, "--size", "70x90cm", "--prices", name],
    ):
        status, said = refusals(capsys, *asked)
        assert status == 2
        assert "No file has a name as long as this." in said
        assert len(said) < 1_000


@pytest.mark.skipif(not hasattr(os, "mkfifo"), reason="needs named pipes")
def test_a_pipe_that_nobody_writes_to_is_bad_input(
    demo: Path, capsys: pytest.CaptureFixture[str]
) -> None:
    os.mkfifo(demo / "pipe.toml")
    status, said = refusals(capsys, "quote", str(demo / "pipe.toml"))
    assert status == 2
    assert "a file that was saved is wanted" in said


WRITING_SLOWLY = """
import os, sys, time
from quoting import cli
from quoting.__main__ import start
from quoting.files import whole_file

def slowly(handle):
    print("writing", flush=True)
    time.sleep(60)

whole_file.os.fsync = slowly
sys.exit(start())
"""


@pytest.mark.skipif(os.name == "nt", reason="has no such signals")
@pytest.mark.parametrize("ending", ["SIGTERM", "SIGHUP", "SIGINT"])
def test_however_it_is_ended_no_part_of_a_file_is_left(demo: Path, ending: str) -> None:
    command = [sys.executable, "-c", WRITING_SLOWLY, "quote", str(demo / "order.toml")]
    before = sorted(path.name for path in demo.iterdir())
    with subprocess.Popen(
        [*command, "--workbook", str(demo / "costing.xlsx")],
        env=os.environ | {"PYTHONPATH": str(ROOT)},
        stdout=subprocess.PIPE,
        text=True,
        preexec_fn=lambda: signal.signal(getattr(signal, ending), signal.SIG_DFL),  # noqa: PLW1509
    ) as writing:
        assert writing.stdout is not None
        assert writing.stdout.readline() == "writing\n"
        assert len(list(demo.iterdir())) == len(before) + 1
        writing.send_signal(getattr(signal, ending))
        assert writing.wait(30) == 1
    assert sorted(path.name for path in demo.iterdir()) == before


@pytest.mark.skipif(os.name == "nt", reason="has no such signal")
def test_a_program_that_is_to_outlive_its_terminal_does(demo: Path) -> None:
    command = [sys.executable, "-c", WRITING_SLOWLY.replace("60", "2"), "quote"]
    with subprocess.Popen(
        ["nohup", *command, str(demo / "order.toml"), "--workbook", str(demo / "costing.xlsx")],
        env=os.environ | {"PYTHONPATH": str(ROOT)},
        stdout=subprocess.PIPE,
        text=True,
    ) as writing:
        assert writing.stdout is not None
        assert writing.stdout.readline() == "writing\n"
        time.sleep(0.1)
        writing.send_signal(signal.SIGHUP)
        assert writing.wait(60) == 0
    assert (demo / "costing.xlsx").exists()
