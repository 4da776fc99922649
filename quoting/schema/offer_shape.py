"""The shape of an offer, by which a quote that was given is kept as the buyer was told it.

It is written and read as a record only: nobody types an offer.
"""

from __future__ import annotations

from quoting.core.ground.cautions import Caution, Reader
from quoting.core.ground.measures import Units
from quoting.core.ground.place import Document
from quoting.core.order.joined_squares import JoinMethod
from quoting.core.quote.left_out import LeftOut
from quoting.core.quote.offer import Offer, OfferedBorder, OfferedColour, OfferedYarn
from quoting.core.quote.offer_rows import Due, Row, RowCode
from quoting.core.quote.offered_motifs import OfferedMotifs
from quoting.core.quote.what_goes_in import GoesIn, Ingredient
from quoting.core.workshop.exchange import ExchangeRate
from quoting.core.workshop.rounds import Counting
from quoting.core.workshop.stitches import Vocabulary
from quoting.schema.facts import FACTS
from quoting.schema.figures import COUNT, EXACT, MONEY, NUMBER, SHARE
from quoting.schema.notation import RECORD
from quoting.schema.reading import Content, read_value
from quoting.schema.selling_shapes import OWN_WORDS
from quoting.schema.several import Several
from quoting.schema.shape import Fields, Shape
from quoting.schema.words import DAY, NAME, STITCH, TEXT, YES_NO, Choice

_row = Fields(Row)
ROW = Shape(
    Row,
    _row(lambda row: row.code, Choice(RowCode)),
    _row(lambda row: row.amount, MONEY),
    _row(lambda row: row.currency, NAME),
    _row(lambda row: row.each, MONEY),
    _row(lambda row: row.share, EXACT),
    _row(lambda row: row.due, Choice(Due)),
)

_yarn = Fields(OfferedYarn)
OFFERED_YARN = Shape(
    OfferedYarn,
    _yarn(lambda yarn: yarn.name, NAME),
    _yarn(lambda yarn: yarn.fibre, TEXT),
)

_colour = Fields(OfferedColour)
OFFERED_COLOUR = Shape(
    OfferedColour,
    _colour(lambda colour: colour.name, NAME),
    _colour(lambda colour: colour.yarn, NAME),
    _colour(lambda colour: colour.colour, NAME),
    _colour(lambda colour: colour.code, TEXT),
)

_border = Fields(OfferedBorder)
OFFERED_BORDER = Shape(
    OfferedBorder,
    _border(lambda border: border.colour, NAME),
    _border(lambda border: border.rounds, COUNT),
)

_motifs = Fields(OfferedMotifs)
OFFERED_MOTIFS = Shape(
    OfferedMotifs,
    _motifs(lambda motifs: motifs.columns, COUNT),
    _motifs(lambda motifs: motifs.rows, COUNT),
    _motifs(lambda motifs: motifs.side_cm, NUMBER),
    _motifs(lambda motifs: motifs.layouts, COUNT),
    _motifs(lambda motifs: motifs.join, Choice(JoinMethod)),
    _motifs(lambda motifs: motifs.join_colour, NAME),
    _motifs(lambda motifs: motifs.mixed, YES_NO),
)

_ingredient = Fields(Ingredient)
INGREDIENT = Shape(
    Ingredient,
    _ingredient(lambda ingredient: ingredient.code, Choice(GoesIn)),
    _ingredient(lambda ingredient: ingredient.amount, EXACT),
)

_left_out = Fields(LeftOut)
LEFT_OUT = Shape(
    LeftOut,
    _left_out(lambda extra: extra.what, TEXT),
    _left_out(lambda extra: extra.less, MONEY),
)

_rate = Fields(ExchangeRate)
RATE_IN_OFFER = Shape(
    ExchangeRate,
    _rate(lambda rate: rate.currency, NAME),
    _rate(lambda rate: rate.rate, EXACT),
    _rate(lambda rate: rate.per, EXACT),
    _rate(lambda rate: rate.day, DAY),
    _rate(lambda rate: rate.cushion, SHARE),
)

_caution = Fields(Caution)
CAUTION = Shape(
    Caution,
    _caution(lambda caution: caution.code, NAME),
    _caution(lambda caution: caution.reader, Choice(Reader)),
    _caution(lambda caution: caution.facts, FACTS),
)

_offer = Fields(Offer)
OFFER = Shape(
    Offer,
    _offer(lambda offer: offer.number, NAME),
    _offer(lambda offer: offer.maker, TEXT),
    _offer(lambda offer: offer.own_words, OWN_WORDS),
    _offer(lambda offer: offer.buyer, TEXT),
    _offer(lambda offer: offer.title, TEXT),
    _offer(lambda offer: offer.day, DAY),
    _offer(lambda offer: offer.valid_until, DAY),
    _offer(lambda offer: offer.ready_by, DAY),
    _offer(lambda offer: offer.wanted_by, DAY),
    _offer(lambda offer: offer.deliver_to, NAME),
    _offer(lambda offer: offer.quantity, COUNT),
    _offer(lambda offer: offer.width_cm, NUMBER),
    _offer(lambda offer: offer.height_cm, NUMBER),
    _offer(lambda offer: offer.weight_g, NUMBER),
    _offer(lambda offer: offer.stitch, STITCH),
    _offer(lambda offer: offer.yarns, Several(OFFERED_YARN)),
    _offer(lambda offer: offer.colours, Several(OFFERED_COLOUR)),
    _offer(lambda offer: offer.extras, Several(TEXT)),
    _offer(lambda offer: offer.left_out, Several(LEFT_OUT)),
    _offer(lambda offer: offer.currency, NAME),
    _offer(lambda offer: offer.rows, Several(ROW)),
    _offer(lambda offer: offer.exchange, RATE_IN_OFFER),
    _offer(lambda offer: offer.cautions, Several(CAUTION)),
    _offer(lambda offer: offer.locale, NAME),
    _offer(lambda offer: offer.units, Choice(Units)),
    _offer(lambda offer: offer.speaks, Choice(Vocabulary)),
    _offer(lambda offer: offer.stitch_words, TEXT),
    _offer(lambda offer: offer.border, Several(OFFERED_BORDER)),
    _offer(lambda offer: offer.centre, Choice(Counting)),
    _offer(lambda offer: offer.motifs, OFFERED_MOTIFS),
    _offer(lambda offer: offer.spaces, YES_NO),
    _offer(lambda offer: offer.goes_in, Several(INGREDIENT)),
    _offer(lambda offer: offer.size_within_cm, NUMBER),
    _offer(lambda offer: offer.change_days, COUNT),
)


def offer_record(offer: Offer) -> dict[str, object]:
    """Return an offer as JSON holds it, so that nothing of it is lost."""
    return OFFER.write(offer, RECORD)


def read_offer(record: Content) -> Offer:
    """Return the offer of a record. Errors: one refusal with every mistake."""
    return read_value(record, OFFER, Document.OFFER, RECORD)
