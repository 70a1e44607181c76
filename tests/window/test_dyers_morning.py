"""A dyer's morning in the real window: two recipes, eight lots, by scanner and one key.

Each weigh-out has one wrong jar, one of them is poured; the power fails while a cup stands on the
balance. Then pots, steps, a look, lifting; then the wash, with a pale lot beside one that bleeds,
and the rails. Every number is read off the screen.
"""

import os
import shutil
from pathlib import Path

import pytest

from app.calculations.codes import Kind
from app.store.book import Book
from app.store.journal import verify
from tests.window.benches.at_work import DONE, disc, plate
from tests.window.day import open_day
from tests.window.dyers_hands import Evening, Morning, thing

SCAN_S, KEY_S = 4, 2
"""What a scan costs a wet hand, with the reach for the plate and a look at the screen, and what a
key beside the balance costs; common practice, no source."""
POT_S, WASHER_S = 60, 40  # the program's share of a lot
KEEN, TICKET = "Sluice Keeper's Glove", "Paper Ticket"
DEEP, PALE = range(31, 35), range(35, 39)  # the discs of their lots
POTS = dict(zip((*DEEP, *PALE), (3, 4, 5, 6) * 2, strict=True))
POURED_WRONG, CUT = 32, 33  # the lot with another jar in its cup; the lot when the power fails


def jar(number):
    return thing(Kind.JAR, number)


def pot(number):
    return thing(Kind.POT, number)


def basin(number):
    return thing(Kind.VESSEL, number)


@pytest.fixture
def opened(qtbot, settings, studio, monkeypatch):
    """A way to switch the computer on; at the end what is on is switched off."""
    Evening(studio)
    folder = os.environ.get("MORNING_PICTURES")
    pictures = Path(folder) if folder else None
    on = []

    def switch_on():
        if on:
            studio.book = Book(studio.book.path, studio.clock)
        on.append(open_day(qtbot, settings, studio, monkeypatch))
        return Morning(qtbot, next(on[-1]).window, studio, pictures)

    yield switch_on
    if len(on) > 1:
        studio.book.close()


def power_fails(morning):
    """The file is left as it lies on the disk at this moment, with nothing closed or tidied."""
    book, kept = morning.studio.book.path, {}
    for tail in ("", "-wal"):
        kept[tail] = book.with_name(f"{book.name}{tail} at the cut")
        shutil.copy(book.with_name(book.name + tail), kept[tail])
    assert kept["-wal"].stat().st_size > 0
    morning.window.close()
    morning.studio.book.close()
    for tail in ("", "-wal", "-shm"):
        book.with_name(book.name + tail).unlink(missing_ok=True)
    for tail, copy in kept.items():
        copy.rename(book.with_name(book.name + tail))


def begin(morning, cord, colourway):
    morning.scan(disc(cord), plate(2 if colourway == KEEN else 1))
    morning.sees(f"{colourway}, version 1")
    morning.press("Enter")


def refused(morning, wrong, asked, right):
    """The wrong jar is refused loudly, before anything is weighed."""
    morning.scan(jar(wrong))
    assert morning.on_bench("name", "verdict") == (asked, "WRONG JAR")
    assert f"and {asked} is asked; nothing was weighed." in morning.trouble
    assert f"Take jar {right}, or scan this one again" in morning.trouble


def line(morning, number, name, wanted):
    """A jar comes to the balance, which types its weight."""
    assert morning.on_bench("name", "plate", "wanted") == (name, f"jar {number}", wanted)
    morning.scan(jar(number))
    assert not morning.trouble
    morning.weighs(wanted)


def acid_and_close(morning, wanted):
    assert morning.on_bench("name", "wanted") == ("citric acid", wanted)
    morning.press("Enter")
    morning.weighs(wanted)
    close(morning)


def close(morning):
    assert morning.on_bench("name") == ("All is in.",)
    morning.press("Enter")
    assert morning.said.startswith("closed weigh-out")


def weigh_deep(morning, cord):
    """602 g: turquoise 0.85 %, lemon 0.22 %, black 0.10 %, acid 2 %."""
    begin(morning, cord, KEEN)
    morning.sees("602 g dry from winding · 20 : 1 · 12.04 L bath", "1.324 g", "0.602 g", "12.040 g")
    refused(morning, 4, "B1 turquoise", 1)
    morning.picture("wrong-jar")
    if cord == POURED_WRONG:
        morning.scan(jar(4))  # it is in the cup already
        assert morning.found == [
            "N1 navy is taken instead of B1 turquoise: the lot is off its recipe."]
        assert morning.on_bench("name", "plate", "fetch", "wanted")[:2] == (
            "B1 turquoise", "jar 4, fill 1")
        morning.weighs("5.117")
        morning.picture("instead")
    else:
        line(morning, 1, "B1 turquoise", "5.117")
    line(morning, 2, "Y1 lemon", "1.324")
    if cord == CUT:
        return
    line(morning, 3, "K1 black", "0.602")
    acid_and_close(morning, "12.040")


