"""Each kind of bad input handed to the program; what is no answer raises.

`python -m tests.faults.answering 20000` runs many more than the tests do, and prints the work that
the slowest took.
"""

from __future__ import annotations

import logging
import sys
import time
from collections import Counter
from collections.abc import Callable
from contextlib import suppress
from io import BytesIO
from random import Random

from quoting.core.ground.errors import Refused
from quoting.core.order.joined_squares import JoinedSquares, JoinMethod, MotifJoin, Pool
from quoting.core.order.order import Order
from quoting.core.quote.quote import quote_order
from quoting.core.weighing.comparison import compare_sizes
from quoting.core.workshop.stitches import Vocabulary
from quoting.places import config_folder
from quoting.rates import read_rates
from quoting.schema import load_order_text, load_workshop_text, order_text, size_of
from quoting.web import create_app
from quoting.web.shop import open_shop
from quoting.wording import FILE_SPEECH, mistake_sentence, speech_of
from tests.examples import TODAY, sample_order, sample_workshop
from tests.faults.spoiling import METHODS, TYPED, odd_headers, spoiled_file, spoiled_form
from tests.files.samples import EVERY_KEY_OF_AN_ORDER
from tests.motif_examples import striped_centre
from tests.rates.bank_answers import document
from tests.web.motif_orders import motif_workshop, order_of, squares_body
from tests.web.pages import Page

WORKSHOP = sample_workshop()
DEMO_WORKSHOP = (config_folder() / "demo" / "workshop.toml").read_text("utf-8")
DEMO_ORDERS = tuple(
    (config_folder() / "demo" / f"{name}.toml").read_text("utf-8")
    for name in ("order", "squares", "centre")
)
MEASURED = load_workshop_text(DEMO_WORKSHOP)
ORDERS = (
    (EVERY_KEY_OF_AN_ORDER.read_text("utf-8"), WORKSHOP),
    (order_text(sample_order(), Vocabulary.US), WORKSHOP),
    *((text, MEASURED) for text in DEMO_ORDERS),
)
RATES = document().decode()
APP = create_app(open_shop(WORKSHOP, today=lambda: TODAY).starting_with(sample_order()))
CLIENT = APP.test_client()


def _pooled() -> JoinedSquares:
    """Return squares whose colours are mixed, sewn together."""
    pool = Pool(colours=("teal", "rust"), outer=("oat",))
    sewn = MotifJoin(method=JoinMethod.WHIPSTITCH, colour="oat", needleful_cm=60)
    return squares_body(layouts=(), pool=pool, join=sewn)


MOTIF_SHOP = open_shop(motif_workshop(), today=lambda: TODAY)
STARTS = (
    (CLIENT, "/"),
    (CLIENT, "/sizes"),
    *(
        (create_app(MOTIF_SHOP.starting_with(order_of(body))).test_client(), address)
        for body in (squares_body(), _pooled(), striped_centre())
        for address in ("/", "/sizes")
    ),
)
FORMS = tuple(
    (client, address, Page(client.get(address).text).typed()) for client, address in STARTS
)
ORDER_PAGES = ("/", "/", "/answer", "/quote", "/calmer", "/near", "/workbook", "/order-file")
SIZE_PAGES = ("/sizes", "/sizes/answer", "/sizes/take", "/sizes/workbook")
PAGES = (*ORDER_PAGES, *SIZE_PAGES, "/sizes/of-order", "/workshop/pay", "/read", "/yarn", "/x")


def an_order_file(random: Random) -> None:
    """Read and quote an order file."""
    sound, workshop = random.choice(ORDERS)
    text = spoiled_file(sound, random)
    _told(lambda: quote_order(load_order_text(text, workshop), workshop, today=TODAY))


def a_workshop_file(random: Random) -> None:
    """Read a workshop file, and quote an order in it."""
    text = spoiled_file(DEMO_WORKSHOP, random)
    order = random.choice(DEMO_ORDERS)

    def quoted() -> None:
        workshop = load_workshop_text(text)
        speech_of(workshop)
        quote_order(load_order_text(order, workshop), workshop, today=TODAY)

    _told(quoted)


def a_size(random: Random) -> None:
    """Read a size and compare it."""
    text = "x".join(random.choice(TYPED) for _ in range(random.choice((1, 2, 2, 2, 3))))
    order: Order = sample_order()
    _told(lambda: compare_sizes(order, WORKSHOP, [size_of(text + "cm")], today=TODAY))


def a_rates_document(random: Random) -> None:
    """Read what came in place of reference rates."""
    text = spoiled_file(RATES, random)
    _told(lambda: read_rates(text if isinstance(text, bytes) else text.encode("utf-8", "replace")))


def a_form(random: Random) -> None:
    """Send a form to the page it belongs to."""
    client, start, typed = random.choice(FORMS)
    address = random.choice(ORDER_PAGES if start == "/" else SIZE_PAGES)
    fields = spoiled_form(typed, random) | {"csrf_token": typed["csrf_token"]}
    _answered(client.post(address, data=fields).status_code)


def an_uploaded_file(random: Random) -> None:
    """Give the form an order file to read."""
    text = spoiled_file(random.choice(ORDERS)[0], random)
    data = text if isinstance(text, bytes) else text.encode("utf-8", "surrogatepass")
    token = FORMS[0][2]["csrf_token"]
    file = (BytesIO(data), random.choice(("order.toml", "x" * 500, "a\u202e.toml", "..\\..")))
    _answered(CLIENT.post("/read", data={"csrf_token": token, "file": file}).status_code)


def a_request(random: Random) -> None:
    """Ask for a page as no browser does."""
    address = random.choice(PAGES) + random.choice(("", "", "?afresh=%00", "?%", "/../x", "//"))
    body = random.choice((b"", b"a=1&&&=", b"\xff" * 300, b"&" * 20_000, b"--\r\n"))
    # A header that the client itself cannot write is none that comes in over the wire.
    with suppress(UnicodeError, ValueError, TypeError):
        reply = CLIENT.open(
            address, method=random.choice(METHODS), headers=odd_headers(random), data=body
        )
        _answered(reply.status_code)


KINDS: tuple[Callable[[Random], None], ...] = (
    an_order_file,
    a_workshop_file,
    a_size,
    a_rates_document,
    a_form,
    an_uploaded_file,
    a_request,
)


def _told(read: Callable[[], object]) -> None:
    """Have something read; a refusal is told in full sentences."""
    try:
        read()
    except Refused as refused:
        for mistake in refused.mistakes:
            assert mistake_sentence(mistake, FILE_SPEECH).rstrip()[-1] in ".?", mistake


def _answered(status: int) -> None:
    assert status < 500, f"status {status}"


def main(count: int) -> None:
    """Run so many bad inputs in all, and print what the slowest of each kind took."""
    logging.getLogger("quoting.web").setLevel(logging.ERROR)  # of thousands turned away
    slowest: Counter[str] = Counter()
    seeds: dict[str, int] = {}
    for seed in range(count):
        kind = KINDS[seed % len(KINDS)]
        begun = time.thread_time()
        try:
            kind(Random(seed))
        except Exception:
            sys.stderr.write(f"{kind.__name__}, seed {seed}:\n")
            raise
        took = time.thread_time() - begun
        if took > slowest[kind.__name__]:
            slowest[kind.__name__], seeds[kind.__name__] = took, seed
    for name, took in slowest.most_common():
        sys.stdout.write(f"{name}: at most {took:.2f} s of work (seed {seeds[name]})\n")


if __name__ == "__main__":
    main(int(sys.argv[1]))
