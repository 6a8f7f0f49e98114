"""``python -m viewer`` is ``peelback``."""

import sys

from viewer.cli import main

if __name__ == "__main__":
    sys.exit(main())