def cut_and_go_on(morning, opened):
    """The cup with black stands on the balance; afterwards it is kept, by the balance and COUNT."""
    morning.scan(jar(3))
    assert morning.on_bench("name", "wanted") == ("K1 black", "0.602")
    power_fails(morning)
    after = opened()
    after.goes_on(morning)
    with after.working("weigh bench", CUT):
        after.enter(3)
        assert after.bench.hand.waiting._rows[0][:3] == (
            "1", f"{KEEN}, version 1", "2 taken, a cup stands")
        after.scan(plate(1))
        after.sees("K1 black stood on the balance when work stopped. Is the cup's content kept, "
                   "tipped back, or thrown?", "5.117 g taken 07:3", "1.324 g taken 07:3")
        after.picture("after-the-cut")
        after.scan(plate(1))
        after.weighs("0.602")
        assert after.said == "weighed 0.602 g K1 black"
        acid_and_close(after, "12.040")
    return after


def weigh_pale(morning, cord):
    """200 g: pink 0.045 %; golden 0.020 % is 0.040 g, too little, so 40 mL of 0.1 % stock."""
    begin(morning, cord, TICKET)
    morning.sees("200 g dry from winding · 20 : 1 · 4 L bath")
    refused(morning, 1, "R1 cool pink", 5)
    line(morning, 5, "R1 cool pink", "0.090")
    assert morning.on_bench("name", "plate", "wanted") == ("Y2 golden", "0.1 % stock", "40")
    morning.picture("stock")
    morning.scan(basin(21))
    morning.press("Enter")
    assert morning.said == "weighed 40 mL Y2 golden"
    close(morning)


def what_is_left(morning):
    """The jars are booked right: black three times 0.602 g and once more after the cut."""
    morning.scan(jar(3))
    morning.sees("Jar 3, K1 black", "497.592 g of 500 g")
    morning.scan(jar(4))
    morning.sees("Jar 4, N1 navy", "494.883 g of 500 g")
    morning.scan(jar(1))
    morning.sees("Jar 1, B1 turquoise", "484.649 g of 500 g")


def into_the_pot(morning, cord, name, water, bath):
    """The weigh-out goes in by itself; the lot's code is born. Answers it."""
    morning.scan(pot(POTS[cord]), disc(cord))
    morning.sees(f"goes in: {name}, version 1", f"{water} L of water to add", bath)
    morning.picture(f"filling-{name[:5]}")
    morning.scan(DONE)
    code, _, made = morning.said.partition(": ")
    count = "6 skeins" if cord in DEEP else "2 skeins"
    assert made == f"{count} of {name} in pot {POTS[cord]}"
    morning.sees(code, "46", "min: heat up, 85 °C", "then second acid, 6 g")
    assert ("weighed instead of B1 turquoise" in morning.on_screen()) == (cord == POURED_WRONG)
    return code


def tend(morning, cord, look):
    """Both steps are done, the second with a look at the bath; cooled, it is lifted."""
    number = pot(POTS[cord])
    morning.scan(number, DONE)
    morning.sees("second acid, 6 g")
    morning.scan(number)
    assert f"Pot {POTS[cord]} is still at a step" in morning.trouble
    morning.scan(DONE)
    morning.sees("all steps are done: cool, then lift")
    morning.scan(plate(1 + ("clear", "tinted", "coloured").index(look)))
    assert morning.said.endswith(look)
    morning.picture("looked")
    morning.scan(number)
    assert morning.said == f"lifted pot {POTS[cord]}"


def wash(morning, place, cords, *looks):
    """A load in a basin; after each rinse how the water looks."""
    morning.scan(basin(place), *map(disc, cords), DONE)
    assert f"in wash basin {place}: " in morning.said
    morning.scan(basin(place))
    for rinses, look in enumerate(looks, 1):
        morning.scan(DONE, plate(look))
        morning.sees("1 rinse" if rinses == 1 else f"{rinses} rinses")


