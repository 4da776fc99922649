"""The demo's two files give the values that they say."""

import importlib.util
import shutil
from dataclasses import replace
from datetime import date
from decimal import Decimal

import pytest

from quoting import places
from quoting.core.ground.measures import Units
from quoting.core.order.design import BorderBand, ColourSource, Corner
from quoting.core.order.in_rows import Section, StopAt, Stripe
from quoting.core.order.order import Extra, Terms
from quoting.core.workshop.calendar import WorkingCalendar
from quoting.core.workshop.habits import Habits, Join
from quoting.core.workshop.selling import (
    Delivery,
    DeliveryBand,
    Deposit,
    Fee,
    FeeBase,
    Pay,
    Target,
    Tax,
    YarnCharged,
)
from quoting.core.workshop.stitches import Stitch, Vocabulary
from quoting.core.workshop.swatches import Piece, Reading, Run
from quoting.core.workshop.timings import Timing
from quoting.core.workshop.workshop import Pattern
from quoting.core.workshop.yarns import PutUp, Stock
from quoting.places import config_folder, demo_order, demo_workshop
from quoting.schema import load_order, load_workshop_text
from tests.files.samples import EVERY_KEY_OF_AN_ORDER


@pytest.fixture
def order(workshop):
    return load_order(EVERY_KEY_OF_AN_ORDER, workshop)


def test_the_demo_order_is_the_plain_part_of_it(workshop, order):
    demo = load_order(demo_order(), workshop)
    (band,) = order.design.border
    plain = replace(order.design, colours={}, border=(replace(band, row_end_ratio=None),))
    assert demo.design == plain
    assert demo.terms == Terms()
    assert demo.extras == order.extras


def test_the_order_says_who_wants_it_when_and_where(order):
    assert order.title == "Cot blanket in moorland stripes"
    assert order.buyer == "Rosalind Quill"
    assert order.for_baby is True
    assert order.quantity == 1
    assert order.wanted_by == date(2027, 3, 20)
    assert (order.deliver_to, order.pays_in) == ("GB", "GBP")
    assert order.notes == "No wool: allergy"


def test_the_blanket_is_striped_as_the_order_says(order):
    design = order.design
    stripes = tuple(Stripe(colour=colour, rows=1) for colour in ("teal", "rust", "oat"))
    assert (design.width_cm, design.height_cm) == (80.0, 100.0)
    assert (design.stitch, design.yarn) == ("hdc", "moor aran")
    assert design.body.first_rows == (Stripe(colour="oat", rows=1),)
    assert design.body.last_rows == ()
    assert design.body.sections == (Section(share=1.0, stripes=stripes),)
    assert design.border == (
        BorderBand(stitch="sc", colour="oat", rounds=1, row_end_ratio=1.0, corner=Corner.CHAIN),
    )
    assert dict(design.colours) == {"cream": ColourSource(yarn="moor aran", colour="oat")}
    assert design.body.stop_at is StopAt.REPEAT
    assert (design.body.stitches, design.body.multiple, design.body.plus) == (None, None, None)
    assert design.mix_lots is False


def test_the_order_has_its_own_extras_and_price(order):
    assert order.extras == (Extra(what="Gift box", cost=Decimal("3.20"), minutes=5.0),)
    assert order.terms == Terms(target=Target(given=Decimal(185)), discount=0.05)


def test_the_workshop_says_whose_it_is_and_how_it_works(workshop):
    assert (workshop.name, workshop.locale) == ("Ottermoor Blankets", "en_GB")
    assert (workshop.currency, workshop.hours_per_week) == ("GBP", 12.0)
    assert (workshop.units, workshop.speaks) == (Units.METRIC, Vocabulary.US)
    assert workshop.habits == Habits(
        carry_rows=4,
        carry_height_cm=5.0,
        tail_cm=15.0,
        join=Join.ANYWHERE,
        confidence=0.95,
        allowance=None,
        tension=0.05,
        counts_turning_chain={Stitch.HDC: False, Stitch.DC: True},
    )


