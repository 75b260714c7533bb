"""Where the modules of this folder are found, as `feed.py` finds them by itself."""

import sys
from pathlib import Path

sys.path.insert(0, str(Path(__file__).parent))
