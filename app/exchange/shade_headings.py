"""What columns of a list of shade readings are called."""

from app.exchange.headings import ListKind

SHADES = ListKind(
    "a list of shade readings",
    {"lot": "the lot's code", "l": "L*", "a": "a*", "b": "b*", "lamp": "the lamp",
     "observer": "the observer", "state": "wet or dry", "zone": "the zone",
     "readings": "of how many readings it is the mean", "instrument": "the instrument"},
    {"lot": ("lot", "lot code", "dye lot", "lot no", "code", "sample", "sample name", "sample id",
             "name", "partie", "farbpartie", "bain", "verfbad", "lote", "lotto"),
     "l": ("l", "lab l", "cie l", "cielab l", "lightness", "helligkeit"),
     "a": ("a", "lab a", "cie a", "cielab a"),
     "b": ("b", "lab b", "cie b", "cielab b"),
     "lamp": ("lamp", "illuminant", "light", "lichtart", "illuminant type"),
     "observer": ("observer", "beobachter", "observateur", "observer angle"),
     "state": ("state", "wet", "wet or dry", "dry", "condition", "zustand"),
     "zone": ("zone", "place", "bereich"),
     "readings": ("readings", "number of readings", "measurements", "messungen", "averaged",
                  "averages"),
     "instrument": ("instrument", "device", "gerat", "instrumentation", "spectrophotometer")},
    needed=("lot", "l", "a", "b", "lamp", "observer"),
    above=("lamp", "observer", "state", "instrument"),
    for_all=("lamp", "observer", "state", "instrument"),
)
"""L*a*b* as CIE writes it and as CGATS.17 names its fields; the other words from memory."""
