"""How the tests are run: from the project's folder, and the same examples again in CI.

`--hypothesis-profile=deep` takes many more random cases than a daily run does.
"""

import os
import sys
from pathlib import Path

from hypothesis import HealthCheck, settings

sys.path.insert(0, str(Path(__file__).parents[1]))

settings.register_profile(
    "here", deadline=None, max_examples=100, suppress_health_check=[HealthCheck.too_slow]
)
settings.register_profile("ci", settings.get_profile("here"), derandomize=True)
settings.register_profile("deep", settings.get_profile("here"), max_examples=3000)
settings.load_profile("ci" if os.environ.get("CI") else "here")
