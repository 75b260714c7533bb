"""fieldid: which model year an old object most likely is, from small clues."""

__version__ = "0.1.0"
