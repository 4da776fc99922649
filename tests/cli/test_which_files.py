"""Which order and which workshop are read, and commands that name none."""

from __future__ import annotations

from pathlib import Path

import pytest

from quoting.cli import main
from tests.cli.running import change, refusals


def test_the_workshop_beside_the_order_is_taken(
    capsys: pytest.CaptureFixture[str], demo: Path
) -> None:
    change(demo / "workshop.toml", "Ottermoor Blankets", "Fellside Blankets")
    assert main(["quote", str(demo / "order.toml")]) == 0
    assert "Fellside Blankets" in capsys.readouterr().out


def test_without_one_beside_it_the_workshop_here_is_taken(
    capsys: pytest.CaptureFixture[str], demo: Path, monkeypatch: pytest.MonkeyPatch
) -> None:
    (demo / "orders").mkdir()
    (demo / "order.toml").rename(demo / "orders" / "order.toml")
    monkeypatch.chdir(demo)
    assert main(["quote", "orders/order.toml"]) == 0
    assert "Ottermoor" in capsys.readouterr().out


def test_with_no_workshop_anywhere_it_is_said_how_to_name_one(
    capsys: pytest.CaptureFixture[str], demo: Path, monkeypatch: pytest.MonkeyPatch
) -> None:
    (demo / "workshop.toml").unlink()
    monkeypatch.chdir(demo)
    assert main(["quote", "order.toml"]) == 2
    assert "--workshop" in capsys.readouterr().err


def test_an_order_that_is_not_there_is_told_before_its_workshop(
    tmp_path: Path, capsys: pytest.CaptureFixture[str]
) -> None:
    status, said = refusals(capsys, "quote", str(tmp_path / "missing.toml"))
    assert status == 2
    assert said.endswith("missing.toml: There is no such file.\n")


@pytest.mark.parametrize(
    "argv",
    [
        [],
        ["quote"],
        ["quote", "--demo", "order.toml"],
        ["quote", "--demo", "--workbook", "order.toml"],
        ["quote", "--demo", "--nonsense"],
        ["nonsense"],
        ["quote", "nowhere.toml", "--workshop", "nowhere.toml"],
        ["quote", "--demo", "--workshop", "\0"],
        ["quote", "."],
    ],
)
def test_a_command_that_cannot_be_understood_is_bad_input(
    capsys: pytest.CaptureFixture[str],
    argv: list[str],
    tmp_path: Path,
    monkeypatch: pytest.MonkeyPatch,
) -> None:
    monkeypatch.chdir(tmp_path)
    assert main(argv) == 2
    said = capsys.readouterr()
    assert said.out == ""
    assert said.err
    assert list(tmp_path.iterdir()) == []
