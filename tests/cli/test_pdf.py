"""`quoting quote --pdf` writes what the buyer reads, whole or not at all."""

from __future__ import annotations

import os
import sys
from io import BytesIO
from pathlib import Path

import pytest

from exports.papers import typesetter
from quoting.cli import main
from tests.cli.running import ROOT, refusals, run
from tests.examples import sample_workshop
from tests.programs import require_package
from tests.web.book_pages import maker_with_book


def words_of(file: Path) -> str:
    require_package("pypdf")
    from pypdf import PdfReader

    pages = PdfReader(BytesIO(file.read_bytes())).pages
    return " ".join("".join(page.extract_text() for page in pages).split())


def test_the_pdf_is_written_whole_beside_the_answer(
    capsys: pytest.CaptureFixture[str], demo: Path
) -> None:
    require_package("typst")
    path = demo / "quote.PDF"
    assert main(["quote", str(demo / "order.toml"), "--pdf", str(path)]) == 0
    assert "Cot blanket in moorland stripes" in words_of(path)
    assert "Quote" in capsys.readouterr().out
    assert {p.name for p in demo.iterdir()} == {"order.toml", "workshop.toml", "quote.PDF"}


def test_the_demos_pdf_says_its_price(tmp_path: Path, capsys: pytest.CaptureFixture[str]) -> None:
    require_package("typst")
    path = tmp_path / "quote.pdf"
    assert main(["quote", "--demo", "--pdf", str(path)]) == 0
    assert "£297.00" in words_of(path)
    assert "297.00" in capsys.readouterr().out


def test_an_order_of_the_book_and_a_quote_that_was_given_are_written(
    tmp_path: Path, capsys: pytest.CaptureFixture[str]
) -> None:
    require_package("typst")
    book, path = tmp_path / "book.db", tmp_path / "quote.pdf"
    with maker_with_book(book, sample_workshop()) as maker:
        maker.give(maker.begin(blanket__width="80 cm", blanket__height="100 cm"))
        sent = maker.client.get("/quotes/2026-001/quote.pdf").data
    asked = ["--book", str(book), "--pdf", str(path)]
    assert main(["quote", "--order", "2026-001", *asked]) == 0
    assert path.read_bytes() == sent
    assert main(["quote", "--order", "1", *asked]) == 0
    assert path.read_bytes() != sent
    assert "Quote 2" in words_of(path)
    assert capsys.readouterr().err == ""


def test_another_ending_would_hide_what_it_is(
    capsys: pytest.CaptureFixture[str], demo: Path
) -> None:
    path = demo / "quote.txt"
    status, said = refusals(capsys, "quote", str(demo / "order.toml"), "--pdf", str(path))
    assert status == 2
    assert "the name of a PDF must end in .pdf" in said
    assert not path.exists()


def test_a_place_that_cannot_be_written_is_told_and_there_is_no_answer(
    capsys: pytest.CaptureFixture[str], demo: Path
) -> None:
    require_package("typst")
    path = demo / "nowhere" / "quote.pdf"
    assert main(["quote", str(demo / "order.toml"), "--pdf", str(path)]) == 1
    said = capsys.readouterr()
    assert said.out == ""
    assert said.err == f"{path} could not be written: its folder is not there.\n"


def test_without_a_typesetter_it_is_told_what_to_install_and_nothing_is_written(
    capsys: pytest.CaptureFixture[str], demo: Path, monkeypatch: pytest.MonkeyPatch
) -> None:
    typesetter.can_set.cache_clear()
    monkeypatch.setitem(sys.modules, "typst", None)
    wanted = ("--pdf", str(demo / "quote.pdf"), "--workbook", str(demo / "costing.xlsx"))
    status, said = refusals(capsys, "quote", str(demo / "order.toml"), *wanted)
    typesetter.can_set.cache_clear()
    assert status == 1
    assert "pip install typst" in said
    assert {p.name for p in demo.iterdir()} == {"order.toml", "workshop.toml"}


def test_a_typesetter_that_cannot_be_loaded_is_as_none(demo: Path, tmp_path: Path) -> None:
    broken = tmp_path / "broken"
    broken.mkdir()
    (broken / "typst.py").write_text('raise ImportError("made for another computer")\n', "utf-8")
    path = demo / "quote.pdf"
    order = str(demo / "order.toml")
    paths = {"PYTHONPATH": f"{broken}{os.pathsep}{ROOT}"}
    asked = run("quote", order, "--pdf", str(path), env=paths)
    assert asked.returncode == 1
    assert asked.stderr == f"{typesetter.NOT_INSTALLED}\n"
    assert not path.exists()
