"""The pages that show what was measured and decided."""

from dataclasses import replace
from typing import Any

from quoting.core.ground.measures import Units
from quoting.core.workshop.stitches import Stitch, Vocabulary
from quoting.core.workshop.timings import Timing
from quoting.core.workshop.workshop import Pattern
from quoting.schema import load_workshop_text
from quoting.web import create_app
from quoting.web.shop import open_shop
from tests.examples import TODAY, WOOL, sample_minutes, sample_workshop, sample_yarn
from tests.web.conftest import Maker, maker_in


def test_measurements_show_what_follows_from_a_swatch(maker: Maker) -> None:
    text = maker.open("/measurements").root.text
    assert "16 stitches over 12.8 cm" in text
    assert "0.8 cm wide, 0.95 cm high" in text
    assert "workshop.toml" in text


def timed_row(*minutes: float, **changes: Any) -> list[str]:
    timings = tuple(Timing(stitch="hdc", stitches=100, minutes=m, **changes) for m in minutes)
    return maker_in(sample_workshop(timings=timings)).open("/measurements").table("For ±5 %")[1]


def test_measurements_say_how_many_timings_are_still_wanted() -> None:
    # Student's t of two degrees is 4.303, s/mean 1/6: (4.303 / 6 / 0.05)² = 205.7, 206 − 3 = 203
    assert timed_row(5.0, 6.0, 7.0)[-1] == "203 more timings"


def test_nothing_is_promised_of_fewer_than_five_timings() -> None:
    assert timed_row(5.0)[-1] == "4 more timings to tell"
    assert timed_row(5.0, 5.0, 5.0, 5.0)[-1] == "1 more timing to tell"
    assert timed_row(5.0, 5.0, 5.0, 5.0, 5.0)[-1] == "no more timings"


def test_a_timing_shows_the_yarn_and_the_hook_it_was_made_with() -> None:
    assert timed_row(5.0)[:2] == ["hdc", "any"]
    assert timed_row(5.0, yarn=WOOL, hook_mm=5.5)[:2] == ["hdc", "moor aran, 5.5 mm"]


def test_minutes_that_were_not_given_are_told_from_a_nought() -> None:
    minutes = sample_minutes(wash=None, pack=(0.0,), rip_back=None)
    page = maker_in(sample_workshop(minutes=minutes)).open("/measurements")
    rows = {row[0]: row[1:] for row in page.table("For one of each")}
    assert rows["Blocking"] == ["not given", ""]
    assert rows["Packing"] == ["0", "1"]
    assert "Frogging: not given." in page.root.text


def test_an_order_says_which_work_is_not_in_its_hours() -> None:
    shop = sample_workshop(minutes=sample_minutes(wash=None, letters=None))
    said = "No minutes are given for blocking and messages with the buyer"
    assert said in maker_in(shop).open().root.text
    assert "No minutes are given" not in maker_in(sample_workshop()).open().root.text


def test_a_range_is_likely_by_five_timings_and_rough_by_fewer() -> None:
    session = Timing(stitch="hdc", stitches=500, minutes=27)
    few, enough = (
        maker_in(sample_workshop(timings=(session,) * times)).open().root.text for times in (4, 5)
    )
    assert ("roughly" in few, "most likely" in few) == (True, False)
    assert ("roughly" in enough, "most likely" in enough) == (False, True)


def test_yarn_shows_the_price_of_a_metre_and_of_a_yard(maker: Maker) -> None:
    assert maker.open("/yarn").table("For 1 m")[1][-1] == "£0.023"
    inches = maker_in(sample_workshop(units=Units.INCHES))
    # 4.60 / 200 m = 0.023 a metre; a yard is 0.9144 m exactly (NIST Handbook 44)
    assert inches.open("/yarn").table("For 1 yd")[1][-1] == "£0.021"


def test_a_category_that_was_not_given_is_told_as_not_given(maker: Maker) -> None:
    assert "aran, worsted / medium (4)," in maker.open("/yarn").root.text
    nameless = maker_in(sample_workshop(yarns=(sample_yarn(category=None),)))
    text = nameless.open("/yarn").root.text
    assert "category not given," in text
    assert "hooks usual" not in text


def test_the_workshop_page_shows_how_a_pattern_turns_and_repeats() -> None:
    shell = Pattern(
        name="shell", like=Stitch.DC, multiple=6, plus=1, turning_chains=1, row_repeat=2
    )
    page = maker_in(sample_workshop(patterns=(shell,))).open("/workshop")
    assert (
        "shell: like dc, multiple of 6 + 1, 2 rows to a repeat; "
        "turned with 1 chain, begun with 1 chain more than its stitches"
    ) in " ".join(page.root.text.split())


def test_the_workshop_page_shows_pay_fees_and_delivery(maker: Maker) -> None:
    text = maker.open("/workshop").root.text
    for words in ("£14.00 an hour", "Card payment: 1.5%", "Charged £5.00", "12 hours a week"):
        assert words in " ".join(text.split())


def test_stitches_are_named_as_the_workshop_speaks() -> None:
    maker = maker_in(sample_workshop(speaks=Vocabulary.UK))
    stitch = maker.open().labelled("Stitch or pattern")
    chosen = next(o for o in stitch.all("option") if "selected" in o.attributes)
    assert (chosen.attributes["value"], chosen.text) == ("hdc", "htr, half treble")
    assert maker.open("/measurements").root.text.count("htr in moor aran") == 1


def test_borrowed_measurements_are_owned_up_to_on_every_page() -> None:
    shop = replace(open_shop(sample_workshop(), today=lambda: TODAY), borrowed=True)
    borrower = Maker(create_app(shop).test_client())
    for address in ("/", "/measurements", "/yarn", "/workshop"):
        assert "the demo’s measurements, not yours" in borrower.open(address).root.text


def test_a_workshop_served_without_a_book_is_handed_out_as_a_file() -> None:
    own = sample_workshop(name="Hollin Edge")
    assert load_workshop_text(maker_in(own).client.get("/workshop.toml").text) == own
