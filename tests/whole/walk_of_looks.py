"""How lots look, what is decided of them, kits by a pattern: the truth is kept beside."""

from pathlib import Path

from hypothesis import strategies as st
from hypothesis.stateful import precondition, rule

from app.calculations.grey_scales import Step
from app.lookups.thread import live_holds
from app.records.shades import VERDICTS
from app.work.inspecting import (
    ShadeIn,
    VerdictIn,
    choose_swatch,
    decide,
    grey_step,
    read_shade,
)
from app.work.kit_patterns import PatternIn, PlaceIn, make_by_pattern, write_pattern
from app.work.offering import ANSWERS, OfferIn, offered
from app.work.put_up_weights import read_humidity, sell_as, weigh_put_up, weigh_reference
from tests.calculations.shades import TEAL
from tests.whole.walk_of_shelf import HERE
from tests.whole.walk_of_trade import TradeWalk


class LooksWalk(TradeWalk):
    """All of the trade, and the shade check with what follows from it."""

    def __init__(self, file: Path) -> None:
        super().__init__(file)
        self.cowl = self.studio.do(write_pattern, PatternIn("cowl", (PlaceIn("A", 2, 1, 1),)))

    @precondition(lambda self: self.told.left)
    @rule(data=st.data(), how=st.sampled_from(["card", "eye", "swatch", "offer"]))
    def look_at_lot(self, data: st.DataObject, how: str) -> None:
        """What is read, chosen or offered moves no yarn and makes nothing surer."""
        lot = data.draw(st.sampled_from(list(self.told.left)))
        if how == "card":
            card = data.draw(st.sampled_from(list(TEAL.values())))
            self.do(read_shade, ShadeIn(card, lot=lot))
        elif how == "eye":
            self.do(grey_step, lot, data.draw(st.sampled_from(list(Step))))
        elif how == "swatch":
            self.do(choose_swatch, lot, "#1B856E")
        else:
            self.do(offered, OfferIn(lot, 2, "redye", data.draw(st.sampled_from(ANSWERS))))
        assert self.answers() == self.told

    @precondition(lambda self: self.told.left and len(self.studio.book.ask(live_holds)) < 2)
    @rule(data=st.data(), verdict=st.sampled_from(VERDICTS), undo=st.booleans())
    def decide(self, data: st.DataObject, verdict: str, undo: bool) -> None:
        """A verdict of hold holds the lot; no other changes what is held."""
        lot = data.draw(st.sampled_from(list(self.told.left)))
        done = self.attempt(decide, lot, VerdictIn(verdict, "Late Frost", "a pale end"), undo=undo)
        if done is None or verdict != "hold":
            assert self.answers() == self.told
            return
        self.told = self.answers()
        assert self.free(lot) == []

    @precondition(lambda self: self.tagged(*HERE, kinds=["skein"]))
    @rule(data=st.data(), how=st.sampled_from(["reference", "humidity", "nothing"]),
          sold=st.booleans(), undo=st.booleans())
    def weigh(self, data: st.DataObject, how: str, sold: bool, undo: bool) -> None:
        """A weight, the room, and what is sold as less move no yarn and make nothing surer."""
        (row,) = self.pick(data, self.tagged(*HERE, kinds=["skein"]))
        if how == "reference":
            self.do(weigh_reference, "wool", 58_500, 50_000)
        elif how == "humidity":
            self.do(read_humidity, 650)
        weight = self.do(weigh_put_up, row, 19_000 if self.world.put_up(row) == "mini" else 97_200)
        if sold and how != "nothing":
            self.attempt(sell_as, weight, row, 18, undo=undo)
        assert self.answers() == self.told

    @precondition(lambda self: self.tagged(*HERE, kinds=["skein"]))
    @rule(data=st.data(), undo=st.booleans())
    def make_kit_by_pattern(self, data: st.DataObject, undo: bool) -> None:
        rows = [row for row in self.some(data, *HERE, most=2) if self.world.kind[row] == "skein"]
        lots = {self.world.tag_lot.get(row) for row in rows}
        if (len(rows) == 2 and len(lots) == 1 and None not in lots
                and self.world.put_up(rows[0]) == "skein"):
            done = self.to_buyer(rows, make_by_pattern, self.cowl, rows, undo=undo)
            self.went(rows, "kit", done)
            if done is not None:
                self.world.kits[done.answer] = rows
