from app.calculations.codes import Kind, read
from app.window.bench import Bench
from app.window.places import PLACES


def test_every_place_has_its_own_number_key_and_plate():
    assert len({place.number for place in PLACES}) == len(PLACES)
    assert len({place.key for place in PLACES}) == len(PLACES)
    plates = [read(place.plate) for place in PLACES]
    assert {plate.kind for plate in plates} == {Kind.BENCH}
    assert [plate.number for plate in plates] == [place.number for place in PLACES]


def test_numbers_follow_the_order_of_the_work():
    numbers = [place.number for place in PLACES]
    assert numbers == sorted(numbers)


def test_one_place_finds_what_the_others_have_no_use_for():
    assert sum(place.finds for place in PLACES) == 1


def test_every_bench_is_there():
    for place in PLACES:
        assert issubclass(place.bench_class(), Bench), place.title
