"""Colours for tests: lots as the trade reads them, and any others."""

from hypothesis import strategies as st

from app.calculations.shade import Colour, Lamp, Observer, Viewing

DRY = Viewing(Lamp.D65, Observer.TWO, wet=False)
WET = Viewing(Lamp.D65, Observer.TWO, wet=True)
SHOP = Viewing(Lamp.A, Observer.TWO, wet=False)


def colour(lightness: float, a: float, b: float, readings: int = 4, at: Viewing = DRY) -> Colour:
    """A colour read dry in daylight, at four places."""
    return Colour(lightness, a, b, at, readings)


TEAL = {
    "P": colour(48.3, -36.6, 3.3), "Q": colour(48.6, -36.2, 3.8), "R": colour(49.0, -35.9, 4.4),
    "S": colour(49.5, -35.5, 5.0), "T": colour(50.0, -35.1, 5.7), "U": colour(48.1, -36.9, 3.0),
    "V": colour(50.3, -34.8, 6.0), "W": colour(46.9, -35.6, 2.0),
}
"""Eight lots of one colourway, some of them compared with the last lot only."""

LABS = st.tuples(
    st.floats(0, 100), *[st.floats(-90, 90).map(lambda value: round(value, 4))] * 2
)
COLOURS = LABS.map(lambda lab: colour(*lab))

CLOSE = st.tuples(
    st.integers(480, 510), st.integers(-380, -350), st.integers(20, 50)
).map(lambda tenths: colour(*(value / 10 for value in tenths)))
"""Lots of one colourway, near enough for groups to form."""
