from app.lookups.shade_drift import drift_of
from tests.calculations.shades import TEAL
from tests.lookups.cards import dyed, read_lot, read_standard
from tests.makers import Studio


def test_drift_is_told_lot_by_lot_from_the_standard_and_from_the_last(studio: Studio) -> None:
    assert studio.book.ask(drift_of, 1, 1) == ()
    read_standard(studio, TEAL["P"].lab)
    for name in "PQRST":
        read_lot(studio, dyed(studio), TEAL[name].lab)
    steps = studio.book.ask(drift_of, 1, 1)
    assert [f"{one.from_standard.ciede2000:.1f}" for one in steps if one.from_standard] == [
        "0.0", "0.5", "1.0", "1.7", "2.4"]
    assert [one.from_last and f"{one.from_last.ciede2000:.2f}" for one in steps] == [
        None, "0.47", "0.57", "0.66", "0.70"]