def test_the_workshop_has_its_yarn_and_pattern(workshop):
    (yarn,) = workshop.yarns
    assert (yarn.name, yarn.fibre, yarn.category) == ("moor aran", "100 % wool", 4)
    assert dict(yarn.colours) == {
        "oat": "#d9c9a3",
        "teal": "#1f6f78",
        "rust": "#a8512c",
        "cream": "#f1ead9",
        "heather": "#8a6a94",
    }
    assert yarn.put_ups == (
        PutUp(weight_g=100.0, length_m=200.0, price=Decimal("4.60"), pack=1),
        PutUp(weight_g=400.0, length_m=800.0, price=Decimal("17.00"), pack=1),
    )
    assert yarn.stock == (Stock(colour="oat", weight_g=60.0, lot="771"),)
    words = "a dense, pebbled texture"
    moss = Pattern(name="moss", like=Stitch.SC, multiple=2, plus=1, for_buyers=words)
    assert workshop.patterns == (moss,)


def test_the_workshop_has_what_was_measured(workshop):
    (swatch,) = workshop.swatches
    assert (swatch.yarn, swatch.stitch, swatch.hook_mm) == ("moor aran", "hdc", 5.0)
    assert swatch.gauge == Reading(stitches=16.0, width_cm=12.8, rows=12.0, height_cm=11.4)
    assert swatch.piece == Piece(stitches=24, rows=20, weight_g=25.0, scale_step_g=1.0)
    assert workshop.timings == (
        Timing(
            stitch="hdc",
            stitches=500,
            minutes=27.5,
            rows=5,
            hands_on=True,
            yarn="moor aran",
            hook_mm=5.0,
            day=date(2026, 11, 3),
        ),
    )
    minutes = workshop.minutes
    assert (minutes.turn, minutes.change_colour, minutes.join) == ((0.1,), (0.5,), (1.5,))
    assert (minutes.weave_in_end, minutes.start_and_finish) == ((2.5,), (20.0,))
    assert (minutes.wash, minutes.photograph, minutes.pack) == ((20.0,), (15.0,), (15.0,))
    assert (minutes.letters, minutes.swatch, minutes.rip_back) == ((45.0,), (0.0,), 0.0)


def test_the_workshop_has_its_terms(workshop):
    assert workshop.pay == Pay(
        making_per_hour=Decimal(14),
        office_per_hour=Decimal(14),
        overhead_per_hour=Decimal("1.80"),
        rest_allowance=0.0,
    )
    pricing = workshop.pricing
    assert pricing.target == Target(margin=0.15)
    assert pricing.yarn_charged is YarnCharged.BOUGHT
    assert (pricing.round_up_to, pricing.minimum) == (Decimal(1), Decimal(60))
    assert (pricing.valid_days, pricing.deposit) == (21, Deposit(share=0.5))
    card = Fee(name="Card payment", rate=0.015, fixed=Decimal("0.20"), on=FeeBase.TOTAL)
    assert workshop.fees == (card,)
    assert workshop.tax == Tax(registered=False, rate=0.2)
    band = DeliveryBand(to="GB", up_to_g=2000.0, charged=Decimal(5), paid=Decimal("4.45"))
    assert workshop.delivery == Delivery(
        charged=Decimal(5), paid=Decimal("4.45"), packaging=Decimal("1.10"), bands=(band,)
    )


def test_the_workshop_has_its_calendar_and_rate(workshop):
    assert workshop.calendar == WorkingCalendar(
        yarn_arrives_days=5,
        drying_days=2,
        post_days=3,
        days_off=(date(2026, 12, 24), date(2026, 12, 25)),
    )
    rate = workshop.exchange["EUR"]
    assert (rate.currency, rate.rate) == ("EUR", Decimal("1.17"))
    assert (rate.day, rate.cushion) == (date(2026, 11, 20), 0.02)


LEAST = """
[workshop]
name = "Ottermoor Blankets"
locale = "en_GB"
currency = "GBP"
hours_per_week = 12
[[yarns]]
name = "moor aran"
colours = { oat = "#d9c9a3" }
put_ups = [{ grams = "3.5 oz", metres = "200 yd", price = "4,60" }]
[[timings]]
stitch = "hdc"
stitches = 500
minutes = 27.5
[minutes]
turn = [0.1, 0.3]
[pay]
making_per_hour = "14.00"
[price]
markup = 0.18
"""


