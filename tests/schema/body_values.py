"""Any motif, and any design, piece from the centre or body of squares, whose keys hang together."""

from __future__ import annotations

from collections.abc import Callable
from typing import Any

from hypothesis import strategies as st

from quoting.core.order.design import Design, EndsBecome
from quoting.core.order.from_centre import FromCentre
from quoting.core.order.joined_squares import JoinedSquares, JoinMethod, Layout, MotifJoin
from quoting.core.workshop.motifs import EarlierSide, Motif

Strategy = st.SearchStrategy[Any]
Fields = dict[str, Strategy]

first_sides = st.none() | st.integers(2, 3)
side_chains = st.integers(0, 5)
counts = st.none() | st.integers(1, 7)
nothing = st.none()


def _either(kind: type, fields: Fields, *ways: Fields) -> Strategy:
    """Return values of which one way or another is given, never two."""
    return st.one_of(*(st.builds(kind, **(fields | way)) for way in ways))


def _design(fields: Fields) -> Strategy:
    """Return designs whose ends are enclosed only where there is a border to enclose them in."""
    others = [ends for ends in EndsBecome if ends is not EndsBecome.ENCLOSED]
    with_border = {"border": fields["border"].filter(bool)}
    return _either(Design, fields, with_border, {"ends": st.sampled_from(others)})


def _centre(fields: Fields) -> Strategy:
    own = fields | {"first_side": first_sides, "side_chains": side_chains}
    by_rounds = {"rounds": counts, "repeats": nothing}
    by_repeats = {"rounds": nothing, "repeats": counts, "fitted": st.just(value=False)}
    return _either(FromCentre, own, by_rounds, by_repeats)


def _squares(fields: Fields) -> Strategy:
    layouts, pools = fields["layouts"].filter(bool), fields["pool"].filter(bool)
    laid_out = {"layouts": layouts, "pool": nothing}
    mixed = {"layouts": st.just(()), "pool": pools}
    return _either(JoinedSquares, fields, laid_out, mixed)


def _layout(fields: Fields) -> Strategy:
    """Return layouts whose share, where it is given, is none that a form shows blank."""
    by_share = {"share": nothing | st.floats(1.5, 50), "count": nothing}
    return _either(Layout, fields, by_share, {"share": nothing, "count": counts})


def _join(fields: Fields) -> Strategy:
    own = fields | {"added_cm": nothing | st.floats(1, 20), "needleful_cm": st.floats(10, 2000)}
    coloured = {"colour": fields["colour"].filter(bool)}
    return _either(MotifJoin, own, {"method": st.just(JoinMethod.AS_YOU_GO)}, coloured)


def _motif(fields: Fields) -> Strategy:
    own = fields | {"first_side": first_sides, "side_chains": side_chains}
    return st.builds(_agreeing, st.builds(dict, **own))


def _agreeing(made: dict[str, Any]) -> Motif:
    """Return a motif of one side, which has a length of yarn for each round or none."""
    metres = made["rounds_m"] or (() if made["weighed"] else (2.5,) * made["rounds"])
    rounds = len(metres) or made["rounds"]
    side_cm = made["one_side_cm"] or (made["two_joined_cm"] or 30.0) / 2
    smaller = made["earlier"] and rounds > 1
    own = {
        "rounds": rounds,
        "rounds_m": metres,
        "two_joined_cm": None if made["one_side_cm"] else side_cm * 2,
        "earlier": EarlierSide(rounds=1, side_cm=side_cm / rounds) if smaller else None,
    }
    return Motif(**made | own)


WHOLE: dict[type, Callable[[Fields], Strategy]] = {
    Design: _design,
    FromCentre: _centre,
    JoinedSquares: _squares,
    Layout: _layout,
    MotifJoin: _join,
    Motif: _motif,
}
"""What makes any value of each, from the values of its keys."""
