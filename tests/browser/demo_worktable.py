"""Serves the demo's workshop without a book, its order on the worktable, on the port given."""

import sys

from quoting.cli.job import this_day
from quoting.places import demo_order, demo_workshop
from quoting.rates import kept_rates_path
from quoting.schema import load_order, load_workshop
from quoting.web import create_app
from quoting.web.address import LOOPBACK
from quoting.web.server import open_server
from quoting.web.shop import open_shop

shop = open_shop(load_workshop(demo_workshop()), today=this_day)
shop = shop.keeping_rates_in(kept_rates_path()).starting_with(
    load_order(demo_order(), shop.workshop)
)
server = open_server(create_app(shop), int(sys.argv[1]))
sys.stderr.write(f"Open http://{LOOPBACK}:{server.effective_port}/\n")
sys.stderr.flush()
server.run()
