"""How `fieldid give` is called."""

import argparse

from fieldid.calls.shared import guide_to_file

DOES = "Write a guide as one file, for somebody to add on a phone."
FILE = "the file to write; name it .txt, since phones hand on texts to any app"


def options(own: argparse.ArgumentParser) -> None:
    """Adds them to the command's own parser."""
    guide_to_file(own, FILE)


def run(asked: argparse.Namespace) -> int:
    """The exit code of the command as it was asked for."""
    from fieldid.commands.give import give

    give(asked.guide, asked.out)
    return 0
