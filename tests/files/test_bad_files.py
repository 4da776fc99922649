"""A file that cannot be read at all is refused with the reason, whatever its bytes."""

import os
import shutil
import subprocess
import sys
from pathlib import Path

import pytest

from quoting import places
from quoting.files.toml_text import load_file, load_toml
from quoting.schema import load_order_text, load_workshop
from tests.files.samples import EVERY_KEY_OF_AN_ORDER

NOBODY = 65534
HOME = Path(places.__file__).parents[1]


def only(found):
    (mistake,) = found.values()
    assert mistake.path == ""
    return mistake


@pytest.mark.parametrize(
    ("source", "code"),
    [
        ("a = " + "[" * 100_000, "nested-too-deep"),
        ("a = " + "[" * 5000 + "]" * 5000, "nested-too-deep"),
        ("a = " + "{ a = " * 5000, "nested-too-deep"),
        ("a." * 400_000 + "a = 1", "nested-too-deep"),
        ("rows = " + "9" * 5000, "number-too-long"),
        ("#" * 1_000_001, "file-too-large"),
        ("rows = ", "not-toml"),
        ("\x00", "not-toml"),
        ("rows = 1\rcolour = 2", "not-toml"),
        (b"\x00", "wrong-encoding"),
        (b"\xff", "wrong-encoding"),
        ("title = 'Wärme'".encode("latin-1"), "wrong-encoding"),
        ("title = 'Wärme'".encode("utf-16"), "wrong-encoding"),
        ("title = 'Wärme'".encode("utf-16-le"), "wrong-encoding"),
        ("title = 'Wärme'".encode("utf-32"), "wrong-encoding"),
        (b"PK\x03\x04" + bytes(range(256)), "wrong-encoding"),
    ],
)
def test_what_is_no_such_file_is_refused(mistakes, source, code):
    assert only(mistakes(lambda: load_toml(source))).code == code


def test_a_slip_in_the_notation_is_told_by_line_and_column(mistakes):
    facts = only(mistakes(lambda: load_toml('[order]\ntitle = "Cot\nbuyer = ""'))).facts
    assert (facts["line"], facts["column"]) == (2, 13)
    facts = only(mistakes(lambda: load_toml("[order]\ntitle = 'Cot"))).facts
    assert (facts["line"], facts["column"]) == (2, 13)


def test_a_wrong_encoding_is_told_by_line(mistakes):
    facts = only(mistakes(lambda: load_toml(b"[order]\ntitle = '\xe9'"))).facts
    assert (facts["line"], facts["wanted"]) == (2, "UTF-8")


def test_a_mark_of_utf8_at_the_beginning_does_no_harm(workshop):
    text = EVERY_KEY_OF_AN_ORDER.read_text("utf-8")
    windows = text.replace("\n", "\r\n").encode("utf-8-sig")
    assert load_order_text(windows, workshop) == load_order_text(text, workshop)


@pytest.mark.parametrize("name", ["order.toml", "file/order.toml", "a\0b"])
def test_a_file_that_is_missing(mistakes, tmp_path, name):
    (tmp_path / "file").touch()
    mistake = only(mistakes(lambda: load_file(tmp_path / name)))
    assert mistake.code == "file-missing"
    assert mistake.facts["file"] == str(tmp_path / name)


def test_a_file_that_is_a_folder(mistakes, tmp_path):
    mistake = only(mistakes(lambda: load_workshop(tmp_path)))
    assert (mistake.code, mistake.facts["file"]) == ("file-is-folder", str(tmp_path))


@pytest.mark.skipif(not hasattr(os, "mkfifo"), reason="needs named pipes")
def test_a_pipe_that_nobody_writes_to_is_not_waited_for(mistakes, tmp_path):
    os.mkfifo(tmp_path / "pipe.toml")
    assert only(mistakes(lambda: load_file(tmp_path / "pipe.toml"))).code == "file-is-no-file"


def test_a_name_longer_than_any_file_has(mistakes, tmp_path):
    path = tmp_path / ("x" * 100_000)
    assert only(mistakes(lambda: load_file(path))).code == "file-name-too-long"


def test_a_file_over_a_million_bytes_is_not_read(mistakes, tmp_path):
    path = tmp_path / "order.toml"
    path.write_bytes(b"#" * 1_000_001)
    assert only(mistakes(lambda: load_file(path))).code == "file-too-large"


READ_AS_SOMEBODY_ELSE = """
import os, sys
from pathlib import Path
from quoting.core.ground.errors import Refused
from quoting.files.toml_text import load_file
if os.geteuid() == 0:
    os.setgid({nobody})
    os.setuid({nobody})
try:
    load_file(Path(sys.argv[1]))
except Refused as refused:
    print(refused)
"""


@pytest.mark.skipif(sys.platform == "win32", reason="permissions are not told by mode there")
def test_a_file_that_may_not_be_read(tmp_path_factory):
    """Root reads any file, so the reading is done as somebody else."""
    folder = tmp_path_factory.mktemp("shelf")
    try:
        for above in (folder, *folder.parents[:2]):
            above.chmod(above.stat().st_mode | 0o011)
        path = folder / "order.toml"
        path.touch(mode=0o000)
        command = [sys.executable, "-c", READ_AS_SOMEBODY_ELSE.format(nobody=NOBODY), str(path)]
        told = subprocess.run(command, capture_output=True, text=True, check=True, cwd=HOME)
        assert told.stdout.strip() == ": file-unreadable"
    finally:
        shutil.rmtree(folder)
