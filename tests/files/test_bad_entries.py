"""Stripes and workshops that cannot be are told at their place, and all mistakes at once."""

import pytest

from quoting.schema import load_order_text, load_workshop_text
from tests.files.samples import ROWS, STRIPE_ROWS


def test_a_section_has_stripes(order_mistakes):
    edit = ("[[blanket.border]]", "[[blanket.sections]]\nstripes = []\n\n[[blanket.border]]")
    (only,) = order_mistakes(edit).values()
    assert (only.path, only.code) == ("blanket.sections.2.stripes", "missing")


def test_a_section_cannot_leave_its_stripes_out(order_mistakes):
    edit = ("[[blanket.border]]", "[[blanket.sections]]\nshare = 1\n\n[[blanket.border]]")
    (only,) = order_mistakes(edit).values()
    assert (only.path, only.code) == ("blanket.sections.2.stripes", "missing")


def test_shares_are_not_all_zero(order_mistakes):
    (only,) = order_mistakes(("share = 1 ", "share = 0 ")).values()
    assert (only.path, only.code) == ("blanket.sections", "no-shares")


def test_a_section_has_a_share_or_repeats_not_both(order_mistakes):
    (only,) = order_mistakes(("share = 1 ", "share = 1\nrepeats = 3 ")).values()
    assert (only.path, only.code) == ("blanket.sections.1.repeats", "share-and-repeats")


@pytest.mark.parametrize("number", [10_000, 20_000])
def test_so_many_stripes_are_too_many(order_mistakes, number):
    stripes = ", ".join(['{ colour = "oat" }'] * number)
    (only,) = order_mistakes(("last_rows = []", f"last_rows = [{stripes}]")).values()
    assert (only.path, only.code) == ("blanket.last_rows", "too-many")
    assert only.facts["read"] == number


@pytest.mark.parametrize(
    ("old", "new", "place", "code"),
    [
        ('locale = "en_GB"', 'locale = "English!"', "workshop.locale", "not-a-locale"),
        (
            "tension =",
            "allowance = 0.1\ntension =",
            "workshop.allowance",
            "confidence-or-allowance",
        ),
        (
            "hdc = false, dc = true",
            "hcd = false",
            "workshop.counts_turning_chain.hcd",
            "not-one-of",
        ),
        ("hdc = false, dc", "hdc = 0, dc", "workshop.counts_turning_chain.hdc", "wrong-type"),
        ('oat = "#d9c9a3"', 'oat = "beige"', "yarns.1.colours.oat", "not-a-colour-code"),
        (
            'colour = "oat", grams',
            'colour = "oak", grams',
            "yarns.1.stock.1.colour",
            "unknown-colour",
        ),
        ("category = 4", "category = 9", "yarns.1.category", "unknown-category"),
        ("grams = 400", "grams = 0", "yarns.1.put_ups.2.grams", "not-above"),
        ("metres = 800", 'metres = "800 g"', "yarns.1.put_ups.2.metres", "unknown-unit"),
        ('price = "4.60"', "price = 4.60", "yarns.1.put_ups.1.price", "wrong-type"),
        ('name = "moss"', 'name = "htr"', "patterns.1.name", "basic-stitch-name"),
        ('name = "moss"', 'name = "dc"', "patterns.1.name", "basic-stitch-name"),
        ('like = "sc"', 'like = "htr"', "patterns.1.like", "other-vocabulary"),
        ('yarn = "moor aran"', 'yarn = "moor"', "swatches.1.yarn", "unknown-yarn"),
        ('"12.8 cm"', '"12.8"', "swatches.1.gauge.width", "missing-unit"),
        ('weight = "25 g"', 'weight = "25 cm"', "swatches.1.piece.weight", "unknown-unit"),
        (
            "piece = {",
            "run = {stitches = 20, length = '176 cm'}\npiece = {",
            "swatches.1.piece",
            "piece-or-run",
        ),
        ("minutes = 27.5", "minutes = 0", "timings.1.minutes", "not-above"),
        ('yarn = "moor aran" # for', 'yarn = "moor" # for', "timings.1.yarn", "unknown-yarn"),
        ('yarn = "moor aran" # for', 'yarn = "" # for', "timings.1.yarn", "missing"),
        (
            "hook_mm = 5.0\nday = 2026-11-03",
            "hook_mm = 0\nday = 2026-11-03",
            "timings.1.hook_mm",
            "not-above",
        ),
        ("turn = 0.1", "turn = [0.1, true]", "minutes.turn.2", "wrong-type"),
        ("turn = 0.1", "turn = []", "minutes.turn", "missing"),
        ("rip_back = 0.0", "rip_back = [0.0]", "minutes.rip_back", "wrong-type"),
        ("margin = 0.15", "margin = 0.15\nmarkup = 0.18", "price.markup", "one-target"),
        ("margin = 0.15", "", "price.margin", "one-target"),
        (
            'round_up_to = "1.00"',
            'round_up_to = "0.001"',
            "price.round_up_to",
            "not-whole-minor-units",
        ),
        ("{ share = 0.5 }", "{ yarn = false }", "price.deposit.share", "share-or-yarn"),
        ('on = "total"', 'on = "all"', "fees.1.on", "not-one-of"),
        ('up_to = "2 kg"', 'up_to = "2 m"', "delivery.bands.1.up_to", "unknown-unit"),
        ("2026-12-25]", '"2026-12-25"]', "calendar.days_off.2", "wrong-type"),
        ('rate = "1.17"', 'rate = "0"', "exchange.EUR.rate", "not-above"),
        ('rate = "1.17"', 'rate = "1", per = "0"', "exchange.EUR.per", "not-above"),
        ("[pay]", "[paid]", "pay", "missing"),
    ],
)
def test_a_bad_entry_of_the_workshop_is_told_at_its_place(workshop_mistakes, old, new, place, code):
    found = workshop_mistakes((old, new))
    assert found[place].code == code
    assert len(found) == 1 or new == "[paid]"


