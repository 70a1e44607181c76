"""The card of a bath: what lies in the pot, its lots, water, steps and additions."""

from collections.abc import Iterable
from dataclasses import dataclass
from datetime import datetime
from decimal import Decimal

from sqlalchemy import Connection

from app.calculations.bath import water_to_add
from app.calculations.cautions import Step, first_of_all
from app.calculations.codes import bare_characters, code_of
from app.calculations.moments import clock_words, day_words, moment_words
from app.documents.bath_card import BathCard, CardLot, bath_card_pdf
from app.documents.sheet import SheetFoot, SheetHead
from app.exchange.batch_words import amount
from app.exchange.dye_cautions import cautions_of
from app.exchange.weigh_sheets import step_words
from app.lookups.lot_bath import LotBath, lot_bath
from app.lookups.recent import head
from app.lookups.recipes import RecipeThen, recipe_then
from app.lookups.studio import setting
from app.lookups.weighings import LotWeighed, weighed_with
from app.problems import BadInput, NotFound


@dataclass(frozen=True, slots=True)
class AtThePot:
    """A bath with its recipe and what was poured in."""

    bath: LotBath
    recipe: RecipeThen | None
    weighed: LotWeighed
    studio: str
    at: datetime
    entry: int
    journal_head: str


def at_the_pot(connection: Connection, bath: int, at: datetime) -> AtThePot:
    """What a card says of a bath; raises NotFound."""
    was = lot_bath(connection, bath)
    if was is None or not was.cords:
        raise NotFound("This bath is not in the book.", "Scan its pot.")
    entry, journal_head = head(connection)
    return AtThePot(was, recipe_then(connection, was.recipe_version),
                    weighed_with(connection, was.cords[0].lot), setting(connection, "name"), at,
                    entry, journal_head)


def card_pdf(one: AtThePot, person: str) -> bytes:
    """The card, proven; `person` prints it."""
    return bath_card_pdf(bath_card(one, person))


def bath_card(one: AtThePot, person: str) -> BathCard:
    """What stands at the pot, ready to be set."""
    was, recipe = one.bath, one.recipe
    when = f"{day_words(one.at)}, {clock_words(one.at)}"
    pot = f"pot {was.pot}" if was.pot else "pot not written"
    return BathCard(
        head=SheetHead("Bath card", recipe.name if recipe else "recipe not known",
                       f"{pot}, since {moment_words(was.begun)}, by {was.person}",
                       f"version {recipe.number}" if recipe else ""),
        foot=SheetFoot(f"{one.studio or 'studio not named'} · printed {when}, by {person}",
                       one.journal_head, one.entry),
        lots=tuple(_lots(was)),
        bundles=tuple((f"disc {cord.disc}" if cord.disc else "no disc",
                       f"{_counted(cord.count, cord.put_up)} {cord.base}") for cord in was.cords),
        water=_water(one),
        steps=tuple(step_words(recipe)) if recipe else (),
        additions=tuple(f"{amount(line.mg, line.ul)} {line.asked}, "
                        f"{clock_words(line.taken or line.begun)} {line.person}"
                        for line in one.weighed.lines if line.kind == "addition"),
        first_caution=first_of_all(),
        cautions=cautions_of(recipe, (Step.POT, Step.DRAIN)),
    )


def _lots(was: LotBath) -> Iterable[CardLot]:
    for lot in dict.fromkeys(cord.lot for cord in was.cords):
        cords = [cord for cord in was.cords if cord.lot == lot]
        code = code_of(bare_characters(cords[0].lot_code))
        yield CardLot(code.text if code else "", cords[0].base,
                      _counted(sum(cord.count for cord in cords), cords[0].put_up))


def _water(one: AtThePot) -> tuple[str, str]:
    """The water still to add where the pick-up is known; else the whole bath, with what counts."""
    was, recipe = one.bath, one.recipe
    dry = was.dry_mg or sum(cord.mg for cord in was.cords)
    bath = was.bath_ml or (round(dry * recipe.liquor_tenths / 10_000)
                           if recipe and recipe.liquor_tenths else None)
    if bath is None:
        return "? L", "how large the bath is, is not written"
    stocks = Decimal(sum(line.ul or 0 for line in one.weighed.lines)) / 1000
    if was.pick_up_permille is None:
        return f"{bath / 1000:.1f} L", "bath in all: the water in the wet yarn and in stocks counts"
    wet = Decimal(dry * was.pick_up_permille) / 1_000_000
    try:
        add = water_to_add(Decimal(bath), [wet, max(stocks, Decimal(0))])
    except BadInput as trouble:
        return "0 L", trouble.what
    return f"{add / 1000:.1f} L", f"of water to add to a bath of {bath / 1000:.1f} L"


def _counted(count: int, put_up: str) -> str:
    return f"1 {put_up}" if count == 1 else f"{count} {put_up}s"
