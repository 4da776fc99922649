"""A workshop file with a dozen mistakes, read into a full book: all told, nothing changed."""

from __future__ import annotations

from pathlib import Path

from quoting.places import demo_workshop
from tests.web.own_maker import own_maker
from tests.web.rich_workshop import rich

SPOILED = {
    "workshop.currency": ('currency = "GBP"', 'currency = "GBX"'),
    "workshop.units": ('units = "cm"', 'units = "ells"'),
    "workshop.hours_per_week": ("hours_per_week = 12", "hours_per_week = 200"),
    "workshop.tail": ('tail = "15 cm"', 'tail = "15 spans"'),
    "yarns.1.colours.oat": ('oat = "#d9c9a3"', 'oat = "oatmeal"'),
    "yarns.1.put_ups.1.price": ('price = "4.60"', 'price = "a lot"'),
    "swatches.1.stitch": ('stitch = "hdc"\nhook_mm', 'stitch = "hop"\nhook_mm'),
    "swatches.1.day": ("day = 2026-11-02", 'day = "last week"'),
    "timings.1.minutes": ("minutes = 27.5", "minutes = 0"),
    "price.margn": ("margin = 0.15", "margin = 0.15\nmargn = 0.2"),
    "fees.1.on": ('on = "total"', 'on = "Tuesdays"'),
    "calendar.days_off.2": ("2026-12-25]", "25]"),
}


def test_a_dozen_mistakes_of_a_file_are_all_told_and_the_book_stays_as_it_is(
    tmp_path: Path,
) -> None:
    text = demo_workshop().read_text("utf-8")
    for old, new in SPOILED.values():
        assert old in text
        text = text.replace(old, new, 1)
    with own_maker(tmp_path, rich()) as maker:
        page = maker.give(text)
        assert maker.status == 422
        places = [place for place, _ in page.table("Place in the file")[1:]]
        assert sorted(places) == sorted(SPOILED)
        assert (maker.workshop, maker.version) == (rich(), 1)
