"""``python -m fieldid``: the same as the ``fieldid`` command."""

from fieldid.cli import main

raise SystemExit(main())
