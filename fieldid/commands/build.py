"""`fieldid build`: the phone app as files for any web host, or as one file."""

from collections.abc import Iterable, Sequence
from dataclasses import dataclass
from pathlib import Path

from fieldid.build import qr
from fieldid.build.onefile import one_file
from fieldid.build.site import bundle
from fieldid.build.takedown import take_down
from fieldid.commands.shelf import load_all
from fieldid.engine.guide import Guide
from fieldid.errors import BuildError, UsageError


@dataclass(frozen=True, slots=True)
class Asked:
    """What the command was called with."""

    guides: Sequence[str]
    out: Path | None
    one_file: Path | None = None
    address: str | None = None
    take_down: bool = False


def build(asked: Asked) -> None:
    """Builds, writes, and says how much a phone must fetch and what to do next."""
    _refuse(asked)
    guides = load_all(asked.guides)
    if asked.out and asked.take_down:
        return _take_down(guides, asked.out)
    if asked.out:
        _folder(guides, asked.out)
    if asked.out and asked.address:
        _poster(asked.address, asked.out)
    if asked.one_file:
        _one_file(guides, asked.one_file)
    return None


def _refuse(asked: Asked) -> None:
    """Refuses what cannot be meant, before the time that a build takes."""
    if not asked.out and not asked.one_file:
        raise UsageError("build needs --out DIR, or --one-file FILE, or both")
    if not asked.out and (asked.address or asked.take_down):
        raise UsageError("--address and --take-down go with --out DIR")
    if asked.take_down and (asked.address or asked.one_file):
        raise UsageError("--take-down writes its own folder; leave out the rest")
    if asked.address:
        qr.checked(asked.address)


def _folder(guides: Iterable[Guide], out: Path) -> None:
    print("Building the phone app, some seconds a guide...", flush=True)
    made = bundle(guides)
    made.write(out)
    print(f"{out}: build {made.build}")
    print(*made.budget(), sep="\n")
    print(f"Put the folder {out} on a web host with HTTPS, and open it on the phone.")


def _poster(address: str, out: Path) -> None:
    """The page with the code lies beside the folder, for it is not for the host."""
    file = out.with_name(f"{out.resolve().name}-address.html")
    _write(file, qr.page(address).encode())
    print(f"{file}: print it; phones find the app by the code on it")


def _one_file(guides: Iterable[Guide], file: Path) -> None:
    made = one_file(guides)
    _write(file, made)
    print(
        f"{file}: the app in one file, {len(made) / 1e6:.1f} MB, for desktops and "
        "Android; it keeps nothing"
    )


def _take_down(guides: Iterable[Guide], out: Path) -> None:
    take_down(guides).write(out)
    print(
        f"{out}: the app taken down. Put this folder on the host in place of the app, "
        "at the same address, and leave it there:\n"
        "a phone loses the app when it comes there with signal, and keeps its finds, "
        "which the page offers as a file."
    )


def _write(file: Path, body: bytes) -> None:
    try:
        file.write_bytes(body)
    except OSError as error:
        raise BuildError(f"{file} could not be written: {error.strerror}") from error
