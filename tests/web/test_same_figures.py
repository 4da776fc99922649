"""The page, the buyer's quote and the command say the same of the same order."""

import json

import pytest

from quoting.cli import main
from quoting.cli.job import this_day
from quoting.places import demo_order, demo_workshop
from quoting.schema import load_order, load_workshop
from quoting.web import create_app
from quoting.web.shop import open_shop
from tests.web.conftest import Maker


def test_the_command_and_the_pages_say_the_same(capsys: pytest.CaptureFixture[str]) -> None:
    assert main(["quote", "--demo", "--json"]) == 0
    said = json.loads(capsys.readouterr().out)
    workshop = load_workshop(demo_workshop())
    shop = open_shop(workshop, today=this_day)
    maker = Maker(create_app(shop.starting_with(load_order(demo_order(), workshop))).test_client())
    page = maker.open()
    assert page.figure("Price") == f"£{said['price']['price']}"
    assert page.figure("Ends to weave") == str(said["strands"]["ends"])
    assert page.figure("An hour earns") == f"£{said['price']['earned_per_hour']}"
    amounts = [row[-1] for row in page.table("Rate")[1:]]
    assert [line["amount"] for line in said["price"]["lines"]] == [
        amount for row, amount in zip(page.table("Rate")[1:], amounts, strict=True) if len(row) > 2
    ]
    assert said["price"]["total"] in maker.send("/quote").root.text
