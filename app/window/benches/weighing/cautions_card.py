"""Words of caution where powder is about to be opened: the makers' sheets come before them."""

from app.calculations.cautions import Step, cautions_for, first_of_all
from app.window.look.look import Size
from app.window.parts.card import Card
from app.window.parts.words import SECOND, Words

SUBSTANCES = ("acid dye", "reactive dye", "acid")
"""What may lie on a weigh bench; which class a jar's dye is of is on its maker's sheet."""


def cautions_card(step: Step = Step.WEIGH) -> Card:
    """All that is shipped for this step, the sentence of whose words count more first."""
    card = Card("Before a jar is opened")
    card.add(Words(first_of_all(), bold=True))
    said = " ".join(one.words for one in cautions_for(step, SUBSTANCES))
    card.add(Words(said, Size.SMALL, ink=SECOND))
    return card


def in_short() -> str:
    """The one reminder that stays while powder is weighed."""
    breathing = next(one for one in cautions_for(Step.WEIGH) if one.key == "breathing")
    return f"{breathing.words} {first_of_all()}"
