"""A bundle as one ZIP file, to be unpacked where a host's files lie."""

import io
from zipfile import ZIP_DEFLATED, ZIP_STORED, ZipFile, ZipInfo

from fieldid.build.budget import TEXTS
from fieldid.build.site import Bundle

NEVER = (1980, 1, 1, 0, 0, 0)
"""The first date that the format knows: the same bundle gives the same bytes."""
READABLE = 0o644 << 16


def zipped(made: Bundle) -> bytes:
    """All that the bundle's folder would hold, sorted."""
    held = io.BytesIO()
    with ZipFile(held, "w") as archive:
        for path, body in sorted(made.whole().items()):
            entry = ZipInfo(path, NEVER)
            entry.external_attr = READABLE
            how = ZIP_DEFLATED if path.endswith(TEXTS) else ZIP_STORED
            archive.writestr(entry, body, compress_type=how)
    return held.getvalue()
