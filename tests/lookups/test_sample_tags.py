"""What a tag of each base would say now."""

from app.lookups.sample_tags import SAMPLE_LOT, sample_tags
from app.work.bases import describe_base
from app.work.studio import choose
from tests.makers import Studio, tarnfield


def test_each_base_shows_its_newest_version_under_the_longest_name(studio: Studio) -> None:
    yarn = studio.wind(studio.cone(), 2)
    studio.dye(yarn)
    studio.do(describe_base, tarnfield(fibre="75 % wool, 25 % polyamide"))
    studio.do(choose, {"market": "UK"})
    samples = studio.book.ask(sample_tags)
    (text,) = samples.texts
    assert text.fibre == "75 % wool, 25 % polyamide"
    assert text.net.startswith("100 g")
    assert text.colourway
    assert text.lot == SAMPLE_LOT
    assert (samples.market, samples.language) == ("UK", "")
