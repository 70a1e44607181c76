"""The measures of each kind of tag, and how a studio's choices change them."""

from dataclasses import dataclass, replace

from app.documents.square_codes import MODULE_MM
from app.documents.tag_choices import LEAST_LOT_MM, PLAIN, Choices
from app.documents.typesetting import MM, Face, Type

LEAST_ON_A_BAND = 8.0  # points


@dataclass(frozen=True, slots=True)
class Form:
    """The measures of one kind of tag: margins and leads in mm, sizes of type."""

    left: float
    right: float  # enough for the code's white edge inside a safe margin of 2 mm
    top: float
    colourway: Type
    base: Type
    net: Type
    print: Type
    maker: Type
    lead: float
    lot_pt: float  # 17 makes digits of 4 mm
    label_above_lot: float
    text: float = 1.0  # a factor on the leads that are not given here
    module: float = MODULE_MM

    def __post_init__(self) -> None:
        if Type(self.lot_pt).ascent_mm < LEAST_LOT_MM:
            raise ValueError(f"a lot of {self.lot_pt} pt is under {LEAST_LOT_MM:g} mm high")

    def chosen(self, choices: Choices) -> "Form":
        """The measures as a studio chose them; refused where words would be too small."""
        if choices == PLAIN:
            return self

        types = self.colourway, self.base, self.net, self.print, self.maker
        choices.points(min(kind.pt for kind in types))

        def sized(kind: Type) -> Type:
            return replace(kind, pt=choices.points(kind.pt))

        taller = self.colourway.ascent_mm * (choices.text - 1)
        lot_pt = lot_points(choices, self.lot_pt)
        return replace(
            self, top=self.top + max(0.0, taller), colourway=sized(self.colourway),
            base=sized(self.base), net=sized(self.net), print=sized(self.print),
            maker=sized(self.maker), lead=self.lead * choices.text, lot_pt=lot_pt,
            label_above_lot=self.label_above_lot
            + Type(lot_pt).ascent_mm - Type(self.lot_pt).ascent_mm,
            text=choices.text, module=choices.module_mm,
        )


SWING = Form(
    left=5, right=5, top=19.4, colourway=Type(16, Face.BOLD), base=Type(9), net=Type(10, Face.BOLD),
    print=Type(7), maker=Type(8, Face.BOLD), lead=3.1, lot_pt=18, label_above_lot=6.1,
)
SMALL = Form(
    left=4.2, right=4.2, top=6.9, colourway=Type(11, Face.BOLD), base=Type(8),
    net=Type(8, Face.BOLD), print=Type(6.5), maker=Type(6), lead=2.6, lot_pt=17, label_above_lot=5,
)
CARD = replace(  # cells without a margin lie at the page's edge, where a printer leaves 4 mm white
    SMALL, left=6.2, right=6.2, top=9, colourway=Type(13, Face.BOLD), base=Type(8.5),
    net=Type(9, Face.BOLD), maker=Type(6.5), lead=2.8,
)
ROLL = replace(
    SMALL, left=3.2, top=6.5, colourway=Type(12, Face.BOLD), base=Type(8.5), maker=Type(6.5)
)
FORMS = {"swing": SWING, "small": SMALL, "card": CARD, "roll": ROLL}


def check_sizes(layout: str, choices: Choices) -> None:
    """Refuses choices under which a layout would set words smaller than the least."""
    if layout in FORMS:
        FORMS[layout].chosen(choices)
    else:
        choices.points(LEAST_ON_A_BAND)


def lot_points(choices: Choices, of_layout: float) -> float:
    """The size of type whose digits are as high as the studio wants them."""
    return of_layout if not choices.lot_mm else round(choices.lot_mm * MM / 0.68 + 0.005, 2)
