"""What is refused, with its file and place, and never with a traceback."""

from __future__ import annotations

from pathlib import Path

import pytest

from quoting.cli import main
from tests.cli.running import change, refusals, run


def test_every_mistake_is_told_on_its_own_line_with_its_file_and_place(
    capsys: pytest.CaptureFixture[str], demo: Path
) -> None:
    order = demo / "order.toml"
    change(order, 'width = "80 cm"', 'width = "80"')
    change(order, '{ colour = "rust", rows = 1 }', '{ colour = "rust", rows = 0 }')
    change(order, "share = 1", "shore = 1")
    assert main(["quote", str(order), "--json", "--workbook", str(demo / "new.xlsx")]) == 2
    said = capsys.readouterr()
    assert said.out == ""
    lines = said.err.splitlines()
    assert all(line.startswith(f"{order}: blanket.") for line in lines)
    places = [line.split(": ")[1] for line in lines]
    assert places == [
        "blanket.width",
        "blanket.sections.1.stripes.2.rows",
        "blanket.sections.1.shore",
    ]
    assert "Did you mean share?" in said.err
    assert not (demo / "new.xlsx").exists()


def test_a_blanket_that_is_too_small_is_told_the_smallest_that_works(
    capsys: pytest.CaptureFixture[str], demo: Path
) -> None:
    order = demo / "order.toml"
    change(order, 'height = "100 cm"', 'height = "2 cm"')
    assert main(["quote", str(order)]) == 2
    said = capsys.readouterr().err
    smallest = said.rsplit("works is ", 1)[1].strip().rstrip(".")
    change(order, 'height = "2 cm"', f'height = "{smallest}"')
    assert main(["quote", str(order)]) == 0


def test_a_mistake_in_the_workshop_names_the_workshops_file(
    capsys: pytest.CaptureFixture[str], demo: Path
) -> None:
    change(demo / "workshop.toml", 'locale = "en_GB"', 'locale = "xx_YY"')
    assert main(["quote", str(demo / "order.toml")]) == 2
    assert f"{demo / 'workshop.toml'}: workshop.locale: “xx_YY”" in capsys.readouterr().err


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


def test_a_target_that_no_price_meets_is_told_at_the_file_that_set_it(
    capsys: pytest.CaptureFixture[str], demo: Path
) -> None:
    change(demo / "workshop.toml", "margin = 0.15", "margin = 0.999")
    text = (demo / "order.toml").read_text("utf-8").partition("[price]")[0]
    (demo / "order.toml").write_text(text, "utf-8")
    assert main(["quote", str(demo / "order.toml")]) == 2
    assert f"{demo / 'workshop.toml'}: price.margin: " in capsys.readouterr().err
    (demo / "order.toml").write_text(text + "[price]\nmargin = 0.999\n", "utf-8")
    assert main(["quote", str(demo / "order.toml")]) == 2
    assert f"{demo / 'order.toml'}: price.margin: " in capsys.readouterr().err


JUNK: list[bytes] = [
    b"",
    b"\0\1\2",
    b"\xff\xfe\x00",
    b"[order",
    b"order = 1\nblanket = []",
    b"[" * 5000,
    b'[order]\ntitle = "' + b"x" * 5000 + b'"',
    b'[blanket]\nwidth = "1e999 cm"\nheight = "-1 cm"\nsections = [{stripes = "x"}]',
    b"a = " + b"9" * 6000,
    b'[order]\ntitle = "\\u001b[31m"\n[extras]\n"{x}" = 1\n',
]


@pytest.mark.parametrize("junk", JUNK, ids=range(len(JUNK)))
@pytest.mark.parametrize("name", ["order.toml", "workshop.toml"])
def test_junk_is_answered_with_sentences(
    capsys: pytest.CaptureFixture[str], demo: Path, name: str, junk: bytes
) -> None:
    (demo / name).write_bytes(junk)
    assert main(["quote", str(demo / "order.toml"), "--json"]) == 2
    said = capsys.readouterr()
    assert said.out == ""
    assert "\x1b" not in said.err
    assert "cannot be taken as it is" not in said.err
    assert all(line.startswith(f"{demo / name}: ") for line in said.err.splitlines())
    assert all(line.rstrip()[-1] in ".?" for line in said.err.splitlines())


@pytest.mark.parametrize("name", ["order.toml", "workshop.toml"])
def test_any_one_line_left_out_is_read_or_answered_with_sentences(
    capsys: pytest.CaptureFixture[str], demo: Path, name: str
) -> None:
    lines = (demo / name).read_text("utf-8").splitlines(keepends=True)
    for number in range(len(lines)):
        (demo / name).write_text("".join(lines[:number] + lines[number + 1 :]), "utf-8")
        status = main(["quote", str(demo / "order.toml")])
        said = capsys.readouterr()
        assert status in {0, 2}
        assert bool(said.err) == (status == 2)
        assert "cannot be taken as it is" not in said.err


def test_no_traceback_is_printed_for_bad_input(demo: Path) -> None:
    (demo / "order.toml").write_bytes(b"[order\n")
    done = run("quote", str(demo / "order.toml"))
    assert done.returncode == 2
    assert done.stderr.count("\n") == 1
    assert "Traceback" not in done.stderr
