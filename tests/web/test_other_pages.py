"""The pages that show what was measured and decided."""

from dataclasses import replace

from quoting.core.measures import Units
from quoting.core.stitches import Stitch, Vocabulary
from quoting.core.timing import Timing
from quoting.core.workshop import Pattern
from quoting.web import create_app
from quoting.web.shop import open_shop
from tests.examples import TODAY, sample_workshop, sample_yarn
from tests.web.conftest import Maker, maker_in


def test_measurements_show_what_follows_from_a_swatch(maker: Maker) -> None:
    text = maker.open("/measurements").root.text
    assert "16 stitches over 12.8 cm" in text
    assert "0.8 cm wide, 0.95 cm high" in text
    assert "workshop.toml" in text


def test_measurements_say_how_many_timings_are_still_wanted() -> None:
    timings = tuple(Timing(stitch="hdc", stitches=100, minutes=m) for m in (5.0, 6.0, 7.0))
    rows = maker_in(sample_workshop(timings=timings)).open("/measurements").table("For ±5 %")
    # ILO formula with x = 0.05, 0.06, 0.07: (40 √(3·0.0110 − 0.18²) / 0.18)² = 29.6, 30 − 3 = 27
    assert rows[1][-1] == "27 more timings"


def test_yarn_shows_the_price_of_a_metre_and_of_a_yard(maker: Maker) -> None:
    assert maker.open("/yarn").table("For 1 m")[1][-1] == "£0.023"
    inches = maker_in(sample_workshop(units=Units.INCHES))
    # 4.60 / 200 m = 0.023 a metre; a yard is 0.9144 m exactly (NIST Handbook 44)
    assert inches.open("/yarn").table("For 1 yd")[1][-1] == "£0.021"


def test_a_category_that_was_not_given_is_told_as_not_given(maker: Maker) -> None:
    assert "category 4," in maker.open("/yarn").root.text
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
        "shell: like dc, a multiple of 6 and 1 more, 2 rows to a repeat; "
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
    starter = borrower.client.get("/workshop.toml")
    assert b"[workshop]" in starter.data
