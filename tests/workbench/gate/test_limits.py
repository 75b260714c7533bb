import threading

import pytest
from hypothesis import given
from hypothesis import strategies as st

from fieldid.workbench.gate.limits import (
    ALL,
    FORGOTTEN,
    MOST_ADDRESSES,
    ONE,
    Misses,
    network,
)
from workbenches import Clock

HERE = "192.0.2.1"


def misses(count: int, *, clock: Clock | None = None, address: str = HERE) -> Misses:
    made = Misses(clock or Clock())
    for _ in range(count):
        assert made.begin(address) == 0
    return made


def test_first_misses_cost_nothing():
    assert misses(ONE.free - 1).begin(HERE) == 0


def test_then_each_miss_doubles_the_wait():
    clock = Clock()
    table = misses(ONE.free, clock=clock)
    waits = []
    for _ in range(9):
        waits.append(table.begin(HERE))
        clock.now += waits[-1]
        assert table.begin(HERE) == 0

    assert waits == [30, 60, 120, 240, 480, 960, 1920, 3600, 3600]


def test_wait_counts_down():
    clock = Clock()
    table = misses(ONE.free, clock=clock)

    clock.now += 10.5
    assert table.begin(HERE) == 20


def test_trying_during_the_wait_lengthens_nothing():
    clock = Clock()
    table = misses(ONE.free, clock=clock)
    for _ in range(100):
        table.begin(HERE)

    clock.now += 30
    assert table.begin(HERE) == 0


def test_others_do_not_wait_for_one():
    assert misses(ONE.free).begin("192.0.2.2") == 0


def test_many_addresses_together_wait():
    table = Misses(Clock())
    for i in range(ALL.free):
        assert table.begin(f"192.0.2.{i}") == 0

    assert table.begin("198.51.100.1") == 2


def test_who_was_inside_waits_for_no_stranger():
    clock = Clock()
    table = misses(1, clock=clock)
    table.forgive(HERE)
    for i in range(2, 2 + ALL.free):
        table.begin(f"192.0.2.{i}")

    assert table.begin("198.51.100.1") > 0
    assert table.begin(HERE) == 0


def test_right_password_forgives_earlier_misses():
    table = misses(ONE.free - 1)
    table.begin(HERE)
    table.forgive(HERE)

    assert [table.begin(HERE) for _ in range(ONE.free)] == [0] * ONE.free


def test_misses_are_forgotten_at_last():
    clock = Clock()
    table = misses(ONE.free, clock=clock)

    clock.now += FORGOTTEN
    assert [table.begin(HERE) for _ in range(ONE.free)] == [0] * ONE.free


def test_house_of_many_addresses_is_one():
    table = Misses(Clock())
    for i in range(ONE.free):
        assert table.begin(f"2001:db8:1:2::{i:x}") == 0

    assert table.begin("2001:db8:1:2:ffff::1") == 30
    assert table.begin("2001:db8:1:3::1") == 0


def test_same_address_in_both_kinds_is_one():
    assert misses(ONE.free).begin(f"::ffff:{HERE}") == 30


def test_tries_at_the_same_time_are_all_counted():
    table, waits = Misses(Clock()), []
    threads = [
        threading.Thread(target=lambda: waits.append(table.begin(HERE)))
        for _ in range(40)
    ]
    for thread in threads:
        thread.start()
    for thread in threads:
        thread.join()

    assert waits.count(0) == ONE.free


def test_table_does_not_grow_without_end():
    clock = Clock()
    table = Misses(clock)
    for i in range(3 * MOST_ADDRESSES):
        clock.now += 100
        table.begin(f"10.0.{i // 250}.{i % 250}")

    assert len(table._each) == MOST_ADDRESSES


@given(st.ip_addresses())
def test_every_address_has_a_network(address):
    assert network(str(address)) == network(network(str(address)).partition("/")[0])


@pytest.mark.parametrize("misses", [0, 1, 5, 40, 10**6])
def test_wait_is_never_beyond_the_longest(misses):
    assert 0 <= ONE.wait(misses) <= ONE.longest
