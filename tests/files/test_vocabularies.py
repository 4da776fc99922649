"""Stitch names are read in the file's vocabulary; the US names are kept inside."""

from quoting.core.workshop.stitches import Stitch, Vocabulary
from quoting.places import demo_workshop
from quoting.schema import load_order_text, load_workshop_text, order_text
from tests.files.samples import EVERY_KEY_OF_AN_ORDER

UK = ('terms = "US"', 'terms = "UK"')


def in_uk_terms(text):
    """UK htr is US hdc, UK dc is US sc, UK tr is US dc: common practice of the trade."""
    names = {'"hdc"': '"htr"', '"dc"': '"tr"', '"sc"': '"dc"', "hdc =": "htr =", " dc =": " tr ="}
    for us, uk in {**dict([UK]), **names}.items():
        text = text.replace(us, uk)
    return text


def test_both_vocabularies_give_the_same_workshop_and_order(workshop):
    us, uk = (
        EVERY_KEY_OF_AN_ORDER.read_text("utf-8"),
        in_uk_terms(EVERY_KEY_OF_AN_ORDER.read_text("utf-8")),
    )
    assert us != uk
    assert load_order_text(uk, workshop) == load_order_text(us, workshop)
    assert load_workshop_text(in_uk_terms(demo_workshop().read_text("utf-8"))) == workshop


def test_a_name_that_only_the_other_vocabulary_has_is_told_with_the_right_one(order_mistakes):
    found = order_mistakes(UK, ('stitch = "sc"', 'stitch = "dc"'))
    (only,) = found.values()
    assert (only.path, only.code) == ("blanket.stitch", "other-vocabulary")
    assert only.facts == {"read": "hdc", "wanted": "htr", "terms": "UK"}

    (only,) = order_mistakes(('stitch = "hdc"', 'stitch = "dtr"')).values()
    assert only.facts == {"read": "dtr", "wanted": "tr", "terms": "US"}


def test_the_names_there_are_are_told_in_the_file_s_own_vocabulary(order_mistakes):
    found = order_mistakes(UK, ('stitch = "hdc"', 'stitch = "hrt"'), ('"sc"', '"dc"'))
    facts = found["blanket.stitch"].facts
    assert facts["known"] == ("dc", "htr", "tr", "dtr", "moss")
    assert facts["nearest"] == "htr"


def test_a_uk_tr_is_a_us_dc(workshop):
    text = in_uk_terms(EVERY_KEY_OF_AN_ORDER.read_text("utf-8")).replace('"htr"', '"tr"')
    order = load_order_text(text, workshop)
    assert order.design.stitch == Stitch.DC
    assert 'stitch = "tr"' in order_text(order, Vocabulary.UK)
    assert 'stitch = "dc"' in order_text(order, Vocabulary.US)


def test_a_pattern_keeps_its_own_name(workshop):
    text = EVERY_KEY_OF_AN_ORDER.read_text("utf-8").replace('stitch = "hdc"', 'stitch = "moss"')
    order = load_order_text(text, workshop)
    assert order.design.stitch == "moss"
    assert 'stitch = "moss"' in order_text(order, Vocabulary.UK)
