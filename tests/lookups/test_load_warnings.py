"""What looks wrong about a load: few things, each a fact."""

from datetime import timedelta

from app.lookups.load_warnings import before_load
from app.work.dyeing import BathIn, into_bath, lift
from app.work.loading import into_load


def lots(studio, count):
    rows = [studio.wind(studio.cone(), 2, "red", studio.discs[place]) for place in range(count)]
    for row in rows:
        bath = studio.do(into_bath, BathIn((row,), studio.recipe), studio.random)["bath"]
        studio.do(lift, bath)
    return rows


def wrong(studio, rows, step, later=timedelta()):
    return studio.book.ask(before_load, rows, step, studio.clock.now + later)


def test_more_than_four_lots_in_one_water_are_said_and_on_a_rail_are_not(studio):
    rows = lots(studio, 5)
    assert wrong(studio, rows[:4], "wash") == ()
    assert wrong(studio, rows, "wash") == (
        "5 lots in one wash: what bleeds in it is on all of them.",)
    assert wrong(studio, rows, "rail") == ()


def test_a_soak_of_more_than_a_day_and_a_half_is_said(studio):
    row = studio.wind(studio.cone(), 2, "red", studio.discs[0])
    studio.do(into_load, "soak", yarn=[row])
    assert wrong(studio, [row], "wash", timedelta(hours=35)) == ()
    assert wrong(studio, [row], "wash", timedelta(hours=37, minutes=30)) == (
        "Disc 031 was in the soak for 37 hours: smell at it.",)
    studio.do(into_load, "wash", yarn=[row])
    assert wrong(studio, [row], "rail", timedelta(hours=40)) == ()


def test_yarn_that_was_not_lifted_is_said_but_not_on_its_way_into_the_steamer(studio):
    row = studio.wind(studio.cone(), 2, "red", studio.discs[0])
    studio.dye(row)
    assert wrong(studio, [row], "wash") == (
        "Disc 031 is in the pot still by the book: lift it there.",)
    assert wrong(studio, [row], "steamer") == ()


def test_the_card_of_a_pile_is_asked_about(studio):
    (row,) = lots(studio, 1)
    (pile,) = studio.finish(row, red=2)
    assert wrong(studio, [pile], "rail") == (
        "Disc 031 is the card of a pile that was counted: is it the right disc?",)


def test_two_rows_on_one_disc_are_said_once_and_nothing_is_nothing(studio):
    one, other = studio.wind(studio.cone(), 2, "red"), studio.wind(studio.cone(), 2, "blue")
    from app.work.bundling import tie_on

    studio.do(tie_on, studio.discs[0], [one, other])
    studio.do(into_load, "soak", yarn=[one, other])
    assert len(wrong(studio, [one, other], "wash", timedelta(hours=40))) == 1
    assert wrong(studio, [], "wash") == ()
