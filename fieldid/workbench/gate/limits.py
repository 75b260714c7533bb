"""How often a password may be tried, and how much may be sent at once."""

from collections.abc import Callable
from dataclasses import dataclass
from ipaddress import IPv6Address, ip_address, ip_network
from math import ceil
from threading import Lock
from typing import TypeVar

View = TypeVar("View", bound=Callable[..., object])
Value = TypeVar("Value")


@dataclass(frozen=True, slots=True)
class Rule:
    """So many misses are free; then each doubles the wait, up to the longest."""

    free: int
    first: float
    longest: float

    def wait(self, misses: int) -> float:
        """Seconds that must pass after the last of so many misses.

        >>> [Rule(free=5, first=30, longest=100).wait(n) for n in (4, 5, 6, 7, 999)]
        [0.0, 30.0, 60.0, 100.0, 100.0]
        """
        if misses < self.free:
            return 0.0
        # Capped, because so large a power is no number that a wait can be.
        return float(min(self.first * 2 ** min(misses - self.free, 40), self.longest))


ONE = Rule(free=5, first=30, longest=3600)
"""For one address."""
ALL = Rule(free=25, first=2, longest=60)
"""For all addresses together, so that many of them are no way round."""
FORGOTTEN = 12 * 3600
"""Seconds after which misses count no more."""
MOST_ADDRESSES = 1000


@dataclass(slots=True)
class Count:
    """Misses, and when the last one was."""

    misses: int = 0
    last: float = 0.0


class Misses:
    """The misses at the gate, by address and in all; kept in memory.

    `clock` gives seconds that only go forward.
    """

    def __init__(self, clock: Callable[[], float]) -> None:
        self._clock = clock
        self._lock = Lock()
        self._all = Count()
        self._each: dict[str, Count] = {}
        self._known: dict[str, None] = {}

    def begin(self, address: str) -> int:
        """Seconds to wait, or 0: then it is counted as a miss until it is forgiven.

        Counted beforehand, so that many tries at the same time are many.
        """
        who = network(address)
        with self._lock:
            now = self._clock()
            own = self._each.get(who, Count())
            wait = self._left(own, ONE, now)
            # Whoever was inside before is not kept out by strangers.
            if who not in self._known:
                wait = max(wait, self._left(self._all, ALL, now))
            if wait > 0:
                return ceil(wait)
            self._all.misses, self._all.last = self._all.misses + 1, now
            own.misses, own.last = own.misses + 1, now
            _put(self._each, who, own)
            return 0

    def forgive(self, address: str) -> None:
        """The try was no miss: forgets what was counted of this address."""
        who = network(address)
        with self._lock:
            self._each.pop(who, None)
            self._all.misses = max(0, self._all.misses - 1)
            _put(self._known, who, None)

    @staticmethod
    def _left(count: Count, rule: Rule, now: float) -> float:
        """Seconds that are left to wait; misses of long ago are dropped."""
        if count.misses and now - count.last >= FORGOTTEN:
            count.misses = 0
        return rule.wait(count.misses) - (now - count.last)


def network(address: str) -> str:
    """Who an address belongs to: one house has many addresses of IPv6.

    >>> network("192.0.2.7"), network("::ffff:192.0.2.7"), network("2001:db8:1:2:3::4")
    ('192.0.2.7', '192.0.2.7', '2001:db8:1:2::/64')
    """
    found = ip_address(address)
    if not isinstance(found, IPv6Address):
        return str(found)
    if found.ipv4_mapped:
        return str(found.ipv4_mapped)
    return str(ip_network((found, 64), strict=False))


def up_to(megabytes: int) -> Callable[[View], View]:
    """Marks a view that may be sent more than a form usually is."""

    def marked(view: View) -> View:
        view.most_megabytes = megabytes  # type: ignore[attr-defined]  # for `most`
        return view

    return marked


def most(view: object, *, usual: int) -> int:
    """How many megabytes may be sent to a view."""
    found: int = getattr(view, "most_megabytes", usual)
    return found


def _put(table: dict[str, Value], key: str, value: Value) -> None:
    """Puts it last, and drops the first if there are too many."""
    table.pop(key, None)
    table[key] = value
    if len(table) > MOST_ADDRESSES:
        del table[next(iter(table))]
