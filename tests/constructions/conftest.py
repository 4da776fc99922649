"""The tests' own construction, listed beside the program's while a test runs."""

from __future__ import annotations

from collections.abc import Iterator
from pathlib import Path

import pytest
from jinja2 import ChoiceLoader, FileSystemLoader

from quoting.core.order.order import Order
from quoting.core.workshop.stitches import Stitch
from quoting.core.workshop.workshop import Workshop
from quoting.web import create_app
from quoting.web.forms.from_shape import form_of
from quoting.web.shop import open_shop
from tests.constructions.plain_square import PlainSquare, listed
from tests.examples import (
    TODAY,
    band,
    sample_design,
    sample_order,
    sample_swatch,
    sample_workshop,
)
from tests.web.conftest import Maker

TEMPLATES = Path(__file__).parent / "templates"


@pytest.fixture(autouse=True)
def square_listed(monkeypatch: pytest.MonkeyPatch) -> Iterator[None]:
    """List the square for one test; forms are made anew before and after it."""
    listed(monkeypatch.setitem)
    form_of.cache_clear()
    yield
    form_of.cache_clear()


@pytest.fixture
def workshop() -> Workshop:
    """Return the workshop of the scenario, which has measured single crochet: 0.8 by 0.9 cm."""
    swatch = sample_swatch()
    sc = sample_swatch(
        stitch=Stitch.SC.value,
        gauge=type(swatch.gauge)(stitches=10, width_cm=8, rows=10, height_cm=9),
    )
    return sample_workshop(swatches=(swatch, sc))


@pytest.fixture
def order() -> Order:
    """Return a square of 60 cm with one round of border."""
    design = sample_design(
        width_cm=60,
        height_cm=60,
        stitch="sc",
        body=PlainSquare(colour="teal"),
        border=(band(),),
        colours={},
    )
    return sample_order(design=design)


def maker_with(workshop: Workshop, order: Order) -> Maker:
    """Return a maker with an order on her form, which the square has a part of."""
    app = create_app(open_shop(workshop, today=lambda: TODAY).starting_with(order))
    assert app.jinja_loader is not None
    app.jinja_loader = ChoiceLoader([FileSystemLoader(TEMPLATES), app.jinja_loader])  # type: ignore[assignment]
    return Maker(app.test_client())


@pytest.fixture
def maker(workshop: Workshop, order: Order) -> Maker:
    """Return a maker with the square on her form."""
    return maker_with(workshop, order)
