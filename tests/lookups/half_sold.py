"""A batch of 24 cones, held after half of what came of it was sold."""

from tests.deeds import customer, put, send
from tests.makers import Studio


def half_sold(studio: Studio) -> list[int]:
    """118 with ten known buyers, 34 not known, 96 on a shelf, 62 in work: 310. The cones."""
    cones = studio.cones(24, batch="7732")
    tagged = [one for cone, count in zip(cones, [13] * 18 + [14], strict=False)
              for one in studio.tagged(cone, count)[1]]
    for cone, count in zip(cones[19:], (13, 13, 13, 13, 10), strict=True):
        studio.wind(cone, count)
    for first in range(0, 118, 12):
        studio.do(send, tagged[first:min(first + 12, 118)], studio.do(customer, f"Buyer {first}"))
    studio.do(send, tagged[118:152])
    studio.do(put, tagged[152:], "shelf", studio.pot)
    return cones
