"""The command line: the same work as in the window, for scripts and for benches without one.

Exit codes: 0 done, 1 cannot be done with this input, 2 wrong usage. With ``--json`` exactly one
JSON object goes to standard output, also on failure (`error`); progress goes to standard error.
"""

from stainmap.cli.commands import VERBS, headless_sample, main
from stainmap.cli.reporting import CANNOT, DONE, USAGE

__all__ = ["CANNOT", "DONE", "USAGE", "VERBS", "headless_sample", "main"]
