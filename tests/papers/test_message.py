"""A message is plain text that survives letters of any width."""

from __future__ import annotations

from dataclasses import replace

from exports.papers.message import paper_text
from quoting.core.quote.offer import OfferedColour
from quoting.wording.paper import (
    Amounts,
    Beside,
    Facts,
    Listing,
    Paper,
    Picture,
    SaidFact,
    SaidRow,
    Words,
)

TEAL = OfferedColour(name="teal", yarn="moor aran", colour="teal", code="#1f6f78")
BLOCKS = (
    Words(texts=("Thank you.\nIt is a pleasure.",), as_typed=True),
    Beside(
        columns=(
            (Picture(svg="<svg/>", in_words="stripes"), Words(texts=("Under it.",))),
            (
                Amounts(rows=(SaidRow(name="Total", amount="£1\u00a0200.00", is_total=True),)),
                Facts(heading="What", facts=(SaidFact(name="Colours", text="", colours=(TEAL,)),)),
            ),
        )
    ),
    Listing(heads=("Yarn", "Balls"), rows=(("oat", "3"), ("teal", "")), figures_from=1),
    Listing(heads=("Do",), rows=(("Wash it",),), figures_from=1, ticks=True),
    Words(texts=("Keep it from fire.",), warning="Please note:"),
)
PAPER = Paper(
    language="en",
    name="Quote 2026-001 – Moorland",
    maker="Ottermoor Blankets",
    address=("Otter Lane\nOttermoor",),
    title="Moorland",
    heading="Quote 2026-001 for Rosalind Quill",
    blocks=BLOCKS,
)


def test_every_block_is_told_in_its_order_and_the_maker_signs_it() -> None:
    assert paper_text(PAPER) == (
        "Moorland\nQuote 2026-001 for Rosalind Quill\n\n"
        "Thank you.\nIt is a pleasure.\n\n"
        "Total: £1 200.00\n\n"
        "What\nColours: teal\n\n"
        "Under it.\n\n"
        "• oat: Balls 3\n• teal\n\n"
        "☐ Wash it\n\n"
        "Please note: Keep it from fire.\n\n"
        "Ottermoor Blankets\nOtter Lane\nOttermoor\n"
    )


def test_a_name_is_joined_to_its_value_as_the_language_does() -> None:
    """French typography, common practice: a space before a colon; the others have none."""
    amounts = Amounts(rows=(SaidRow(name="Total", amount="100", is_total=True),))
    told = {
        language: paper_text(replace(PAPER, language=language, blocks=(amounts,)))
        for language in ("de", "en", "es", "fr", "nl")
    }
    assert "\nTotal : 100\n" in told.pop("fr")
    assert all("\nTotal: 100\n" in text for text in told.values())


def test_what_is_listed_is_joined_so_too() -> None:
    listing = Listing(heads=("Yarn", "Balls"), rows=(("oat", "3"),), figures_from=1)
    assert "• oat : Balls 3" in paper_text(replace(PAPER, language="fr", blocks=(listing,)))


def test_nothing_stands_where_a_paper_says_nothing() -> None:
    bare = Paper(language="en", name="Label", title="Moorland", blocks=())
    assert paper_text(bare) == "Moorland\n"
