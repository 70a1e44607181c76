"""The balances of the studio, by which rule they are used, and the one on this computer's wire."""

from collections.abc import Sequence
from decimal import Decimal

from app.calculations.balances import Rule
from app.lookups.balances import RULE, BalanceNow, balances_now, rule_now
from app.problems import BadInput
from app.scanning.balance_ear import Heard
from app.window.bench import Around
from app.window.benches.weighing.hand import WeighHand
from app.window.benches.weighing.weigh_words import bare
from app.window.benches.weighing.wire_card import WireCard
from app.window.parts.amounts import read_grams
from app.window.parts.card import Actions, Card, SideBySide
from app.window.parts.fields import CountField, Field, GramsField, TextField
from app.window.parts.key_button import KeyButton
from app.window.parts.thing_table import Head, ThingTable
from app.window.parts.words import SECOND, Words
from app.window.session import Done
from app.window.wired_balance import ports_here
from app.work.balances import BalanceIn, set_up_balance
from app.work.studio import choose

_RULES = {
    Rule.COMMON_PRACTICE: "By common practice (no source) one reading step is at most 2 % of what "
                          "is weighed.",
    Rule.USP_41: "By USP General Chapter 41 twice the repeatability of the balance is at most "
                 "0.10 % of what is weighed.",
}
"""Two rules that ask different things; a studio chooses one."""


class BalancesPage(WeighHand):
    """A balance is set up from its own plate; what arrives on the wire is shown as it comes."""

    def __init__(self, around: Around) -> None:
        super().__init__(around)
        self.balances: Sequence[BalanceNow] = ()
        self.rule_now = Rule.COMMON_PRACTICE
        self.number = CountField("Number")
        self.name = TextField("Its name", "fine balance", "Say what it is called.")
        self.step = GramsField("Reads to", "0.01 g")
        self.most: Field[Decimal | None] = Field("Carries", _or_nothing, "600 g")
        self.table = ThingTable(
            ("balance", Head("reads to", right=True), Head("carries", right=True),
             Head("least", right=True)), "balances",
            none="No balance has a plate yet: what F7 said before counts.", opens=True, most_rows=5)
        self.used, self.by_rule = Words("", bold=True), Words("")
        self.rule = KeyButton("The other rule", "F7")
        self.wire = WireCard()
        self._lay_out()
        self.rule.clicked.connect(self._other_rule)
        self.table.opened.connect(lambda row: self._fill(self.balances[row]))
        self.wire.kept.connect(self._wire)
        if around.balance is not None:
            self.wire.show_wiring(around.balance.wiring)
            self.hear(around.balance.now)
            around.background.read(self, ports_here, self.wire.show_ports)
        self.look()

    def look(self) -> None:
        """Look again at all balances."""
        self.ask(self._show, balances_now)
        self.ask(self._show_rule, rule_now)

    def hear(self, heard: Heard) -> None:
        """Show what arrives."""
        self.wire.show_heard(heard)

    def done(self) -> None:
        """Keep the balance that was written."""
        if self.wire.has_focus():
            self.wire.keep()
            return
        number, name, step, most = (self.number.value(), self.name.value(), self.step.value(),
                                    self.most.value())
        if number is None or not name or step is None or self.most.wrong.isVisible():
            return
        if step <= 0:
            self.step.complain("A balance reads to something: 0.1, 0.01 or 0.001 g.")
            return
        self.do(set_up_balance, BalanceIn(number, name, step, most), then=self._kept)

    def _kept(self, _done: Done[int]) -> None:
        for field in (self.name, self.step, self.most):
            field.clear()
        self.look()
        self.name.setFocus()

    def _fill(self, one: BalanceNow) -> None:
        self.number.line.setText(str(one.number))
        self.name.line.setText(one.name)
        self.step.line.setText(bare(one.facts.step_g))
        self.most.line.setText("" if one.facts.most_g is None else bare(one.facts.most_g))
        self.step.setFocus()

    def _show(self, balances: Sequence[BalanceNow]) -> None:
        self.balances = balances
        used = self.around.balance.plate if self.around.balance else 0
        self.table.show_rows([
            (one.title, f"{bare(one.facts.step_g)} g",
             "–" if one.facts.most_g is None else f"{bare(one.facts.most_g)} g",
             f"{bare(one.facts.minimum_g)} g") for one in balances])
        here = next((one for one in balances if one.number == used or len(balances) == 1), None)
        self.used.setText(f"Here {here.title} is used. " if here else "")
        self.used.setVisible(here is not None)
        if not self.name.line.text():
            self.number.line.setText(str(max((one.number for one in balances), default=0) + 1))

    def _show_rule(self, rule: Rule) -> None:
        self.rule_now = rule
        self.by_rule.setText(_RULES[rule])

    def _other_rule(self) -> None:
        rules = list(Rule)
        other = rules[(rules.index(self.rule_now) + 1) % len(rules)]
        self.do(choose, {RULE: other.value}, then=lambda _: self.look())

    def _wire(self) -> None:
        wiring = self.wire.wiring()
        if wiring is not None and self.around.balance is not None:
            self.around.balance.wire(wiring)
            self.say(f"listening at {wiring.port}" if wiring.port else "no balance on the wire")

    def _lay_out(self) -> None:
        card, there = Card("Set up a balance", in_hand=True), Card("Balances of the studio")
        card.add_row(self.number, self.name)
        card.add_row(self.step, self.most)
        card.add(Words("A balance that types like a keyboard needs no wire.", ink=SECOND))
        keep = KeyButton("Keep the balance", "Enter", strong=True)
        keep.clicked.connect(self.done)
        card.add_last(Actions(keep, self.put_away("Back to the balance")))
        there.add(self.table, self.used, self.by_rule, Words(
            "Scan its plate at this bench to weigh on it. The Desk puts the plates on paper.",
            ink=SECOND))
        there.add_last(Actions(self.rule))
        self.body.addWidget(SideBySide(card, there, shares=(2, 3)))
        self.body.addWidget(self.wire)
        self.setFocusProxy(self.name)
        self.used.hide()


def _or_nothing(text: str) -> Decimal | None:
    if not text.strip():
        return None
    grams = read_grams(text)
    if grams <= 0:
        raise BadInput("It carries something.", "Write grams, like 600, or leave it empty.")
    return grams
