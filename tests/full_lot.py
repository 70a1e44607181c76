"""A lot with a long life, for tests of the batch record: all by the program's own deeds."""

import json
from dataclasses import asdict

from app.calculations.codes import Kind
from app.documents.tag_words import TagWords
from app.lookups.recipes import recipe_then
from app.lookups.tagging import marks_for
from app.store.deed import By
from app.work.additions import Addition, addition
from app.work.bundling import make_plates
from app.work.dyeing import BathIn, into_bath, lift
from app.work.finishing import finish
from app.work.holding import clear, hold, lift_hold
from app.work.loading import into_load
from app.work.moving import call_second
from app.work.readings import bleed, read_bath, rinse, room, step_done, water_added
from app.work.recipes import RecipeIn, write_recipe
from app.work.selling import know_customer, sell
from app.work.tag_counting import count_in_hand
from app.work.tagging import Printing, apply_tag, print_tags, reprint, spoil_tags
from app.work.weigh_lines import LineIn, begin_line, take_weight, tip_back
from app.work.weighing import WeighingIn, begin_weighing, close_weighing
from tests.dyehouse import ACID, BLACK, BLUE, YELLOW, Dyehouse
from tests.makers import Studio

WORDS = TagWords(
    studio="Quernlow Dyeyard", address="Staithe Row 3, Quernlow",
    colourway="Sluice Keeper's Glove", base="Tarnfield 4-ply", fibre="100 % wool",
    net="100 g   388 m", lot="", care="Hand wash 30 °C, dry flat.")


class FullLot:
    """Twelve skeins of two cones: weighed, dyed with an addition, washed with another lot, counted
    one short, tagged with a spoiled and a reprinted tag, held and cleared, partly sold."""

    def __init__(self, studio: Studio) -> None:
        self.studio = studio
        self.house = Dyehouse(studio, (BLUE, YELLOW, BLACK, ACID))
        one, other = studio.cones(2)
        self.rows = [studio.wind(one, 6, "red", studio.discs[0]),
                     studio.wind(other, 6, "blue", studio.discs[1])]
        self._weigh()
        self._dye()
        self._wash()
        self._count()
        self._tag()
        self._hold_and_sell()
        studio.do(write_recipe, RecipeIn(1, (BLUE, YELLOW, ACID), liquor_tenths=200,
                                         reason="less black"))
        self.code = studio.code(self.lot) or ""

    def _weigh(self) -> None:
        studio, by = self.studio, By("DA", "weighing")
        (balance,) = studio.do(make_plates, Kind.VESSEL, [9], "balance 0.01 g")
        self.weighing = studio.do(begin_weighing, WeighingIn(
            "bath", self.house.recipe, tuple(self.rows), bath_ml=24_750), by=by)
        for fill, target, mg in ((1, 10_519, 10_600), (2, 2_722, 2_720), (3, 1_237, 1_240)):
            line = studio.do(begin_line, LineIn(
                self.weighing, fill=self.house.fills[fill], target_mg=target, balance=balance),
                by=by)
            studio.do(take_weight, line, mg, by=by)
            if fill == 1:
                studio.do(tip_back, line, 70, by=by)
        acid = studio.book.ask(recipe_then, self.house.recipe).components[-1].id
        line = studio.do(begin_line, LineIn(self.weighing, component=acid, target_mg=24_750), by=by)
        studio.do(take_weight, line, 24_800, by=by)
        studio.do(close_weighing, self.weighing, by=by)

    def _dye(self) -> None:
        studio, by = self.studio, By("DA", "pots")
        done = studio.do(into_bath, BathIn(tuple(self.rows), self.house.recipe, studio.pot,
                                           self.weighing), studio.random, by=by)
        self.bath, self.lot = done["bath"], done["lots"][0]
        studio.do(read_bath, self.bath, ph_centi=650, decidegrees=300, clearness=2, by=by)
        studio.do(water_added, self.bath, 900, by=by)
        step = studio.book.ask(recipe_then, self.house.recipe).steps[0].id
        studio.do(step_done, self.bath, step, by=by)
        studio.do(addition, Addition(self.bath, mg=6_000, why="citric acid"), by=by)
        studio.do(addition, Addition(self.bath, fill=self.house.fills[2], mg=200, why="too blue"),
                  by=by)
        wrong = studio.done(read_bath, self.bath, ph_centi=480, by=by).seq
        studio.undo(wrong)
        studio.do(read_bath, self.bath, ph_centi=430, decidegrees=850, clearness=0, by=by)
        studio.do(lift, self.bath, by=By("WS", "pots"))

    def _wash(self) -> None:
        studio, by = self.studio, By("WS", "wash and dry")
        other = studio.wind(studio.cone(), 3)
        self.other = studio.dye(other, pot=studio.pot2)
        load = studio.do(into_load, "wash", yarn=[*self.rows, other], by=by)
        studio.do(rinse, load, 3, by=by)
        studio.do(bleed, load, 1, by=by)
        studio.do(into_load, "spin", yarn=self.rows, by=by)
        rail = studio.do(into_load, "rail", yarn=self.rows, by=by)
        studio.do(room, rail, 190, 510, by=by)

    def _count(self) -> None:
        self.piles = self.studio.do(finish, self.rows, {"red": 6, "blue": 5},
                                    by=By("TW", "finishing"))

    def _tag(self) -> None:
        studio, by = self.studio, By("LP", "tagging")
        words = json.dumps(asdict(WORDS))
        self.skeins: list[int] = []
        for pile, count in zip(self.piles, (6, 5), strict=True):
            tags = self._print(pile, count, words, by)
            if count == 6:
                studio.do(spoil_tags, tags[:1], "jammed in the printer", by=by)
                tags = tags[1:] + self._print(pile, 1, words, by)
            self.skeins += [studio.do(apply_tag, tag, by=by) for tag in tags]
        code = studio.code(self.lot)
        studio.do(reprint, self.skeins[0], f"{code}-ZZ".replace("Z", "0"), words,
                  ("swing tag", 3), by=by)
        studio.do(count_in_hand, self.lot, 0, by=by)

    def _print(self, pile: int, count: int, words: str, by: By) -> list[int]:
        studio = self.studio
        marks = studio.book.ask(marks_for, studio.code(self.lot), count, studio.random)
        tags: list[int] = studio.do(print_tags, Printing(pile, marks, words, "swing tag"), by=by)
        return tags

    def _hold_and_sell(self) -> None:
        studio = self.studio
        held = studio.do(hold, "lot", self.lot, "uneven at the ties")
        studio.do(clear, held, self.skeins[0], "looked at in daylight")
        studio.do(lift_hold, held, "all looked at, none uneven")
        studio.do(call_second, self.skeins[1:2], "a knot")
        buyer = studio.do(know_customer, "Berta Treddle")
        studio.do(sell, self.skeins[2:5], buyer)
        studio.do(sell, self.skeins[5:6], None)
