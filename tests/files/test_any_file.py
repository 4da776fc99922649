"""Whatever is in a file, reading it gives a value or a refusal; what is written reads the same."""

from contextlib import suppress
from datetime import date
from decimal import Decimal

import pytest
from hypothesis import HealthCheck, given, settings
from hypothesis import strategies as st

from quoting.core.ground.errors import Refused
from quoting.core.order.design import BorderBand, ColourSource, Corner, Design
from quoting.core.order.in_rows import InRows, Section, StopAt, Stripe
from quoting.core.order.order import Extra, Order, Terms
from quoting.core.workshop.selling import Target
from quoting.core.workshop.stitches import Vocabulary
from quoting.core.workshop.workshop import Workshop
from quoting.files.toml_text import load_toml
from quoting.places import demo_workshop
from quoting.schema import (
    load_order_text,
    load_workshop,
    load_workshop_text,
    order_text,
)
from quoting.schema.documents import any_locale
from quoting.schema.reading import read_order, read_workshop
from tests.files.samples import EVERY_KEY_OF_AN_ORDER

WORKSHOP = load_workshop(demo_workshop())

scalars = st.one_of(
    st.booleans(),
    st.integers(),
    st.integers(-(2**5000), 2**5000),
    st.decimals(),
    st.text(max_size=8),
    st.sampled_from(["80 cm", "1e400", "4.60", "oat", "moor aran", "hdc", "moss", "GBP", ""]),
    st.dates(),
    st.datetimes(),
    st.times(),
)
anything = st.recursive(
    scalars,
    lambda inner: st.lists(inner, max_size=3) | st.dictionaries(st.text(max_size=5), inner),
    max_leaves=5,
)


def places_in(content, path=()):
    """Yield the path of every entry in a table, tables and lists included."""
    items = content.items() if isinstance(content, dict) else enumerate(content)
    for key, value in items:
        yield (*path, key)
        if isinstance(value, dict | list):
            yield from places_in(value, (*path, key))


def spoilt(content, path, value):
    """Return a copy of a table with another value at one place, or without it."""
    if not path:
        return value
    copy = dict(content) if isinstance(content, dict) else list(content)
    if len(path) == 1 and value is None:
        del copy[path[0]]
    else:
        copy[path[0]] = spoilt(copy[path[0]], path[1:], value)
    return copy


def some_spoilt(file):
    content = load_toml(file.read_bytes())
    paths = st.sampled_from(sorted(places_in(content), key=str))
    changes = st.lists(st.tuples(paths, st.none() | anything), min_size=1, max_size=4)

    def spoil(changes):
        table = content
        for path, value in changes:
            with suppress(KeyError, IndexError, TypeError):
                table = spoilt(table, path, value)
        return table

    return changes.map(spoil)


@given(some_spoilt(EVERY_KEY_OF_AN_ORDER))
def test_any_table_is_an_order_or_is_refused(table):
    with suppress(Refused):
        assert isinstance(read_order(table, WORKSHOP), Order)


@given(some_spoilt(demo_workshop()))
def test_any_table_is_a_workshop_or_is_refused(table):
    with suppress(Refused):
        assert isinstance(read_workshop(table, any_locale), Workshop)


@given(st.binary(max_size=200) | st.text(max_size=200))
def test_any_bytes_are_refused_and_nothing_worse(source):
    with pytest.raises(Refused):
        load_workshop_text(source)
    with pytest.raises(Refused):
        load_order_text(source, WORKSHOP)


@settings(suppress_health_check=[HealthCheck.too_slow])
@given(st.data())
def test_a_damaged_file_is_an_order_or_is_refused(data):
    whole = EVERY_KEY_OF_AN_ORDER.read_bytes()
    start = data.draw(st.integers(0, len(whole)))
    end = data.draw(st.integers(start, min(len(whole), start + 40)))
    damaged = whole[:start] + data.draw(st.binary(max_size=10)) + whole[end:]
    with suppress(Refused):
        assert isinstance(load_order_text(damaged, WORKSHOP), Order)


printable = st.text(st.characters(categories=["L", "N", "P", "S"]), min_size=1, max_size=20)
colours = st.sampled_from(["oat", "teal", "rust"])
stitches = st.sampled_from(["sc", "hdc", "dc", "tr", "moss"])
money = st.decimals(Decimal("0.01"), 10**6, places=2)
sizes = st.floats(0.01, 1000)
counts = st.integers(1, 10_000)
stripes = st.builds(Stripe, colour=colours, rows=counts, stitch=st.none() | stitches)
stripe_lists = st.lists(stripes, max_size=3).map(tuple)
sections = st.builds(
    Section, stripes=st.lists(stripes, min_size=1, max_size=3).map(tuple), share=st.floats(0.01, 99)
) | st.builds(Section, stripes=st.tuples(stripes), repeats=counts)
bodies = st.builds(
    InRows,
    sections=st.lists(sections, min_size=1, max_size=3).map(tuple),
    first_rows=stripe_lists,
    last_rows=stripe_lists,
    stitches=st.none() | counts,
    multiple=st.none() | counts,
    plus=st.none() | st.integers(0, 100),
    stop_at=st.sampled_from(StopAt),
)
designs = st.builds(
    Design,
    width_cm=sizes,
    height_cm=sizes,
    stitch=stitches,
    yarn=st.just("moor aran"),
    body=bodies,
    border=st.lists(
        st.builds(
            BorderBand,
            stitch=stitches,
            colour=colours,
            rounds=st.integers(1, 100),
            row_end_ratio=st.none() | st.floats(0.1, 100),
            corner=st.sampled_from(Corner),
        ),
        max_size=2,
    ).map(tuple),
    colours=st.dictionaries(
        printable, st.builds(ColourSource, yarn=st.just("moor aran"), colour=colours), max_size=2
    ),
    mix_lots=st.booleans(),
)
targets = (
    st.builds(Target, margin=st.floats(-1, 1))
    | st.builds(Target, markup=st.floats(0, 5))
    | st.builds(Target, given=money)
)
orders = st.builds(
    Order,
    title=printable,
    buyer=st.text("RQ \"'\\#", max_size=20),
    design=designs,
    for_baby=st.booleans(),
    quantity=st.integers(1, 1000),
    wanted_by=st.none() | st.dates(date(2026, 1, 1)),
    deliver_to=st.sampled_from([None, "GB", "Isle of Rue"]),
    pays_in=st.sampled_from([None, "GBP", "EUR"]),
    notes=st.text("no wool\n\t", max_size=30),
    extras=st.lists(
        st.builds(
            Extra,
            what=printable,
            cost=money,
            minutes=st.floats(0, 1000),
            colour=colours,
            yarn_m=st.floats(0.01, 1000),
        ),
        max_size=2,
    ).map(tuple),
    terms=st.builds(
        Terms, target=st.none() | targets, discount=st.floats(0, 0.99), rush=st.floats(0, 10)
    ),
)


@settings(suppress_health_check=[HealthCheck.too_slow, HealthCheck.data_too_large])
@given(orders, st.sampled_from(Vocabulary))
def test_an_order_that_is_written_is_read_as_the_same(order, terms):
    assert load_order_text(order_text(order, terms), WORKSHOP) == order


@given(anything)
def test_a_whole_file_may_hold_anything(value):
    table = {"order": value, "blanket": value, "price": value, "extras": value, "terms": value}
    with pytest.raises(Refused):
        read_order(table, WORKSHOP)