def test_what_may_be_left_out_takes_its_usual_value():
    workshop = load_workshop_text(LEAST)
    assert workshop.delivery == Delivery()
    assert workshop.tax == Tax()
    assert workshop.swatches == workshop.fees == workshop.patterns == ()
    assert workshop.pay.office_per_hour == Decimal(14)
    assert workshop.habits == Habits()
    assert workshop.pricing.target == Target(markup=0.18)


def test_a_key_that_names_its_unit_takes_other_units_as_text():
    (put_up,) = load_workshop_text(LEAST).yarns[0].put_ups
    assert put_up.weight_g == 99.2233309375
    assert put_up.length_m == 182.88
    assert put_up.price == Decimal("4.60")


def test_minutes_may_be_several_measured_figures():
    assert load_workshop_text(LEAST).minutes.turn == (0.1, 0.3)


def test_minutes_left_out_are_told_from_a_nought():
    minutes = load_workshop_text(LEAST).minutes
    assert (minutes.wash, minutes.rip_back) == (None, None)
    given = load_workshop_text(LEAST.replace("[0.1, 0.3]", "[0.1, 0.3]\nwash = 0\nrip_back = 0"))
    assert (given.minutes.wash, given.minutes.rip_back) == ((0.0,), 0.0)


def test_a_timing_that_names_no_yarn_is_of_none():
    (timing,) = load_workshop_text(LEAST).timings
    assert (timing.yarn, timing.hook_mm) == (None, None)


def test_the_demo_lies_in_the_settings_folder():
    assert demo_order().parent == demo_workshop().parent == config_folder() / "demo"
    assert demo_order().is_file()
    assert demo_workshop().is_file()


def test_what_the_demo_has_no_need_of_may_be_said_too():
    text = demo_workshop().read_text("utf-8")
    for old, new in (
        ("[calendar]", "[calendar]\nhours_promised = 30.5"),
        ('packaging = "1.10"', 'packaging = "1.10"\npackaging_weight = "150 g"'),
        (
            "plus = 1",
            "plus = 1\nturning_chains = 2\ncounts_turning_chain = true\n"
            "foundation_chains = 3\nrow_repeat = 4",
        ),
        ("\npiece =", '\nrun = { stitches = 20, length = "1.76 m", ruler_step = "1 mm" }\n#'),
        (
            "hook_mm = 5.0",
            "hook_mm = 5.0\ngauge_before_washing = { stitches = 17, "
            'width = "12.8 cm", rows = 12, height = "4.5 in" }',
        ),
        ("{ share = 0.5 }", "{ yarn = true }"),
    ):
        assert old in text
        text = text.replace(old, new, 1)
    workshop = load_workshop_text(text)
    (swatch,) = workshop.swatches
    assert workshop.calendar.hours_promised == 30.5
    assert workshop.delivery.packaging_g == 150.0
    (moss,) = workshop.patterns
    assert (moss.turning_chains, moss.counts_turning_chain) == (2, True)
    assert (moss.foundation_chains, moss.row_repeat) == (3, 4)
    assert swatch.run == Run(stitches=20, length_cm=176.0, ruler_step_cm=0.1)
    assert swatch.gauge_before_washing == Reading(
        stitches=17.0, width_cm=12.8, rows=12.0, height_cm=11.43
    )
    assert workshop.pricing.deposit == Deposit(yarn=True)


def test_settings_are_found_inside_the_package_before_beside_it(tmp_path):
    """An installed package has them inside, a checkout has them beside it."""
    package = tmp_path / "quoting"
    package.mkdir()
    shutil.copy(places.__file__, package)
    spec = importlib.util.spec_from_file_location("places_elsewhere", package / "places.py")
    elsewhere = importlib.util.module_from_spec(spec)
    spec.loader.exec_module(elsewhere)
    with pytest.raises(FileNotFoundError):
        elsewhere.config_folder()
    (tmp_path / "config").mkdir()
    assert elsewhere.config_folder() == tmp_path / "config"
    (package / "config").mkdir()
    assert elsewhere.config_folder() == package / "config"