def test_all_mistakes_are_told_at_once_and_nothing_that_follows_from_them(order_mistakes):
    found = order_mistakes(
        ('title = "Cot blanket in moorland stripes"', "title = 7"),
        ("for_baby = true", 'for_baby = "yes"'),
        ('"80 cm"', "80"),
        (ROWS, '{ colour = "teel", rows = 0 }'),
        ('{ colour = "rust", rows = 1 }', "{ rows = 1 }"),
        ('stitch = "sc"', 'stitch = "shel"'),
        ("rounds = 1", "rounds = true"),
        ('cost = "3.20"', 'cots = "3.20"'),
        ("discount = 0.05", "discount = 5"),
    )
    assert {place: mistake.code for place, mistake in found.items()} == {
        "order.title": "wrong-type",
        "order.for_baby": "wrong-type",
        "blanket.width": "missing-unit",
        STRIPE_ROWS: "too-small",
        "blanket.sections.1.stripes.1.colour": "unknown-colour",
        "blanket.sections.1.stripes.2.colour": "missing",
        "blanket.border.1.stitch": "unknown-stitch",
        "blanket.border.1.rounds": "wrong-type",
        "extras.1.cots": "unknown-key",
        "price.discount": "too-large",
    }


def test_a_key_that_is_empty_is_told_as_a_file_writes_it(order_mistakes, workshop_mistakes):
    empty = '"" = { yarn = "moor aran", colour = "oat" }\n'
    assert codes(order_mistakes(("[order]", '[order]\n"" = 1'))) == {'order.""': "unknown-key"}
    assert codes(order_mistakes(("terms =", '"" = 1\nterms ='))) == {'""': "unknown-key"}
    found = order_mistakes(("cream =", f"{empty}cream ="))
    assert codes(found) == {'blanket.colours.""': "empty-key"}
    for old, place in (
        ("colours = {", 'yarns.1.colours.""'),
        ("counts_turning_chain = {", 'workshop.counts_turning_chain.""'),
    ):
        value = "true" if "chain" in old else '"#d9c9a3"'
        found = workshop_mistakes((old, f'{old} "" = {value},'))
        assert codes(found) == {place: "empty-key"}
    rate = '"" = { rate = "1.1", day = 2026-11-20 }\n'
    found = workshop_mistakes(("[exchange]", f"[exchange]\n{rate}"))
    assert codes(found) == {'exchange.""': "empty-key"}


def codes(found):
    """Return the code of each mistake, by its place."""
    return {place: mistake.code for place, mistake in found.items()}


def test_a_workshop_keeps_no_rate_of_its_own_currency(workshop_mistakes):
    found = workshop_mistakes(('currency = "GBP"', 'currency = "EUR"'))
    assert codes(found) == {"exchange.EUR": "own-currency"}


@pytest.mark.parametrize("metres", ["", "\nmetres = 0"])
def test_an_extra_in_a_colour_says_how_much_yarn_it_takes(order_mistakes, metres):
    found = order_mistakes(("minutes = 5", f'minutes = 5\ncolour = "oat"{metres}'))
    assert codes(found) == {"extras.1.metres": "missing"}


def test_an_empty_file_lacks_its_tables_and_no_more(mistakes, workshop):
    assert set(mistakes(lambda: load_order_text("", workshop))) == {"order", "blanket"}
    wanted = {"workshop", "yarns", "timings", "pay", "price"}
    assert set(mistakes(lambda: load_workshop_text(""))) == wanted
