"""The branching trail in words: on its tags, and the same in sentences."""

from app.calculations.codes import Kind
from app.exchange.trail_pictures import Drawn, drawn, sentence_lines, sentences
from app.lookups.graph_web import Centre
from app.lookups.things import by_code
from app.work.bundling import make_plates
from app.work.holding import hold
from app.work.loading import into_load
from tests.deeds import customer, send
from tests.lookups.graphs import mixed_pot
from tests.makers import Studio


def of_cone(studio: Studio, cone: int) -> Drawn:
    one = studio.book.ask(drawn, Centre("cone", (cone,)), studio.clock.now)
    assert one is not None
    return one


def test_the_sentences_say_what_the_picture_shows(studio: Studio) -> None:
    cones, _, _ = mixed_pot(studio)
    studio.do(hold, "cone", cones[0], "moths")
    one = of_cone(studio, cones[0])
    said = dict(sentences(one.graph))
    assert list(said) == ["Where from", "In the middle", "Where to"]
    assert said["In the middle"][0].startswith("Cone C·0001·7: 7 skeins. HOLD was put on it.")
    assert {"8 skeins on the table: one of a pool: 3 to 7 of 8. It is below a HOLD.",
            "4 skeins given: one of a pool: 0 to 4 of 4. It is below a HOLD."
            } <= set(said["Where to"])
    for tag in one.picture.tags:
        name = tag.tag.name
        assert any(name in sentence for sentence in sentence_lines(one.graph)), name


def test_every_station_is_in_one_sentence_and_every_strand_is_led(studio: Studio) -> None:
    cones, _, _ = mixed_pot(studio)
    one = of_cone(studio, cones[1])
    said = [sentence for _, some in sentences(one.graph) for sentence in some]
    assert len(said) == len(one.graph.knots) == len(one.picture.tags)
    assert len(one.picture.ways) == len(one.graph.strands)
    ends = {strand.start for strand in one.graph.strands}
    assert sum("Leads to" in sentence for sentence in said) == len(ends)


def test_how_much_there_is_of_it_is_said_first(studio: Studio) -> None:
    cones, lot, skeins = mixed_pot(studio)
    assert of_cone(studio, cones[0]).together == (
        "7 of these 12 skeins came of it; which ones is not certain.")
    found = studio.book.ask(by_code, studio.code(lot) or "")
    assert found is not None
    whole = studio.book.ask(drawn, found, studio.clock.now)
    assert whole is not None
    assert (whole.together, whole.title) == (
        "12 skeins came of it.", f"The trail of dye lot {found.shown}")
    skein = studio.book.ask(drawn, Centre("yarn", (skeins[0],)), studio.clock.now)
    assert skein is not None
    assert skein.together == ""
    new = studio.cone()
    assert of_cone(studio, new).together == "Nothing came of it yet."


def test_a_tub_that_is_named_by_its_step_is_named_once(studio: Studio) -> None:
    tub, basin = (studio.do(make_plates, Kind.VESSEL, [number], words)[0]
                  for number, words in ((1, "soak tub"), (2, "basin")))
    cord = studio.wind(studio.cone(), 2)
    soak = studio.do(into_load, "soak", yarn=[cord], plate=tub)
    studio.dye(cord)
    wash = studio.do(into_load, "wash", yarn=[cord], plate=basin)
    said = " ".join(sentence_lines(of_cone(studio, 1).graph))
    assert "Soak tub: " in said
    assert f"Leads to soak tub (load {soak})" in said
    assert f"Leads to wash load basin (load {wash})" in said


def test_no_name_of_a_customer_stands_in_a_picture(studio: Studio) -> None:
    cone = studio.cone()
    _, skeins = studio.tagged(cone, 2)
    studio.do(send, skeins, studio.do(customer, "Ada Nygård"))
    said = "\n".join(sentence_lines(of_cone(studio, cone).graph))
    assert "2 skeins sent, buyer known: 1 order" in said
    assert "Nygård" not in said
