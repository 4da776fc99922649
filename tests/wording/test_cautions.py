"""What is said to warn a maker, in her own words."""

from __future__ import annotations

import re
from datetime import timedelta
from decimal import Decimal

import pytest

from quoting.core.ground.cautions import for_buyer, for_maker
from quoting.core.plan.border import RATIO_TOLERANCE
from quoting.core.quote.infants import HEALTH_SERVICES
from quoting.core.workshop.euro_rates import FRESH
from quoting.core.workshop.yarns import LABELS_APART
from quoting.wording import caution_sentence
from quoting.wording import cautions as caution_table
from quoting.wording.caution_places import SAID_AT
from tests.wording.codes_in_the_source import coded_calls
from tests.wording.speeches import DE, GB, UK_NAMES


def test_many_ends_are_said_with_their_hours_and_with_how_many_would_be_left_uncut() -> None:
    many = for_maker("many-ends", ends=122, hours=Decimal("5.08"), uncut=8)
    said = caution_sentence(many, GB)
    assert said.startswith("These stripes leave 122 ends, about 5\u00a0h 5\u00a0min of weaving in.")
    assert "If no colour had to be cut before its next row it would be 8:" in said


def test_where_no_colour_is_cut_nothing_is_said_to_leave_fewer_ends() -> None:
    many = for_maker("many-ends", ends=122, hours=Decimal("5.08"), uncut=None)
    said = caution_sentence(many, GB)
    assert said == "This leaves 122 ends, about 5\u00a0h 5\u00a0min of weaving in."


@pytest.mark.parametrize("country", sorted(HEALTH_SERVICES))
def test_a_buyer_hears_of_no_health_service_but_her_own(country: str) -> None:
    said = caution_sentence(for_buyer("baby-loose-bedding", advised_in=country), GB)
    named = {
        "DE": "BIÖG",
        "ES": "the health services advise",
        "FR": "Santé publique France",
        "GB": "NHS",
        "NL": "JGZ",
        "US": "American Academy of Pediatrics",
    }
    assert [code for code, name in named.items() if name in said] == [country]


def test_a_buyer_in_any_other_country_is_led_to_the_advice_given_there() -> None:
    said = caution_sentence(for_buyer("baby-loose-bedding", advised_in=None), GB)
    assert said.endswith("follow the advice given where the baby lives.")
    assert "NHS" not in said


def test_a_maker_who_speaks_uk_hears_uk_names_and_her_patterns_own() -> None:
    said = caution_sentence(for_maker("one-timing", stitches=("sc", "hdc", "moss")), UK_NAMES)
    assert "dc, htr and moss" in said


def test_words_of_the_program_are_not_said_to_a_maker() -> None:
    said = " ".join(s for ones in caution_table.CAUTIONS.values() for s in ones)
    assert not re.search(r"\bpass(es)?\b|put-up|opening|strand", re.sub(r"\{\w+\}", "", said))


def test_how_far_off_a_guess_may_be_is_said_as_the_makers_country_writes_it() -> None:
    guessed = for_maker("estimated-yarn", stitches=("sc",))
    assert caution_sentence(guessed, GB).endswith("may be 15% off.")
    assert caution_sentence(guessed, DE).endswith("may be 15\u00a0% off.")
    unravelled = for_maker("estimated-yarn", unravelled="sun square")
    assert "other rounds were unravelled than are worked here" in caution_sentence(unravelled, GB)
    wanted = for_maker("more-timings", stitch="sc", more=4)
    assert caution_sentence(wanted, GB).endswith("4 more would bring them within 5%.")


def test_the_week_and_the_tenth_that_are_spoken_of_are_those_reckoned_with() -> None:
    assert "more than a week old" in caution_table.CAUTIONS["old-rate"][0]
    assert timedelta(weeks=1) == FRESH
    assert "more than a tenth off" in caution_table.CAUTIONS["row-ends-off"][0]
    assert RATIO_TOLERANCE == 0.1
    assert "more than a tenth apart" in caution_table.CAUTIONS["labels-apart"][0]
    assert LABELS_APART == 0.1


def test_every_caution_of_the_maker_has_its_place_in_the_answer() -> None:
    buyers = {code for code, _ in coded_calls({"for_buyer"}, 0)}
    makers = {code for code, _ in coded_calls({"for_maker"}, 0)}
    assert caution_table.CAUTIONS.keys() - SAID_AT.keys() == buyers - makers


@pytest.mark.parametrize("code", ["corners-cup", "corners-ruffle"])
def test_of_corners_it_is_said_that_they_are_the_border_s(code: str) -> None:
    """What is worked in rounds has corners of its own."""
    said = caution_sentence(for_maker(code, stitch="hdc", more=12, flat=6.0), GB)
    assert "each border round of hdc has 12 stitches more than the one before" in said
