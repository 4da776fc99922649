"""Starting the pages: what is loaded, what is opened, and how it fails."""

import os
import socket
import subprocess
import sys
from collections.abc import Iterator
from pathlib import Path
from urllib.request import urlopen

import pytest

from quoting.places import demo_workshop

ROOT = Path(__file__).parents[2]
ENVIRONMENT = os.environ | {"PYTHONPATH": str(ROOT)}


def quoting(*arguments: str, folder: Path) -> subprocess.Popen[str]:
    """Start the command in a folder."""
    command = [sys.executable, "-m", "quoting", *arguments]
    return subprocess.Popen(command, stderr=subprocess.PIPE, text=True, cwd=folder, env=ENVIRONMENT)


@pytest.fixture
def served(tmp_path: Path, request: pytest.FixtureRequest) -> Iterator[str]:
    """Serve the pages from a folder, and yield the first page."""
    own = getattr(request, "param", None)
    if own is not None:
        (tmp_path / "workshop.toml").write_text(own, "utf-8")
    process = quoting("serve", "--port", "0", folder=tmp_path)
    assert process.stderr is not None
    address = process.stderr.readline().split()[1]
    with urlopen(address) as page:
        yield page.read().decode()
    process.terminate()
    process.communicate()


def failed(*arguments: str, folder: Path) -> tuple[int, str]:
    """Return the exit status and the message of a command that must fail."""
    process = quoting("serve", *arguments, folder=folder)
    _, said = process.communicate(timeout=20)
    return process.returncode, said


def test_without_a_workshop_file_the_demos_stands_in_and_says_so(served: str) -> None:
    assert "the demo’s measurements, not yours" in served
    assert "Fill in a size" in served


OWN = demo_workshop().read_text("utf-8").replace("Ottermoor Blankets", "Hollin Edge")


@pytest.mark.parametrize("served", [OWN], indirect=True)
def test_a_workshop_file_in_the_folder_is_the_makers_own(served: str) -> None:
    assert "Hollin Edge" in served
    assert "not yours" not in served


def test_a_workshop_file_with_mistakes_is_refused_with_all_of_them(tmp_path: Path) -> None:
    bad = OWN.replace('currency = "GBP"', 'currency = "XYZ"').replace(
        'tail = "15 cm"', 'tail = "0 cm"'
    )
    (tmp_path / "workshop.toml").write_text(bad, "utf-8")
    status, said = failed("--port", "0", folder=tmp_path)
    assert status == 2
    assert "workshop.currency" in said
    assert "workshop.tail" in said


def test_a_workshop_file_that_is_not_there_is_refused(tmp_path: Path) -> None:
    assert failed("--workshop", "none.toml", folder=tmp_path)[0] == 2


def test_the_demo_and_a_workshop_are_not_both_taken(tmp_path: Path) -> None:
    assert failed("--demo", "--workshop", "w.toml", folder=tmp_path)[0] == 2


def test_a_port_that_is_no_port_is_refused(tmp_path: Path) -> None:
    assert failed("--port", "70000", folder=tmp_path) == (
        2,
        "--port: 70000 is no port; they go from 0 to 65535.\n",
    )


def test_a_port_that_is_taken_is_told_with_a_way_out(tmp_path: Path) -> None:
    with socket.create_server(("127.0.0.1", 0)) as taken:
        status, said = failed("--port", str(taken.getsockname()[1]), folder=tmp_path)
    assert status == 1
    assert "try --port 0" in said


def test_starting_loads_no_library_that_only_a_download_needs() -> None:
    code = (
        "import sys\n"
        "import quoting.cli, quoting.cli.serve, quoting.web, waitress\n"
        "print(sorted({'openpyxl', 'requests', 'sqlalchemy', 'typst'} & set(sys.modules)))"
    )
    done = subprocess.run(
        [sys.executable, "-c", code], capture_output=True, text=True, env=ENVIRONMENT, check=True
    )
    assert done.stdout.strip() == "[]"
