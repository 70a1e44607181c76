"""At the wash: tubs, machines and rails with their plates, and cords that were lifted."""

from app.calculations.codes import Kind, numbered
from app.lookups.loads import wet_work
from app.lookups.now import NOW
from app.work.bundling import make_plates
from app.work.dyeing import BathIn, into_bath, lift
from tests.window.benches.at_work import begin_work


def vessel(number):
    return numbered(Kind.VESSEL, number).text


def rail(number):
    return numbered(Kind.RAIL, number).text


TUB, MACHINE, STEAMER = vessel(1), vessel(2), numbered(Kind.STEAMER, 1).text


def furnish(studio):
    """A soak tub, a machine, a steamer, two rails."""
    for kind, number, words in ((Kind.VESSEL, 1, "soak tub"), (Kind.VESSEL, 2, "machine"),
                                (Kind.STEAMER, 1, ""), (Kind.RAIL, 1, "heater side"),
                                (Kind.RAIL, 2, "door side")):
        studio.do(make_plates, kind, [number], words)


def dyed_cord(studio, place, count=8, tie="red", lifted=True):
    """So many skeins on a disc, dyed as a lot of their own."""
    row = studio.wind(studio.cone(), count, tie, studio.discs[place])
    bath = studio.do(into_bath, BathIn((row,), studio.recipe), studio.random)["bath"]
    if lifted:
        studio.do(lift, bath)
    return row


def begin_washing(qtbot, settings, studio):
    """At the wash; discs 031 and 032 were lifted, 033 was never dyed."""
    furnish(studio)
    dyed_cord(studio, 0), dyed_cord(studio, 1, 6, "yellow")
    studio.wind(studio.cone(), 5, "blue", studio.discs[2])
    yield from begin_work(qtbot, settings, studio, 5)


def in_places(wash):
    """{where: {disc: (step, count)}} as the book has it."""
    return {one.where: {wet.cord.number: (wet.step, wet.cord.count) for wet in one.cords}
            for one in wash.studio.book.ask(wet_work, NOW).places}


def on_screen(wash):
    """{where: discs} on the cards of the places in use."""
    return {card.place.where: [wet.cord.number for wet in card.lines]
            for card in wash.bench.places.cards}


def waits(wash):
    """The discs in the list of what waits."""
    return [wet.cord.number for wet in wash.bench.waiting.cords]
