"""What is typed beside a size stays with it while the order changes."""

from __future__ import annotations

from quoting.core.ground.measures import Units
from tests.examples import sample_workshop
from tests.web.asked_sizes import NUMBERS, price_of, sizes_of
from tests.web.conftest import Maker, maker_in
from tests.web.pages import Page

OWN_COT = "customary.{}.price".format(NUMBERS["Cot"])


def sized(maker: Maker, width: str, height: str, **typed: str) -> Page:
    """Bring an order of that size to the Sizes page, and ask it at prices."""
    sizes = {"blanket__width": width, "blanket__height": height}
    page = maker.send("/sizes/of-order", **sizes)
    fields = page.typed() | {"asks": "prices"}
    fields |= {name.replace("__", "."): text for name, text in typed.items()}
    return Page(maker.client.post("/sizes", data=fields).text)


def taken(maker: Maker, page: Page, size: str) -> Page:
    """Take a size to the worktable, and come back with what the tab keeps of the Sizes page."""
    typed = page.typed()
    table = Page(maker.client.post("/sizes/take", data=typed | {"take": size}).text)
    kept = {name: text for name, text in typed.items() if name != "order_file"}
    return Page(maker.client.post("/sizes/of-order", data=table.typed() | kept).text)


def prices_shown(page: Page) -> dict[str, str]:
    """Return the price of every size of the table."""
    prices = [row[2] for row in page.table("Size asked")[1:]]
    return dict(zip(sizes_of(page), prices, strict=True))


def test_a_price_stays_with_its_size_when_another_is_taken(maker: Maker) -> None:
    asked = {OWN_COT: "240", price_of("Lap"): "290"}
    page = sized(maker, "90 cm", "110 cm", ordered__price="400", **asked)
    before = prices_shown(page)
    assert before == {"90 × 110 cm": "400.00", "Cot": "240.00", "Lap": "290.00"}
    back = taken(maker, page, "80.0x100.0cm")
    assert prices_shown(back) == before
    assert back.typed()["ordered.price"] == "240"
    assert back.typed()["own.1.size"] == "90 x 110 cm"
    best = [row[0] for row in back.table("Size asked")[1:] if "pays best" in row[0]]
    assert [name.removesuffix(" pays best") for name in best] == ["90 × 110 cm"]


def test_and_comes_back_to_it_when_the_first_is_taken_again(maker: Maker) -> None:
    page = sized(maker, "90 cm", "110 cm", ordered__price="400", **{OWN_COT: "240"})
    there = taken(maker, page, "80.0x100.0cm")
    back = taken(maker, there, "90.0x110.0cm")
    assert prices_shown(back) == prices_shown(page)
    assert back.table("Size asked")[1][0].startswith("90 × 110 cm as ordered")


def test_a_customary_size_that_was_the_orders_own_keeps_tick_and_price_on_its_line(
    maker: Maker,
) -> None:
    sent = maker.open("/sizes").typed() | {"ordered.price": "240", "asks": "prices"}
    del sent["order_file"]
    table = maker.open("/").typed() | {"blanket.width": "81 cm"}
    page = Page(maker.client.post("/sizes/of-order", data=table | sent).text)
    assert (page.typed()[OWN_COT], page.typed()["ordered.price"]) == ("240", "")
    assert prices_shown(page) == {"Cot": "240.00"}


def test_a_size_left_out_leaves_no_line_behind(maker: Maker) -> None:
    sent = maker.open("/sizes").typed()
    del sent["order_file"], sent["ordered.take"]
    odd = maker.open("/").typed() | {"blanket.width": "81 cm"}
    first = Page(maker.client.post("/sizes/of-order", data=odd | sent).text).typed()
    assert not any(first[f"own.{n}.size"] for n in (1, 2, 3))
    del first["ordered.take"], first["order_file"]
    plain = maker.open("/").typed()
    back = Page(maker.client.post("/sizes/of-order", data=plain | first).text)
    assert "81" not in " ".join(sizes_of(back))


def test_three_own_sizes_make_room_for_a_fourth_and_none_is_overwritten(maker: Maker) -> None:
    own = {f"own__{n}__size": f"5{n}x60" for n in (1, 2, 3)}
    page = taken(maker, sized(maker, "90 cm", "110 cm", ordered__price="400", **own), "x")
    assert page.typed()["ordered.price"] == "400"
    there = Page(
        maker.client.post(
            "/sizes/of-order", data=maker.open("/").typed() | _kept(page.typed())
        ).text
    ).typed()
    sizes = [there[f"own.{n}.size"] for n in (1, 2, 3, 4)]
    assert sizes == ["51x60", "52x60", "53x60", "90 x 110 cm"]
    assert there["own.4.price"] == "400"


def _kept(typed: dict[str, str]) -> dict[str, str]:
    return {name: text for name, text in typed.items() if name != "order_file"}


def test_in_inches_the_size_is_typed_in_inches() -> None:
    maker = maker_in(sample_workshop(units=Units.INCHES, locale="en_US"))
    page = sized(maker, "35 in", "43 in", ordered__price="400")
    there = Page(
        maker.client.post(
            "/sizes/of-order", data=maker.open("/").typed() | _kept(page.typed())
        ).text
    )
    assert there.typed()["own.1.size"] == "35 x 43 in"


def test_at_the_target_the_orders_own_size_keeps_its_price_and_the_page_says_so() -> None:
    maker = maker_in(sample_workshop())
    page = maker.send("/sizes/of-order", price__given="185.00")
    assert prices_shown(page)["Cot"] == "185.00"
    assert prices_shown(page)["Lap"] == prices_shown(maker.open("/sizes"))["Lap"]
    said = page.with_id("answer").text
    assert "Cot, the order's own size, stands at the price that you gave for it" in said
