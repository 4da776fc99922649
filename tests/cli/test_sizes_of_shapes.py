"""The size that comes out is told by its shape: across, or across its sides and its corners."""

from __future__ import annotations

import shutil
from pathlib import Path

import pytest

from quoting.cli import main
from quoting.cli.comparison_table import comparison_table
from quoting.cli.quote_table import quote_table
from quoting.core.order.resizing import own_size
from quoting.core.weighing.comparison import compare_sizes
from quoting.core.workshop.rounds import Counting
from quoting.places import demo_centre
from quoting.wording import speech_of
from quoting.wording.guide import guide_paper
from quoting.wording.paper import Facts
from tests.cli.running import change, refusals
from tests.constructed import constructed_quote, from_centre
from tests.examples import TODAY
from tests.guide.follower import all_blocks

SHAPES = [
    (Counting.SOLID, ""),
    (Counting.CIRCLE, "cm across"),
    (Counting.HEXAGON, "cm from side to side and"),
]


def after(text: str, name: str) -> str:
    """Return what a table says from a name on, its lines joined."""
    return " ".join(text.partition(name)[2].split()[:14])


@pytest.mark.parametrize(("shape", "words"), SHAPES)
def test_the_table_tells_the_size_made_by_its_shape(shape: Counting, words: str) -> None:
    quote = constructed_quote(from_centre(shape), height_cm=60)
    say = speech_of(quote.workshop)
    made = after(quote_table(quote), "Size made")
    plain = " ".join(say.size(quote.plan.width_cm, quote.plan.height_cm).split())
    assert (words or plain) in made
    assert ("corner to corner" in made) is (shape is Counting.HEXAGON)


@pytest.mark.parametrize(("shape", "words"), SHAPES)
def test_the_guide_tells_the_size_by_its_shape(shape: Counting, words: str) -> None:
    quote = constructed_quote(from_centre(shape), height_cm=60)
    facts = [
        f for b in all_blocks(guide_paper(quote).blocks) if isinstance(b, Facts) for f in b.facts
    ]
    (size,) = [fact.text for fact in facts if fact.name == "Size"]
    plain = speech_of(quote.workshop).size(quote.plan.width_cm, quote.plan.height_cm)
    assert words in size if words else size == plain


@pytest.mark.parametrize(("shape", "words"), SHAPES)
def test_sizes_side_by_side_say_what_their_figures_are(shape: Counting, words: str) -> None:
    del words
    quote = constructed_quote(from_centre(shape), height_cm=60)
    order = quote.order
    compared = compare_sizes(order, quote.workshop, (own_size(order),), today=TODAY)
    told = " ".join(comparison_table(compared, speech_of(quote.workshop)).split())
    assert ("the second from corner to corner." in told) is (shape is Counting.HEXAGON)
    by_width = "of each size the width alone counts, not the length."
    assert told.count(by_width) == shape.goes_by_width


def round_order(demo: Path, shape: Counting) -> str:
    """Return the demo's order from the centre in another shape."""
    path = demo / "centre.toml"
    shutil.copy(demo_centre(), path)
    change(path, 'counting = "clusters"', f'counting = "{shape.value}"')
    change(path, "motif =", "# motif =")
    return str(path)


@pytest.mark.parametrize("shape", [shape for shape in Counting if shape.goes_by_width])
def test_what_goes_by_its_width_is_compared_by_its_width_alone(
    demo: Path, capsys: pytest.CaptureFixture[str], shape: Counting
) -> None:
    order = round_order(demo, shape)
    said = []
    for size in ("90cm", "90x90cm"):
        assert main(["compare", order, "--size", size, "--size", "36 in"]) == 0
        said.append(capsys.readouterr().out.replace("90x90cm", "90cm").split())
    assert said[0] == said[1]


def test_what_has_a_length_is_not_compared_without_one(
    demo: Path, capsys: pytest.CaptureFixture[str]
) -> None:
    status, said = refusals(capsys, "compare", str(demo / "order.toml"), "--size", "90cm")
    assert status == 2
    assert "cannot be read as a size" in said
