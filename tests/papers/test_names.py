"""Whatever is in a name is printed, or a sign in its place and a sentence on it: never nothing."""

from __future__ import annotations

import re
import subprocess
from dataclasses import replace
from pathlib import Path

import pytest

from exports.papers.message import paper_text
from exports.papers.offers import quote_paper
from exports.papers.pdf import MISSING, paper_pdf
from exports.papers.pictures import buyers_picture
from exports.papers.typesetter import Unset, set_paper
from quoting.core.quote.offer import OfferedColour
from quoting.wording.paper import Facts, Paper, SaidFact, Words
from tests.examples import (
    sample_design,
    sample_order,
    sample_quote,
    sample_workshop,
    sample_yarn,
    section,
)
from tests.papers.reading import MM, pdf_words, read_pdf, sample_paper, squeezed
from tests.programs import require_package, require_program

NOWHERE = "\U0010fffd"
"""The last of the private use characters (Unicode, 23.5): no font has a letter for it."""

NOTICE = squeezed("Some letters could not be printed on the computer that made this")

MARKUP = (
    "#let x = 1; #panic[a] *b* _c_ $x$ @ref <lab> // d /* e */ ~ \\ `f`",
    '#image("/etc/passwd") #read("paper.typ") #sys.inputs.paper',
    "= heading == - item + item / term: ]]) \"quoted\" 'single'",
    "<b>Tam</b> & <script>alert(1)</script> &amp; {{ 7 * 7 }} {% if %}",
)

SCRIPTS = {
    "Arabic": "بطانية صوفية لروزاليند كويل",
    "Hebrew": "שמיכת צמר לרוזלינד קוויל",
    "Chinese": "罗莎琳德·奎尔的羊毛毯",
    "emoji": "Wool 🧶 for 👨‍👩‍👧 and 🐑",
}


@pytest.mark.parametrize("name", MARKUP)
def test_markup_in_a_name_is_printed_as_it_was_typed(name: str) -> None:
    paper = sample_paper(title=name, name=name, heading=name, maker=name, address=(name,))
    assert pdf_words(paper).count(squeezed(name)) >= 4
    assert read_pdf(paper).metadata.title == name


@pytest.mark.parametrize("name", SCRIPTS.values(), ids=SCRIPTS)
def test_a_name_in_any_script_comes_out_or_is_owned_up_to(name: str) -> None:
    words = pdf_words(sample_paper(title=name, name=name))
    come_out = set(squeezed(name)) <= set(words)
    assert come_out is (NOTICE not in words)
    assert "Total" in words


@pytest.mark.parametrize("name", SCRIPTS.values(), ids=SCRIPTS)
def test_a_message_has_a_name_in_any_script_as_it_was_typed(name: str) -> None:
    assert paper_text(sample_paper(title=name)).splitlines()[0] == name


def test_a_letter_that_no_font_has_is_a_sign_and_the_paper_is_still_tagged() -> None:
    paper = sample_paper(title=f"For {NOWHERE}Tam", name=f"For {NOWHERE}Tam")
    words = pdf_words(paper)
    assert f"For{MISSING}Tam" in words
    assert NOTICE in words
    root = read_pdf(paper).trailer["/Root"]
    assert b"pdfuaid:part" in root["/Metadata"].get_data()


def test_a_letter_that_every_name_has_is_no_notice() -> None:
    assert NOTICE not in pdf_words(sample_paper())


def test_a_letter_that_no_font_has_may_be_in_the_drawing_and_beside_a_dot() -> None:
    colour = OfferedColour(name=f"oat{NOWHERE}", yarn="moor aran", colour="oat", code="#d9c9a3")
    picture = buyers_picture(sample_quote())
    drawn = replace(picture, svg=picture.svg.replace(">oat<", f">oat{NOWHERE}<"))
    fact = SaidFact(name="Colours", text="", colours=(colour,))
    words = pdf_words(sample_paper(blocks=(drawn, Facts(facts=(fact,)))))
    assert words.count(f"oat{MISSING}") == 2


def test_control_characters_keep_no_paper_from_being_printed() -> None:
    words = pdf_words(sample_paper(title="a\u0001b\ufeffc\u202ed"))
    assert "Total" in words


def test_what_is_refused_names_its_letters() -> None:
    require_package("typst")
    from exports.papers.paper_record import paper_record

    with pytest.raises(Unset) as refused:
        set_paper(paper_record(sample_paper(title=f"For {NOWHERE}")))
    assert refused.value.letters == {NOWHERE}


def test_a_paper_that_is_refused_for_another_reason_is_printed_all_the_same(
    monkeypatch: pytest.MonkeyPatch,
) -> None:
    tried: list[bool] = []

    def refuse(_: object, *, readable: bool = True) -> bytes:
        tried.append(readable)
        if readable:
            raise Unset(frozenset())
        return b"%PDF"

    monkeypatch.setattr("exports.papers.pdf.set_paper", refuse)
    assert paper_pdf(sample_paper()) == b"%PDF"
    assert tried == [True, False]


def test_a_word_of_eighty_letters_stays_on_the_page(tmp_path: Path) -> None:
    """Every word that another reader finds lies within the margins of 14 mm."""
    require_package("typst")
    reader = require_program("pdftotext")
    paper = sample_paper(title="W" * 80, heading="ж" * 80, maker="א" * 80)
    file = tmp_path / "quote.pdf"
    file.write_bytes(paper_pdf(paper))
    found = subprocess.run([reader, "-bbox", file, "-"], capture_output=True, text=True, check=True)
    rightmost = [float(x) for x in re.findall(r'xMax="([\d.]+)"', found.stdout)]
    assert len(rightmost) > 100
    assert max(rightmost) <= (210 - 14) * MM + 0.5
    assert "W" * 80 in pdf_words(paper)


def test_terms_of_ten_thousand_characters_are_printed_to_the_last() -> None:
    terms = "\n".join(f"{n}. What is agreed holds for both." for n in range(1, 290))
    assert len(terms) > 10_000
    paper = sample_paper(blocks=(Words(heading="Terms", texts=(terms,), as_typed=True),))
    assert squeezed(terms[-200:]) in pdf_words(paper).replace("1/", "")
    assert len(read_pdf(paper).pages) > 1
    assert terms in paper_text(paper)


def many_colours() -> Paper:
    names = {f"shade {n}": f"#{n:02x}80{255 - n:02x}" for n in range(40)}
    workshop = sample_workshop(yarns=(sample_yarn(colours=names, stock=()),))
    stripes = {"first_rows": (), "sections": (section(*names),), "border": (), "colours": {}}
    design = sample_design(width_cm=60, height_cm=90, **stripes)
    return quote_paper(sample_quote(sample_order(design=design, extras=()), workshop))


def test_forty_colours_have_their_names_on_paper_and_in_the_message() -> None:
    paper = many_colours()
    words, message = pdf_words(paper), paper_text(paper)
    for n in range(40):
        assert words.count(f"shade{n}") >= 2, "beside its dot and under the drawing"
        assert f"shade {n}" in message
