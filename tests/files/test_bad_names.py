"""A name that is not known is told at its place, with the nearest that is."""

import pytest


@pytest.mark.parametrize(
    ("old", "new", "place", "code", "nearest"),
    [
        ('colour = "rust"', 'colour = "rusty"', "sections.1.stripes.2.colour", "colour", "rust"),
        ('yarn = "moor aran"\nf', 'yarn = "moor arn"\nf', "yarn", "yarn", "moor aran"),
        ('stitch = "hdc"', 'stitch = "hcd"', "stitch", "stitch", "hdc"),
        ('stitch = "hdc"', 'stitch = "mos"', "stitch", "stitch", "moss"),
        ('stitch = "sc"', 'stitch = "shell"', "border.1.stitch", "stitch", None),
        (
            ', colour = "oat" }\n\n',
            ', colour = "oak" }\n\n',
            "colours.cream.colour",
            "colour",
            "oat",
        ),
    ],
)
def test_a_name_that_the_workshop_has_not_is_told_with_the_nearest(
    order_mistakes, old, new, place, code, nearest
):
    if place.startswith("colours"):
        edits = (old, new), ('colour = "rust"', 'colour = "cream"')
    else:
        edits = ((old, new),)
    (only,) = order_mistakes(*edits).values()
    assert (only.path, only.code) == (f"blanket.{place}", f"unknown-{code}")
    assert only.facts["nearest"] == nearest
    assert only.facts["read"] in new


def test_a_name_with_joined_signs_is_told_as_it_was_typed(order_mistakes):
    typed = "\U0001f469\u200d\U0001f37c"
    (only,) = order_mistakes(('stop_at = "repeat"', f'stop_at = "{typed}"')).values()
    assert only.facts["read"] == typed


def test_a_currency_is_one_that_exists(order_mistakes, workshop_mistakes):
    (only,) = order_mistakes(('pays_in = "GBP"', 'pays_in = "GPB"')).values()
    assert (only.path, only.code) == ("order.pays_in", "unknown-currency")
    (only,) = workshop_mistakes(('currency = "GBP"', 'currency = "GPB"')).values()
    assert (only.path, only.code) == ("workshop.currency", "unknown-currency")
    (only,) = workshop_mistakes(("EUR =", "EUZ =")).values()
    assert (only.path, only.code) == ("exchange.EUZ", "unknown-currency")


def test_a_rate_of_an_unknown_currency_is_told_for_its_other_mistakes_too(workshop_mistakes):
    found = workshop_mistakes(("EUR =", "EUZ ="), ("cushion = 0.02", "cushion = 2"))
    codes = {place: mistake.code for place, mistake in found.items()}
    assert codes == {"exchange.EUZ": "unknown-currency", "exchange.EUZ.cushion": "too-large"}


def test_a_buyer_pays_in_a_currency_that_there_is_a_rate_for(order_mistakes):
    (only,) = order_mistakes(('pays_in = "GBP"', 'pays_in = "USD"')).values()
    assert (only.path, only.code) == ("order.pays_in", "no-rate")


@pytest.mark.parametrize(
    ("old", "new", "place"),
    [
        ("width =", "widht =", "blanket.width"),
        ("for_baby =", "for_babby =", "order.for_baby"),
        ("[[extras]]", "[[extra]]", "extras"),
        ('colour = "teal"', 'color = "teal"', "blanket.sections.1.stripes.1.colour"),
        ("Rounds = 1".lower(), "Rounds = 1", "blanket.border.1.rounds"),
        ("discount =", "discuont =", "price.discount"),
    ],
)
def test_a_misspelt_key_is_told_with_the_right_one(order_mistakes, old, new, place):
    found = order_mistakes((old, new))
    (unknown,) = (mistake for mistake in found.values() if mistake.code == "unknown-key")
    assert unknown.facts["nearest"] == place.rpartition(".")[2]
    assert unknown.path.rpartition(".")[0] == place.rpartition(".")[0]
    others = {mistake.path: mistake.code for mistake in found.values() if mistake != unknown}
    assert others in ({}, {place: "missing"})
