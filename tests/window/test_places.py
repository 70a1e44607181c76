from app.calculations.codes import Kind, read
from app.window.bench import Bench
from app.window.places import PLACES


def test_every_place_has_its_own_number_key_and_plate():
    assert len({place.number for place in PLACES}) == len(PLACES)
    assert len({place.key for place in PLACES}) == len(PLACES)
    plates = [read(place.plate) for place in PLACES]
    assert {plate.kind for plate in plates} == {Kind.BENCH}
    assert [plate.number for plate in plates] == [place.number for place in PLACES]


def test_numbers_follow_the_order_of_the_work_and_later_benches_have_a_letter():
    numbers = [place.number for place in PLACES if not place.letter]
    assert numbers == sorted(numbers) == list(range(1, 11))
    later = [place for place in PLACES if place.letter]
    assert [(place.title, place.number, place.key) for place in later] == [
        ("Inspecting", 11, "Alt+I")]


def test_one_place_finds_what_the_others_have_no_use_for():
    assert sum(place.finds for place in PLACES) == 1


def test_every_bench_is_there():
    for place in PLACES:
        assert issubclass(place.bench_class(), Bench), place.title
