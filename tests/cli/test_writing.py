"""Files are written whole or not at all, and nothing is written over that should stay."""

from __future__ import annotations

import errno
import os
import stat
from pathlib import Path

import pytest

from quoting.cli import main, whole_file
from quoting.cli.failures import BadInput, NotDone
from tests.cli.running import refusals


def test_the_workbook_is_written_whole(capsys: pytest.CaptureFixture[str], demo: Path) -> None:
    pytest.importorskip("exports.costing_workbook.book")
    path = demo / "costing.xlsx"
    assert main(["quote", str(demo / "order.toml"), "--workbook", str(path)]) == 0
    assert path.read_bytes()[:2] == b"PK"
    assert "Quote" in capsys.readouterr().out
    assert {p.name for p in demo.iterdir()} == {"order.toml", "workshop.toml", "costing.xlsx"}


def test_a_file_takes_the_place_of_an_older_one(tmp_path: Path) -> None:
    path = tmp_path / "costing.xlsx"
    path.write_bytes(b"old")
    whole_file.write_beside(path, b"new")
    assert path.read_bytes() == b"new"
    assert list(tmp_path.iterdir()) == [path]


def test_a_file_that_cannot_be_finished_leaves_the_older_one_as_it_was(
    tmp_path: Path, monkeypatch: pytest.MonkeyPatch
) -> None:
    path = tmp_path / "costing.xlsx"
    path.write_bytes(b"old")

    def full(_: int) -> None:
        raise OSError(errno.ENOSPC, "No space left on device")

    monkeypatch.setattr(os, "fsync", full)
    with pytest.raises(NotDone, match="the disk is full"):
        whole_file.write_beside(path, b"new")
    assert path.read_bytes() == b"old"
    assert list(tmp_path.iterdir()) == [path]


@pytest.mark.parametrize(
    ("where", "why"),
    [
        ("folder.xlsx", "it is a folder"),
        ("nowhere/costing.xlsx", "its folder is not there"),
        ("file/costing.xlsx", "its folder is not a folder"),
        ("a\0b.xlsx", "could not be written"),
    ],
)
def test_a_place_that_cannot_be_written_is_told_with_its_reason(
    tmp_path: Path, where: str, why: str
) -> None:
    (tmp_path / "folder.xlsx").mkdir()
    (tmp_path / "file").write_text("", "utf-8")
    with pytest.raises(NotDone, match=why):
        whole_file.write_beside(tmp_path / where, b"new")
    assert {p.name for p in tmp_path.iterdir()} == {"folder.xlsx", "file"}


def test_a_name_that_no_file_can_have_is_bad_input(tmp_path: Path) -> None:
    with pytest.raises(BadInput, match="No file has a name as long as this"):
        whole_file.write_beside(tmp_path / ("x" * 300 + ".xlsx"), b"new")
    assert list(tmp_path.iterdir()) == []


def test_a_workbook_that_cannot_be_written_fails_with_one_sentence_and_no_answer(
    capsys: pytest.CaptureFixture[str], demo: Path, monkeypatch: pytest.MonkeyPatch
) -> None:
    monkeypatch.setattr("exports.costing_workbook.workbook_bytes", lambda _: b"bytes")
    path = demo / "nowhere" / "costing.xlsx"
    assert main(["quote", str(demo / "order.toml"), "--workbook", str(path)]) == 1
    said = capsys.readouterr()
    assert said.out == ""
    assert said.err == f"{path} could not be written: its folder is not there.\n"


def test_a_folder_that_is_read_only_is_told(
    tmp_path: Path, monkeypatch: pytest.MonkeyPatch
) -> None:
    """The system's answer is made up: the tests may run as a user who may write anywhere."""

    def forbid(*_: object) -> None:
        raise PermissionError(errno.EACCES, "Permission denied")

    monkeypatch.setattr(Path, "open", forbid)
    with pytest.raises(NotDone, match="you may not write there"):
        whole_file.write_beside(tmp_path / "costing.xlsx", b"new")
    assert list(tmp_path.iterdir()) == []


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
