"""The command line where its surroundings are unusual: closed outputs, odd files, odd names."""

import json
import os
import shutil
import stat
import subprocess
import sys
import tomllib
from importlib.metadata import EntryPoint
from pathlib import Path

import pytest
from defusedxml.ElementTree import fromstring
from openpyxl import load_workbook

from exports.drawing import draw_blanket
from quoting.__main__ import start
from quoting.cli import main
from quoting.core.quote import quote_order
from quoting.intake import read_order_file, read_workshop_file
from quoting.places import demo_order, demo_workshop
from quoting.wording import speech_of
from tests.examples import TODAY

ROOT = Path(__file__).parents[1]


@pytest.fixture
def demo(tmp_path: Path) -> Path:
    """Return a folder with a copy of the demo's order and workshop."""
    shutil.copy(demo_order(), tmp_path / "order.toml")
    shutil.copy(demo_workshop(), tmp_path / "workshop.toml")
    return tmp_path


def shell(script: str, folder: Path) -> subprocess.CompletedProcess[str]:
    """Run a line of shell in which `$Q` is the program."""
    environment = os.environ | {"PYTHONPATH": str(ROOT), "Q": f"{sys.executable} -m quoting"}
    command = ["sh", "-c", script]
    return subprocess.run(
        command, cwd=folder, env=environment, capture_output=True, text=True, check=False
    )


def refusals(capsys: pytest.CaptureFixture[str], *argv: str) -> tuple[int, str]:
    status = main(argv)
    return status, capsys.readouterr().err


@pytest.mark.skipif(os.name == "nt", reason="needs a POSIX shell")
def test_with_its_output_closed_it_says_so_in_a_line(demo: Path) -> None:
    for command in ("quote order.toml", "compare order.toml --size 70x90cm"):
        done = shell(f"$Q {command} >&-", demo)
        assert done.returncode == 1
        assert done.stderr == "There is nowhere to print the answer to.\n"


@pytest.mark.skipif(os.name == "nt", reason="needs a POSIX shell")
def test_bad_input_is_bad_input_also_where_nobody_hears_of_it(demo: Path) -> None:
    assert shell("$Q quote missing.toml 2>&-", demo).returncode == 2


def test_an_order_that_is_not_there_is_told_before_its_workshop(
    tmp_path: Path, capsys: pytest.CaptureFixture[str]
) -> None:
    status, said = refusals(capsys, "quote", str(tmp_path / "missing.toml"))
    assert status == 2
    assert said.endswith("missing.toml: There is no such file.\n")


@pytest.mark.skipif(not hasattr(os, "mkfifo"), reason="needs named pipes")
def test_a_pipe_is_not_written_over(demo: Path, capsys: pytest.CaptureFixture[str]) -> None:
    pipe = demo / "pipe.xlsx"
    os.mkfifo(pipe)
    status, said = refusals(capsys, "quote", str(demo / "order.toml"), "--workbook", str(pipe))
    assert status == 1
    assert "it is no ordinary file" in said
    assert stat.S_ISFIFO(pipe.stat().st_mode)


@pytest.mark.skipif(os.name == "nt", reason="needs links that anybody may make")
def test_links_that_lead_round_are_told_in_a_line(
    demo: Path, capsys: pytest.CaptureFixture[str]
) -> None:
    link = demo / "link.xlsx"
    link.symlink_to(demo / "other.xlsx")
    (demo / "other.xlsx").symlink_to(link)
    status, said = refusals(capsys, "quote", str(demo / "order.toml"), "--workbook", str(link))
    assert status == 1
    assert said == f"{link} could not be written: its links lead round in a circle.\n"
    assert link.is_symlink()


@pytest.mark.skipif(os.name == "nt", reason="needs links that anybody may make")
def test_a_link_is_kept_and_what_it_leads_to_is_written(demo: Path) -> None:
    link = demo / "link.xlsx"
    link.symlink_to("costing.xlsx")
    assert main(["quote", str(demo / "order.toml"), "--workbook", str(link)]) == 0
    assert link.is_symlink()
    assert (demo / "costing.xlsx").read_bytes()[:2] == b"PK"


def test_a_file_that_may_only_be_read_is_not_written_over(
    demo: Path, capsys: pytest.CaptureFixture[str]
) -> None:
    kept = demo / "kept.xlsx"
    kept.write_bytes(b"kept")
    kept.chmod(0o444)
    status, said = refusals(capsys, "quote", str(demo / "order.toml"), "--workbook", str(kept))
    assert status == 1
    assert "you may not write there" in said
    assert kept.read_bytes() == b"kept"


