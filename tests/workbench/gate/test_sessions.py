from fieldid.workbench.gate.sessions import IDLE, LONGEST, MOST, Sessions
from workbenches import Clock


def test_session_goes_on_while_it_is_used():
    clock = Clock()
    table = Sessions(clock)
    secret = table.begin()
    for _ in range(10):
        clock.now += IDLE - 1
        assert table.goes_on(secret)


def test_idle_session_ends():
    clock = Clock()
    table = Sessions(clock)
    secret = table.begin()

    clock.now += IDLE
    assert not table.goes_on(secret)
    assert table.knows(secret)


def test_long_session_ends_although_it_is_used():
    clock = Clock()
    table = Sessions(clock)
    secret = table.begin()
    used = 0
    while used + 600 < LONGEST:
        clock.now, used = clock.now + 600, used + 600
        assert table.goes_on(secret)

    clock.now += 600
    assert not table.goes_on(secret)


def test_ended_session_stays_ended():
    """What comes after the end is no use of it."""
    clock = Clock()
    table = Sessions(clock)
    secret = table.begin()
    clock.now += IDLE
    table.goes_on(secret)

    clock.now += 1
    assert not table.goes_on(secret)


def test_signing_out_ends_it_for_good():
    table = Sessions(Clock())
    secret = table.begin()
    table.end(secret)

    assert not table.goes_on(secret)
    assert not table.knows(secret)


def test_one_end_leaves_the_others():
    table = Sessions(Clock())
    one, other = table.begin(), table.begin()
    table.end(one)

    assert table.goes_on(other)


def test_unknown_secrets_open_nothing():
    table = Sessions(Clock())

    assert not any(map(table.goes_on, (None, "", "x", "0" * 43)))


def test_sessions_do_not_grow_without_end():
    table = Sessions(Clock())
    secrets = [table.begin() for _ in range(MOST + 5)]

    assert [table.goes_on(secret) for secret in secrets].count(True) == MOST
    assert table.goes_on(secrets[-1])
