"""Anything in the book by its code, the beginning of it, or its name."""

from app.calculations.codes import Kind
from app.lookups.things import (
    Found,
    by_beginning,
    by_code,
    by_codes,
    by_name,
    lot_found,
    of_lot,
)
from app.work.bundling import make_plates
from app.work.dyeing import name_colourway
from app.work.jars import JarIn, open_jar, supplier_lot
from app.work.opening_stock import OldLot, open_lot
from app.work.tagging import apply_tag, reprint, spoil_tags
from tests.makers import Studio


def find(studio: Studio, code: str | None) -> Found:
    found = studio.book.ask(by_code, code or "")
    assert found is not None
    return found


def mark_of(studio: Studio, place: int) -> str:
    return studio.book.ask(of_lot, 1)[place].code


def test_each_kind_is_found_by_its_code(studio: Studio) -> None:
    (skein, *_) = studio.tagged(studio.cone(), 2)[1]
    studio.do(make_plates, Kind.SHELF, [3], "by the window")
    jar = JarIn(1, "B1 turquoise", ((studio.do(supplier_lot, 1, "p"), 140_000),))
    studio.do(open_jar, jar)
    lot = find(studio, studio.code(1))
    assert (lot.kind, lot.id, lot.words, lot.swatch) == (
        "lot", 1, "Sluice Keeper's Glove, Tarnfield 4-ply", "#1B856E")
    assert (find(studio, "C00017").kind, find(studio, "C00017").words) == (
        "cone", "Tarnfield 4-ply")
    assert (find(studio, "S0036").kind, find(studio, "S0036").words) == (
        "shelf", "by the window")
    assert find(studio, "J001H").words == "B1 turquoise"
    tagged = next(one for one in studio.book.ask(of_lot, 1) if one.id == skein)
    assert (tagged.kind, tagged.void) == ("skein", False)


def test_what_is_not_in_the_book_is_not_found(studio: Studio) -> None:
    assert studio.book.ask(by_code, "2619K44") is None
    assert studio.book.ask(by_codes, []) == ()


def test_an_undone_cone_is_not_found(studio: Studio) -> None:
    studio.cone()
    studio.undo()
    assert studio.book.ask(by_code, "C00017") is None


def test_a_printed_tag_is_a_tag_until_it_hangs_and_then_a_skein(studio: Studio) -> None:
    group = studio.wind(studio.cone(), 2)
    studio.dye(group)
    tags = studio.print(studio.finish(group, red=2)[0], 2)
    kinds = {one.code: (one.kind, one.id) for one in studio.book.ask(of_lot, 1)}
    assert sorted(kinds.values()) == [("tag", tags[0]), ("tag", tags[1])]
    skein = studio.do(apply_tag, tags[0])
    assert sorted(one.kind for one in studio.book.ask(of_lot, 1)) == ["skein", "tag"]
    studio.do(spoil_tags, tags[1:], "torn")
    void = next(one for one in studio.book.ask(of_lot, 1) if one.kind == "tag")
    assert (void.void, void.successor) == (True, None)
    assert skein in {one.id for one in studio.book.ask(of_lot, 1)}


def test_a_voided_tag_names_its_successor(studio: Studio) -> None:
    _, (skein,) = studio.tagged(studio.cone(), 1)
    old = mark_of(studio, 0)
    new = f"{studio.code(1)}-{'KK' if not old.endswith('KK') else 'HH'}"
    studio.do(reprint, skein, new, "{}", ("swing tag", 1))
    void = find(studio, old)
    assert (void.kind, void.void, void.successor) == ("tag", True, new)
    assert find(studio, new).id == skein


def test_several_codes_are_found_at_once(studio: Studio) -> None:
    studio.cones(3)
    found = studio.book.ask(by_codes, ["C0002K", "C00017", "C0002K", "2619K44"])
    assert [one.code for one in found] == ["C00017", "C0002K"]


def test_things_are_found_by_the_beginning_of_their_code(studio: Studio) -> None:
    studio.tagged(studio.cone(), 2)
    code = studio.code(1) or ""
    assert [one.code for one in studio.book.ask(by_beginning, code[:4])] == [code]
    assert [one.kind for one in studio.book.ask(by_beginning, code)] == ["lot", "skein", "skein"]
    assert [one.code for one in studio.book.ask(by_beginning, "C000")] == ["C00017"]
    assert studio.book.ask(by_beginning, "2719") == ()
    assert len(studio.book.ask(by_beginning, code, limit=1)) == 2  # one of each kind


def test_lots_are_found_by_words_of_their_colourway_or_base_newest_first(studio: Studio) -> None:
    studio.dye(studio.wind(studio.cone(), 1))
    studio.recipe = studio.do(name_colourway, "Wöchentlicher Straßenlärm")  # type: ignore[misc]
    studio.dye(studio.wind(studio.cone(), 1))
    assert [one.id for one in studio.book.ask(by_name, "tarnfield")] == [2, 1]
    assert [one.id for one in studio.book.ask(by_name, "KEEPER'S")] == [1]
    assert [one.id for one in studio.book.ask(by_name, "strassenLÄRM")] == [2]
    assert studio.book.ask(by_name, "nettle") == ()
    assert len(studio.book.ask(by_name, "tarnfield", limit=1)) == 1


def test_a_lot_is_found_by_its_number(studio: Studio) -> None:
    studio.dye(studio.wind(studio.cone(), 1))
    assert studio.book.ask(lot_found, 1).code == studio.code(1)


def test_an_old_lots_code_is_found_and_shown_as_it_stands(studio: Studio) -> None:
    studio.do(open_lot, OldLot("old-77", studio.version, 1, 4), 100_000)
    assert find(studio, "OLD77").shown == "OLD77"