def test_a_file_that_only_somebody_else_may_write_to_is_not_written_over(
    demo: Path, capsys: pytest.CaptureFixture[str], monkeypatch: pytest.MonkeyPatch
) -> None:
    """The system's answer is made up: the tests may run as a user who may write anywhere."""
    kept = demo / "kept.xlsx"
    kept.write_bytes(b"kept")
    monkeypatch.setattr(os, "access", lambda path, mode: (path, mode) != (kept, os.W_OK))
    status, said = refusals(capsys, "quote", str(demo / "order.toml"), "--workbook", str(kept))
    assert status == 1
    assert "you may not write there" in said
    assert kept.read_bytes() == b"kept"


@pytest.mark.skipif(os.name == "nt", reason="needs POSIX file modes")
def test_a_file_that_is_written_over_keeps_its_mode(demo: Path) -> None:
    older = demo / "older.xlsx"
    older.write_bytes(b"older")
    older.chmod(0o640)
    assert main(["quote", str(demo / "order.toml"), "--workbook", str(older)]) == 0
    assert older.stat().st_size > len(b"older")
    assert stat.S_IMODE(older.stat().st_mode) == 0o640


@pytest.mark.parametrize("shown", [[], ["--json"]])
def test_where_no_size_can_be_made_the_sizes_are_bad_input_each_with_its_reason(
    demo: Path, capsys: pytest.CaptureFixture[str], shown: list[str]
) -> None:
    sizes = ["--size", "1x100cm", "--size", "80x2cm"]
    assert main(["compare", str(demo / "order.toml"), *sizes, *shown]) == 2
    said = capsys.readouterr()
    assert json.loads(said.out)["sizes"] == [] if shown else "Left out" in said.out
    none, narrow, low = said.err.splitlines()
    assert none == "None of these sizes can be made."
    assert narrow.startswith("1x100cm: This is too narrow for one stitch repeat and the border; ")
    assert low.startswith("80x2cm: This is too low for one of every stripe")


def test_an_unknown_locale_is_told_beside_the_other_mistakes(
    demo: Path, capsys: pytest.CaptureFixture[str]
) -> None:
    workshop = demo / "workshop.toml"
    text = workshop.read_text("utf-8")
    workshop.write_text(text.replace('"en_GB"', '"xx_YY"').replace('"GBP"', '"ZZZ"'), "utf-8")
    status, said = refusals(capsys, "quote", str(demo / "order.toml"))
    assert status == 2
    assert "workshop.locale: " in said
    assert "workshop.currency: " in said


def test_a_name_may_have_joined_signs_but_nothing_else_that_shows_nothing(
    demo: Path, capsys: pytest.CaptureFixture[str]
) -> None:
    order = demo / "order.toml"
    text = order.read_text("utf-8")
    order.write_text(text.replace("Rosalind Quill", "Rosalind \U0001f469\u200d\U0001f37c"), "utf-8")
    assert main(["quote", str(order), "--workbook", str(demo / "costing.xlsx")]) == 0
    capsys.readouterr()
    order.write_text(text.replace("Rosalind Quill", "Rosa\u200blind"), "utf-8")
    status, said = refusals(capsys, "quote", str(order))
    assert status == 2
    assert "Character 5 of this shows nothing (“U+200B”); take it out." in said


def test_joined_names_come_through_to_the_workbook_and_the_drawing(demo: Path) -> None:
    """A Persian word, whose parts are kept from joining, and a sign made of two."""
    name = "\u0645\u06cc\u200c\u062e\u0648\u0627\u0647\u0645 \U0001f469\u200d\U0001f37c"
    for file in (demo / "order.toml", demo / "workshop.toml"):
        text = file.read_text("utf-8").replace("teal = ", f'"{name}" = ')
        file.write_text(text.replace('"teal"', f'"{name}"'), "utf-8")
    book = demo / "costing.xlsx"
    assert main(["quote", str(demo / "order.toml"), "--workbook", str(book)]) == 0
    cells = [cell.value for sheet in load_workbook(book) for row in sheet for cell in row]
    assert name in cells
    workshop = read_workshop_file(demo / "workshop.toml")
    order = read_order_file(demo / "order.toml", workshop)
    drawing = draw_blanket(quote_order(order, workshop, today=TODAY), speech_of(workshop))
    assert name in " ".join(fromstring(drawing).itertext())


@pytest.mark.parametrize(
    ("old", "new"),
    [
        ("EUR =", '"\\u001b[31mEU\\n" ='),
        ("teal =", '"te\\u001b[31mal\\n" ='),
        ("teal =", '"\\u202e" ='),
    ],
)
def test_no_name_in_a_file_can_steer_the_terminal(
    demo: Path, capsys: pytest.CaptureFixture[str], old: str, new: str
) -> None:
    workshop = demo / "workshop.toml"
    workshop.write_text(workshop.read_text("utf-8").replace(old, new, 1), "utf-8")
    status, said = refusals(capsys, "quote", str(demo / "order.toml"))
    assert status == 2
    assert all(line.startswith(str(workshop)) for line in said.splitlines())
    assert not {"\x1b", "\u202e"} & set(said)


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