def spin_and_hang(morning, place, cords):
    """All of it goes on to the spin, in one scan; then on rail 1."""
    morning.sees("The water is clear: spin, then hang it.")
    morning.scan(basin(place), DONE)
    assert morning.said.startswith("spin ")
    morning.scan(thing(Kind.RAIL, 1), *map(disc, cords), DONE)
    assert morning.said.startswith("rail ")


def test_a_dyers_morning(opened, capsys):
    morning = opened()
    morning.enter(3)
    for cord in DEEP:
        with morning.working("weigh bench", cord):
            weigh_deep(morning, cord)
        if cord == CUT:
            morning = cut_and_go_on(morning, opened)
    for cord in PALE:
        with morning.working("weigh bench", cord):
            weigh_pale(morning, cord)
    what_is_left(morning)

    codes = {}
    morning.enter(4)
    for cords, name, water, bath, look in (
            (DEEP, KEEN, "11.4", "12.04 L of bath. The wet yarn brings 0.6 L. With the yarn it "
                                 "stands at 12.5 L of 15 L.", "tinted"),
            (PALE, TICKET, "3.8", "4 L of bath. The wet yarn brings 0.2 L.", "clear")):
        for cord in cords:
            with morning.working("pots", cord):
                codes[cord] = into_the_pot(morning, cord, name, water, bath)
        for cord in cords:
            with morning.working("pots", cord):
                tend(morning, cord, look)
    assert len(set(codes.values())) == 8

    morning.enter(5)
    with morning.working("wash & dry", 31, 32):
        wash(morning, 11, (31, 32), 2, 1)
        spin_and_hang(morning, 11, (31, 32))
    with morning.working("wash & dry", 33, 34):
        wash(morning, 12, (33, 34), 3)
        morning.sees("Whose dye is it?")
        morning.scan(disc(34))
        morning.sees("1.17 %, bleeds strongly")
        morning.picture("whose-dye")
    with morning.working("wash & dry", 33, 34, 35, 36):
        morning.scan(basin(13), disc(33), disc(34), disc(35), disc(36))
        morning.sees("NOT TOGETHER", f"{codes[35]} (pale, 0.065 %) with ",
                     f"{codes[34]} (1.17 %, bleeds strongly): it takes up what comes off.",
                     "Together all the same")
        morning.picture("not-together")
        morning.scan(DONE, basin(13), DONE, plate(2), DONE, plate(1))
        spin_and_hang(morning, 13, range(33, 37))
    with morning.working("wash & dry", 37, 38):
        wash(morning, 11, (37, 38), 1)
        spin_and_hang(morning, 11, (37, 38))
    morning.sees("rail 1; 32 skeins;", "dry about 7 Apr 15:2")  # 20 °C, 50 %, spun: 7.8 hours
    morning.picture("rails")

    with capsys.disabled():
        print(table(morning))  # noqa: T201
    pinned(morning)
    assert morning.studio.book.ask(verify).entries > 150


PLACES = ("weigh bench", "pots", "wash & dry")


def table(morning):
    """Scans and keys of each lot, at each place; what a load costs is shared by its lots."""
    rows = ["\ndisc" + "".join(f"{place:>22}" for place in PLACES)]
    for cord in (*DEEP, *PALE):
        each = [morning.per_lot[place, cord] for place in PLACES]
        rows.append(f"{cord:03} " + "".join(
            "{:>22}".format(f"{one['scans']:.4g} scans {one['keys']:g} keys") for one in each))
    return "\n".join([*rows, f"The balance typed {morning.readings} readings; "
                            f"{sum(morning.hands.values())} times a hand moved, in "
                            f"{morning.seconds:.0f} s of the machine."])


def seconds(hands):
    return hands["scans"] * SCAN_S + hands["keys"] * KEY_S


def pinned(morning):
    """No hand is asked for more than this, and none of it takes longer than the trade gives it."""
    at = {place: [morning.per_lot[place, cord] for cord in (*DEEP, *PALE)] for place in PLACES}
    most = {place: max(one["scans"] for one in each) for place, each in at.items()}
    assert most == {"weigh bench": 8, "pots": 9, "wash & dry": 8.75}
    assert max(one["keys"] for one in at["weigh bench"]) == 3
    assert not any(one["keys"] for place in PLACES[1:] for one in at[place])
    assert max(map(seconds, at["pots"])) <= POT_S
    assert max(map(seconds, at["wash & dry"])) <= WASHER_S
    assert morning.seconds < 60  # of the machine, on a slow one too
