"""`fieldid build`: the phone app as files for any web host."""

from collections.abc import Sequence
from pathlib import Path

from fieldid.build.site import bundle
from fieldid.commands.shelf import load_all


def build(names: Sequence[str], out: Path) -> None:
    """Builds, writes, and says how much a phone must fetch and what to do next."""
    guides = load_all(names)
    print("Building the phone app, some seconds a guide...", flush=True)
    made = bundle(guides)
    made.write(out)
    print(f"{out}: build {made.build}")
    print(*made.budget(), sep="\n")
    print(f"Put the folder {out} on a web host with HTTPS, and open it on the phone.")
