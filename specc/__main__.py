"""Owns `python -m specc`. Knows nothing but the command line."""

import sys

from specc.cli import main

sys.exit(main())
