"""A workshop that has something to show in every place of its pages."""

from __future__ import annotations

from dataclasses import replace
from decimal import Decimal

from quoting.core.workshop.documents import Documents
from quoting.core.workshop.exchange import ExchangeRate
from quoting.core.workshop.habits import Habits, Join
from quoting.core.workshop.motifs import EarlierSide, Motif, MotifTiming, WeighedMotifs
from quoting.core.workshop.own_words import OwnWords, WordsIn
from quoting.core.workshop.rounds import Counting
from quoting.core.workshop.selling import (
    Deposit,
    Fee,
    FeeBase,
    Pay,
    Target,
    Tax,
    TaxShown,
    YarnCharged,
)
from quoting.core.workshop.stitches import Stitch
from quoting.core.workshop.swatches import Reading, Run
from quoting.core.workshop.timings import Timing
from quoting.core.workshop.workshop import Pattern, Workshop
from quoting.core.workshop.yarns import Stock
from tests.examples import (
    LARGE,
    SMALL,
    TODAY,
    sample_minutes,
    sample_swatch,
    sample_workshop,
    sample_yarn,
)
from tests.motif_examples import sample_motif


def weighed_motif() -> Motif:
    """Return a square in clusters that was weighed, timed, and measured after its third round."""
    return sample_motif(
        earlier=EarlierSide(rounds=3, side_cm=9.5),
        weighed=WeighedMotifs(motifs=5, weight_g=61.0),
        timings=(
            MotifTiming(motifs=4, minutes=80),
            MotifTiming(motifs=3, minutes=63, hands_on=True, day=TODAY),
        ),
        hook_mm=5.0,
        day=TODAY,
    )


def unravelled_motif() -> Motif:
    """Return a solid square, measured as two that are joined, whose rounds were unravelled."""
    return sample_motif(
        name="fell square",
        counting=Counting.SOLID,
        rounds=3,
        first_side=2,
        one_side_cm=None,
        two_joined_cm=18.4,
        weighed=None,
        rounds_m=(0.9, 1.8, 2.7),
        timings=(),
    )


def rich() -> Workshop:
    """Return a workshop in which no two figures that stand beside each other are alike."""
    plain = sample_workshop()
    washed = sample_swatch(
        gauge=Reading(stitches=16, width_cm=12.8, rows=12, height_cm=11.4),
        gauge_before_washing=Reading(stitches=17, width_cm=12.5, rows=13, height_cm=11.5),
    )
    run = sample_swatch(stitch="sc", hook_mm=4.5, piece=None, run=Run(stitches=50, length_cm=312.5))
    return replace(
        plain,
        own_words=OwnWords(
            contact="hello@ottermoor.example",
            address="The Old Wool Store\nOttermoor",
            greeting="Thank you for asking.\n\nThis is what I can make.",
            care="Wash by hand.",
            terms="Paid by bank transfer.\n  The deposit is for the yarn.",
        ),
        yarns=(
            sample_yarn(
                put_ups=(SMALL, replace(LARGE, pack=3)),
                stock=(Stock(colour="oat", weight_g=60, lot="771"),),
            ),
            replace(sample_yarn(), name="soft", fibre="", category=2, stock=()),
        ),
        words_in=(
            WordsIn(language="de_AT", greeting="Danke.\n\nDas kann ich machen."),
            WordsIn(language="en_US", care="Wash it flat.", terms="Paid in advance."),
        ),
        documents=Documents(rows=True, hours=True, size_within_cm=1.5, change_days=4),
        swatches=(washed, run),
        motifs=(weighed_motif(), unravelled_motif()),
        timings=(
            Timing(stitch="hdc", stitches=500, minutes=25),
            Timing(stitch="sc", stitches=300, minutes=12),
            Timing(stitch="sc", stitches=420, minutes=17.5),
        ),
        minutes=sample_minutes(turn=(0.1, 0.2, 0.3), pack=(14.0,), rip_back=0.06),
        pay=Pay(
            making_per_hour=Decimal("14.00"),
            office_per_hour=Decimal("11.50"),
            overhead_per_hour=Decimal("1.80"),
            rest_allowance=0.12,
        ),
        pricing=replace(
            plain.pricing,
            target=Target(markup=0.25),
            minimum=Decimal(60),
            round_up_to=Decimal("2.50"),
            yarn_charged=YarnCharged.USED,
            valid_days=17,
            deposit=Deposit(share=0.3),
        ),
        fees=(
            Fee(name="Card payment", rate=0.015, fixed=Decimal("0.20"), on=FeeBase.TOTAL),
            Fee(name="Market stall", rate=0.065, on=FeeBase.PRICE),
        ),
        tax=Tax(registered=True, rate=0.2, shown=TaxShown.ADDED),
        habits=Habits(
            carry_rows=3,
            carry_height_cm=4.5,
            tail_cm=12,
            join=Join.AT_AN_EDGE,
            confidence=0.9,
            tension=0.04,
            left_handed=True,
        ),
        patterns=(Pattern(name="moss stitch", like=Stitch.SC, multiple=2, plus=1),),
        exchange={
            "EUR": ExchangeRate(currency="EUR", rate=Decimal("1.17"), day=TODAY, cushion=0.02)
        },
        calendar=replace(plain.calendar, hours_promised=7.5),
    )
