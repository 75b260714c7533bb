"""The arithmetic and its words: a guide and a find in, a verdict out.

Standard library only; no files, clock, randomness or logging. One short name for
each idea, the same in the JavaScript twin and on the model page:
`y` model year, `t` build month, `p` and `q` parts (or a probability where no part
is meant), `k` clue, `o` option, `a` reading, `m` misreading, `w` weight.
"""

from fieldid.engine.find import Claim, Find, Item, Verdict
from fieldid.engine.guide import Guide
from fieldid.engine.judge import judge
from fieldid.engine.prepare import Tables, prepare
from fieldid.engine.seller import Message, message

__all__ = [
    "Claim",
    "Find",
    "Guide",
    "Item",
    "Message",
    "Tables",
    "Verdict",
    "judge",
    "message",
    "prepare",
]
