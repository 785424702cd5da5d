"""What is worked out once is kept."""

from scantling.solids.store import Store


def test_the_same_key_is_worked_out_once() -> None:
    store = Store()
    assert [store.kept(("board", 3), lambda: [7]) is store.kept(("board", 3), list)] == [True]
    assert store.made == 1


def test_nothing_found_is_kept_too() -> None:
    store = Store()
    assert store.kept("none", lambda: None) is None
    assert store.kept("none", lambda: 5) is None


def test_what_two_rounds_do_not_ask_for_is_forgotten() -> None:
    store = Store()
    store.kept("used", lambda: 1)
    store.kept("unused", lambda: 2)
    store.next_round()
    assert store.kept("used", lambda: 3) == 1
    store.next_round()
    assert store.kept("used", lambda: 4) == 1
    assert len(store) == 1
    assert store.kept("unused", lambda: 5) == 5
