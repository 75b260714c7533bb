"""`fieldid build`: the phone app as files for any web host."""

from collections.abc import Sequence
from pathlib import Path

from fieldid.build.site import bundle
from fieldid.commands.shelf import load_all


def build(names: Sequence[str], out: Path) -> None:
    """Builds, writes, and says how much a phone must fetch."""
    made = bundle(load_all(names))
    made.write(out)
    print(f"{out}: build {made.build}")
    print(*made.budget(), sep="\n")
