from app.calculations.listing import listing


def test_the_last_of_several_comes_after_and() -> None:
    assert [listing("ABC"[:n]) for n in range(4)] == ["", "A", "A and B", "A, B and C"]
