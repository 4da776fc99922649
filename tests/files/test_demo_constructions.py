"""The demo's motif, and its orders that are not worked in rows, give the values that they say."""

import pytest

from quoting.core.order.design import EndsBecome
from quoting.core.order.from_centre import FromCentre
from quoting.core.order.joined_squares import JoinedSquares, JoinMethod
from quoting.core.workshop.motifs import EarlierSide, WeighedMotifs
from quoting.core.workshop.rounds import Counting
from quoting.places import demo_centre, demo_squares
from quoting.schema import load_order


def test_the_workshop_has_a_motif_weighed_measured_and_timed(workshop):
    (motif,) = workshop.motifs
    assert (motif.name, motif.yarn, motif.stitch) == ("ottermoor square", "moor aran", "dc")
    assert (motif.counting, motif.rounds, motif.side_cm) == (Counting.CLUSTERS, 5, 15.0)
    assert motif.weighed == WeighedMotifs(motifs=6, weight_g=54.0, scale_step_g=1.0)
    assert motif.earlier == EarlierSide(rounds=2, side_cm=7.2)
    assert motif.growth_cm == pytest.approx(2.6)
    assert [timing.minutes / timing.motifs for timing in motif.timings] == [19.5, 19.0, 19.125]


def test_the_demo_has_an_order_of_squares(workshop):
    order = load_order(demo_squares(), workshop)
    body = order.design.body
    assert isinstance(body, JoinedSquares)
    assert body.motif == "ottermoor square"
    assert [layout.share for layout in body.layouts] == [1.0, 1.0]
    assert {layout.colours[-1] for layout in body.layouts} == {"oat"}
    assert body.join.method is JoinMethod.AS_YOU_GO
    assert order.design.ends is EndsBecome.WORKED_OVER


def test_the_demo_has_an_order_from_the_centre(workshop):
    body = load_order(demo_centre(), workshop).design.body
    assert isinstance(body, FromCentre)
    assert (body.counting, body.motif, body.fitted) == (Counting.CLUSTERS, "ottermoor square", True)
    assert [stripe.colour for stripe in body.stripes] == ["cream", "heather", "teal", "rust", "oat"]
