"""The plan: a line of the list becomes the days of a bath."""

from datetime import date, timedelta

from app.demo.plan import Bath, planned, worked

TUESDAY = date(2026, 2, 3)


def steps(*baths: Bath) -> list[tuple[str, str]]:
    return [(line.get("step", line["do"]), at.strftime("%a")) for at, line in
            sorted(planned(baths), key=lambda one: one[0])]


def test_a_bath_is_wound_the_day_before_and_shelved_three_days_later() -> None:
    assert steps(Bath(TUESDAY, "1", "Seventh Buoy", "Tarnfield 4-ply", 7)) == [
        ("wind planned", "Mon"), ("soak", "Mon"), ("dye", "Tue"), ("read", "Tue"), ("lift", "Wed"),
        ("wash", "Wed"), ("spin", "Wed"), ("rail", "Wed"), ("count", "Fri"),
        ("inspect", "Fri"), ("tags", "Fri"), ("shelve", "Fri")]


def test_it_goes_only_as_far_as_the_list_says() -> None:
    bath = Bath(TUESDAY, "1", "Seventh Buoy", "Tarnfield 4-ply", 7, until="lifted")
    assert steps(bath)[-1] == ("lift", "Wed")


def test_two_in_one_pot_are_companions_and_a_pale_one_is_washed_by_itself() -> None:
    pot, pale = (Bath(TUESDAY, "5", "Ferry Ledger", base, 7) for base in ("Tarnfield", "Gossamer")
                 ), Bath(TUESDAY, "2", "Whey Blue", "Gossamer", 8)
    lines = [line for _, line in planned([*pot, pale])]
    dyed = [line["cords"] for line in lines if line["do"] == "dye"]
    washed = [line["cords"] for line in lines if line.get("step") == "wash"]
    assert [len(cords) for cords in dyed] == [2, 1]
    assert sorted(len(cords) for cords in washed) == [1, 2]
    assert [pale.cord] in washed


def test_a_tray_is_painted_half_an_hour_before_it_is_steamed() -> None:
    lines = sorted(planned([Bath(TUESDAY, "tray", "Late Bus Orchard", "Tarnfield 4-ply", 6)]),
                   key=lambda one: one[0])
    (painted, one), (steamed, other) = [
        (at, line) for at, line in lines if line["do"] in ("paint", "steam")]
    assert (steamed - painted, one["cords"]) == (timedelta(minutes=30), other["cords"])
    assert not {"dye", "read"} & {line["do"] for _, line in lines}


def test_nobody_works_on_a_saturday() -> None:
    assert worked(date(2026, 2, 6), 1) == date(2026, 2, 9)
    assert worked(date(2026, 2, 9), -1) == date(2026, 2, 6)
