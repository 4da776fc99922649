"""Serves a workshop that has measured squares, a blanket in rows on its worktable."""

import sys

from quoting.web import create_app
from quoting.web.address import LOOPBACK
from quoting.web.server import open_server
from quoting.web.shop import open_shop
from tests.examples import TODAY
from tests.web.conftest import ORDER
from tests.web.motif_orders import motif_workshop

shop = open_shop(motif_workshop(), today=lambda: TODAY).starting_with(ORDER)
server = open_server(create_app(shop), int(sys.argv[1]))
sys.stderr.write(f"Open http://{LOOPBACK}:{server.effective_port}/\n")
sys.stderr.flush()
server.run()
