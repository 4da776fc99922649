"""`python -m quoting` is the command line."""

import sys

from quoting.cli import main

sys.exit(main())
