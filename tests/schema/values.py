"""Any value of a shape, made from its kinds; and the few values whose keys hang together."""

from __future__ import annotations

from collections.abc import Callable
from dataclasses import MISSING
from decimal import Decimal
from typing import Any

from hypothesis import strategies as st

from quoting.core.order.design import Design, EndsBecome
from quoting.core.order.from_centre import FromCentre
from quoting.core.order.in_rows import Section
from quoting.core.order.joined_squares import (
    NEEDLEFUL_CM,
    SEWN,
    JoinedSquares,
    JoinMethod,
    Layout,
    MotifJoin,
)
from quoting.core.order.order import Extra, Order
from quoting.core.workshop.exchange import ExchangeRate
from quoting.core.workshop.habits import CONFIDENCE, Habits
from quoting.core.workshop.motifs import EarlierSide, Motif
from quoting.core.workshop.rounds import Counting
from quoting.core.workshop.selling import Deposit, Pricing, Target
from quoting.core.workshop.swatches import Swatch
from quoting.core.workshop.workshop import Workshop
from quoting.core.workshop.yarns import Stock, Yarn
from quoting.schema.blanket_shapes import BORDER_BAND, LAYOUT, POOL
from quoting.schema.chosen import Chosen
from quoting.schema.kind import Kind
from quoting.schema.measurement_shapes import PIECE, PUT_UP, RUN, WEIGHED
from quoting.schema.several import Named, NamedBy, OneOrMore, Several
from quoting.schema.shape import Key, Shape
from quoting.schema.spot import default_of
from quoting.schema.words import (
    Choice,
)
from tests.schema.plain_values import (
    CURRENCIES,
    OWN_PATTERN,
    PLAIN,
    Strategy,
    either,
    few,
    measured,
    money,
    texts,
)


def of_kind(kind: Kind[Any]) -> Strategy:
    """Return any value of a kind that its keys would take."""
    match kind:
        case Shape():
            return of_shape(kind)
        case Chosen():
            return st.one_of(*map(of_shape, kind.shapes.values()))
        case Choice():
            return st.sampled_from(list(kind.words))
        case OneOrMore() | Several():
            return few(of_kind(kind.each))
        case Named():
            return st.dictionaries(texts, of_kind(kind.each), min_size=1, max_size=2)
        case NamedBy():
            return rates(kind)
    return next(values for of, values in PLAIN if isinstance(kind, of))


def of_shape(shape: Shape[Any], **given: Strategy) -> Strategy:
    """Return any value of a shape; what may be left out sometimes is."""
    fields = {key.field: _of_key(shape, key) for key in shape.keys}
    whole = _WHOLE.get(shape.value, lambda fields: st.builds(shape.value, **fields))
    return whole(fields | given)


def _of_key(shape: Shape[Any], key: Key) -> Strategy:
    item = shape.value.__dataclass_fields__[key.field]
    values = of_kind(key.kind)
    if item.default is MISSING and item.default_factory is MISSING:
        return values
    return st.just(default_of(item)) | values


def rates(kind: NamedBy[Any]) -> Strategy:
    """Return some rates of exchange by their currencies."""
    one = st.sampled_from(CURRENCIES).flatmap(
        lambda code: of_shape(kind.shape, currency=st.just(code))
    )
    return st.lists(one, max_size=2).map(lambda made: {rate.currency: rate for rate in made})


def _section(fields: dict[str, Strategy]) -> Strategy:
    """Return sections whose share, where it is given, is none that a form shows blank."""
    by_repeats = {"share": st.none(), "fitted": st.just(value=False)}
    by_share = {"share": st.floats(1.5, 50), "repeats": st.none()}
    return either(Section, fields, by_repeats, by_share)


def _design(fields: dict[str, Strategy]) -> Strategy:
    """Return designs that have a border where ends are enclosed in it."""
    free = {"ends": st.sampled_from([end for end in EndsBecome if end != EndsBecome.ENCLOSED])}
    bordered = {"ends": st.just(EndsBecome.ENCLOSED), "border": few(of_shape(BORDER_BAND))}
    return either(Design, fields, free, bordered)


_NO_CHOICE = {"first_side": st.none(), "side_chains": st.just(1)}
_SOLID = {"counting": st.just(Counting.SOLID), "first_side": st.none() | st.integers(2, 3)}
_CLUSTERS = {"counting": st.just(Counting.CLUSTERS), "side_chains": st.integers(0, 5)}
_ROUND = {"counting": st.sampled_from([shape for shape in Counting if shape.goes_by_width])}


def _centre(fields: dict[str, Strategy]) -> Strategy:
    by_rounds = {"repeats": st.none()}
    by_repeats = {"rounds": st.none(), "fitted": st.just(value=False)}
    shapes = (_SOLID, _CLUSTERS, _ROUND | {"starts_on": st.none()})
    ways = [count | shape for count in (by_rounds, by_repeats) for shape in shapes]
    return either(FromCentre, fields | _NO_CHOICE, *ways)


def _layout(fields: dict[str, Strategy]) -> Strategy:
    """Return layouts whose share, where it is given, is none that a form shows blank."""
    by_share = {"share": st.none() | st.floats(1.5, 50), "count": st.none()}
    return either(Layout, fields, by_share, {"share": st.none()})


