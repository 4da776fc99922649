"""Blankets side by side: to one scale, without words, each with ids of its own."""

from __future__ import annotations

import re
import xml.etree.ElementTree as ET

import pytest

from exports.drawing import draw_side_by_side
from quoting.wording import speech_of
from tests.drawing.pictures import of_class, quote_of, sizes
from tests.examples import sample_workshop

SPEECH = speech_of(sample_workshop())
SMALL, LARGE = quote_of(height_cm=50, width_cm=40), quote_of(height_cm=100, width_cm=80)
DRAWN = tuple(draw_side_by_side([SMALL, LARGE], SPEECH))
PICTURES = [ET.fromstring(drawn) for drawn in DRAWN]


def shares(picture: ET.Element) -> tuple[float, float]:
    """Return which part of a picture's width and height its blanket takes."""
    _, _, width, height = map(float, picture.attrib["viewBox"].split())
    ((wide, high),) = sizes(of_class(picture, "outline"), "width", "height")
    return wide / width, high / height


def test_blankets_are_drawn_to_one_scale() -> None:
    """In pictures that are shown equally wide a blanket is as large as it is to the others."""
    small, large = map(shares, PICTURES)
    plans = SMALL.plan, LARGE.plan
    assert small[0] / large[0] == pytest.approx(plans[0].width_cm / plans[1].width_cm, rel=0.03)
    assert small[1] / large[1] == pytest.approx(plans[0].height_cm / plans[1].height_cm, rel=0.03)
    boxes = [list(map(float, picture.attrib["viewBox"].split())) for picture in PICTURES]
    assert boxes[0][2] / boxes[0][3] == pytest.approx(boxes[1][2] / boxes[1][3], rel=0.02)


def test_nothing_is_written_in_them_but_what_they_are() -> None:
    for drawn in DRAWN:
        assert "<text" not in drawn
        assert "drawn to scale" in drawn


def test_no_two_have_an_id_in_common() -> None:
    ids = [name for drawn in DRAWN for name in re.findall(r'\bid="([^"]+)"', drawn)]
    assert len(ids) == len(set(ids)) >= 4
