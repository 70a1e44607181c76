"""Words of caution where work can hurt someone: the makers' sheets come before them."""

from app.calculations.cautions import Step, all_cautions, cautions_for, first_of_all
from app.window.look.look import Size
from app.window.parts.card import Card
from app.window.parts.words import SECOND, Words


class CautionsCard(Card):
    """All that is shipped for some steps, the sentence of whose words count more first.

    Which class a dye is of is on its maker's sheet, so no substance is left out.
    """

    def __init__(self, title: str, *steps: Step) -> None:
        super().__init__()
        self.title = Words("", Size.LEAD, bold=True)
        self.said = Words("", Size.SMALL, ink=SECOND)
        self.add(self.title, Words(first_of_all(), bold=True), self.said)
        self.show_steps(title, *steps)

    def show_steps(self, title: str, *steps: Step) -> None:
        """Other work is in hand: what is to be minded at it, each sentence once."""
        anything = {one for caution in all_cautions() for one in caution.substances}
        words = dict.fromkeys(
            one.words for step in steps for one in cautions_for(step, anything))
        self.title.setText(title)
        self.setAccessibleName(title)
        self.said.setText(" ".join(words))


def in_short() -> str:
    """The one reminder that stays while powder is weighed."""
    breathing = next(one for one in cautions_for(Step.WEIGH) if one.key == "breathing")
    return f"{breathing.words} {first_of_all()}"