def _join(fields: dict[str, Strategy]) -> Strategy:
    own = {"added_cm": st.none() | st.floats(1, 20), "colour": texts}
    sewn = {"method": st.sampled_from(SEWN), "needleful_cm": st.floats(10, 900)}
    other = {
        "method": st.sampled_from([method for method in JoinMethod if method not in SEWN]),
        "needleful_cm": st.just(NEEDLEFUL_CM),
    }
    return either(MotifJoin, fields | own, sewn, other)


def _squares(fields: dict[str, Strategy]) -> Strategy:
    layouts, pool = {"pool": st.none()}, {"layouts": st.just(()), "pool": of_shape(POOL)}
    return either(JoinedSquares, fields, layouts | {"layouts": few(of_shape(LAYOUT))}, pool)


def _motif(fields: dict[str, Strategy]) -> Strategy:
    """Return motifs of four rounds, 10 cm wide, of 6 cm after the second if that was measured."""
    own = _NO_CHOICE | {
        "rounds": st.just(4),
        "earlier": st.none() | st.just(EarlierSide(rounds=2, side_cm=6)),
        "weighed": of_shape(WEIGHED),
        "rounds_m": st.just(()) | st.lists(measured, min_size=4, max_size=4).map(tuple),
    }
    one = {"one_side_cm": st.just(10.0), "two_joined_cm": st.none()}
    two = {"one_side_cm": st.none(), "two_joined_cm": st.just(20.0)}
    ways = [side | shape for side in (one, two) for shape in (_SOLID, _CLUSTERS, _ROUND)]
    return either(Motif, fields | own, *ways)


def _target(_: dict[str, Strategy]) -> Strategy:
    given = {"given": money}, {"margin": st.floats(0.1, 9)}, {"markup": st.floats(0.1, 9)}
    return either(Target, {}, *given)


def _deposit(_: dict[str, Strategy]) -> Strategy:
    share, yarn = {"share": st.floats(0.1, 1)}, {"yarn": st.just(value=True)}
    return either(Deposit, {}, share, yarn, share | yarn)


def _habits(fields: dict[str, Strategy]) -> Strategy:
    usual, none = {"confidence": st.just(CONFIDENCE)}, {"allowance": st.none()}
    return either(Habits, fields, usual, none)


def _swatch(fields: dict[str, Strategy]) -> Strategy:
    by_weight = {"piece": of_shape(PIECE), "run": st.none()}
    by_length = {"piece": st.none(), "run": of_shape(RUN)}
    return either(Swatch, fields, by_weight, by_length)


def _extra(fields: dict[str, Strategy]) -> Strategy:
    no_yarn = {"colour": st.none(), "yarn_m": st.just(0.0)}
    return either(Extra, fields, no_yarn, {"colour": texts, "yarn_m": measured})


def _yarn(fields: dict[str, Strategy]) -> Strategy:
    names = st.lists(texts, min_size=1, max_size=3, unique=True)
    return names.flatmap(
        lambda colours: st.builds(
            Yarn,
            **fields
            | {
                "colours": st.just(dict.fromkeys(colours, "#d9c9a3")),
                "put_ups": few(of_shape(PUT_UP)),
                "stock": few(st.builds(Stock, colour=st.sampled_from(colours), weight_g=measured)),
            },
        )
    )


def _pricing(fields: dict[str, Strategy]) -> Strategy:
    target = st.builds(Target, margin=st.floats(0.1, 9))
    return st.builds(Pricing, **fields | {"target": target})


def _rate(fields: dict[str, Strategy]) -> Strategy:
    return st.builds(ExchangeRate, **{"currency": st.sampled_from(CURRENCIES)} | fields)


def _order(fields: dict[str, Strategy]) -> Strategy:
    buyers = st.just("") | texts
    currency = st.none() | st.sampled_from(CURRENCIES)
    return st.builds(Order, **fields | {"buyer": buyers, "pays_in": currency})


def _workshop(fields: dict[str, Strategy]) -> Strategy:
    """Return workshops whose swatches and timings are of their one yarn and their one pattern."""
    own = fields | {"currency": st.just("GBP"), "locale": st.just("en_GB")}
    return st.builds(_agreeing, st.builds(dict, **own))


def _agreeing(made: dict[str, Any]) -> Workshop:
    yarn, pattern = made["yarns"][0], made["patterns"][:1]
    object.__setattr__(made["pricing"], "round_up_to", Decimal(1))
    for one in pattern:
        object.__setattr__(one, "name", OWN_PATTERN)
    for number, motif in enumerate(made["motifs"], 1):
        object.__setattr__(motif, "name", f"square {number}")
    for measured_in in (*made["swatches"], *made["timings"], *made["motifs"]):
        object.__setattr__(measured_in, "yarn", yarn.name)
        if not pattern:
            object.__setattr__(measured_in, "stitch", "hdc")
    words = {words.language: words for words in made["words_in"]}
    own = {"yarns": (yarn,), "patterns": pattern, "words_in": tuple(words.values())}
    return Workshop(**made | own)


_WHOLE: dict[type, Callable[[dict[str, Strategy]], Strategy]] = {
    Deposit: _deposit,
    Design: _design,
    ExchangeRate: _rate,
    Extra: _extra,
    FromCentre: _centre,
    Habits: _habits,
    JoinedSquares: _squares,
    Layout: _layout,
    Motif: _motif,
    MotifJoin: _join,
    Order: _order,
    Pricing: _pricing,
    Section: _section,
    Swatch: _swatch,
    Target: _target,
    Workshop: _workshop,
    Yarn: _yarn,
}
