"""The first cones of a studio: their base is described in place."""

import pytest

from app.lookups.door import bases_now
from app.work.bases import describe_base
from app.work.people import enrol
from tests.makers import Studio, tarnfield
from tests.window.benches.door_hands import at_the_door


@pytest.fixture
def new_door(qtbot, settings, book):
    """At the door of a studio whose book has begun, and nothing else."""
    studio = Studio(book, furnished=True)
    studio.do(enrol, "OW", "Osk Wray")
    yield from at_the_door(qtbot, settings, studio)


def test_the_first_base_is_described_in_place(new_door):
    door, base = new_door, new_door.cards.base
    assert door.bench.hand is base
    door.type("Tarnfield 4-ply")
    door.press("Tab")
    door.type("100 % wool")
    door.press("Tab")
    door.type("250/4")
    door.press("Tab")
    door.type("275")
    assert base.promise.text() == (
        "R 250 tex/4. A skein is 412.5 m on the reel; its tag says 100 g and 388 m, with 2 % "
        "spinning oil and 3 % shorter after the wash.")
    door.press("Enter")
    assert [one.millitex for one in door.studio.book.ask(bases_now)] == [250_000]
    assert door.bench.hand is door.cards.start
    assert door.cards.start.base.line.text() == "Tarnfield 4-ply"
    door.begin()
    door.weigh(1462, centre="64", batch="A-203")
    door.press("F10")
    assert len(door.in_book) == 1


@pytest.mark.parametrize(("field", "text", "sentence"), [
    ("name", "", "Say what it is called."),
    ("fibre", "", "Say what it is made of."),
    ("fibre", "80 % wool", "The fibres make 80 %, not 100 %."),
    ("count", "thick", "“thick” cannot be read as a yarn count."),
    ("count", "4", "4 tex is no yarn that is wound in skeins."),
    ("turns", "many", "Write the turns in figures, like 275."),
    ("reel", "9", "Write how long one turn is, like 1.5 m."),
    ("mini", "0", "Write the turns in figures, like 275."),
])
def test_what_a_base_lacks_is_said_beside_its_field(new_door, field, text, sentence):
    base = new_door.cards.base
    words = {"name": "Sock", "fibre": "100 % wool", "count": "Nm 16/4", "turns": "290",
             "reel": "1,5", "mini": "58"}
    for name, written in {**words, field: text}.items():
        getattr(base, name).line.setText(written)
    new_door.press("Enter")
    assert getattr(base, field).wrong.text().startswith(sentence)
    assert new_door.studio.book.ask(bases_now) == ()
    getattr(base, field).line.setText(words[field])
    described = base.words()
    assert described is not None
    assert (described.millitex, [form.turns for form in described.put_ups]) == (250_000, [290, 58])


def test_a_base_described_at_another_station_lets_the_door_open(new_door):
    new_door.studio.do(describe_base, tarnfield())
    new_door.quiet()
    assert new_door.bench.hand is new_door.cards.start
