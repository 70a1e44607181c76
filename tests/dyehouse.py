"""Jars, a written recipe and a weigh-out for tests: the numbers of a pot of 602 g."""

from app.lookups.jars import JarNow, jar_now
from app.lookups.weighings import WeighOut, weigh_out
from app.work.dyeing import BathIn, into_bath
from app.work.jars import JarIn, open_jar, supplier_lot
from app.work.recipes import ComponentIn, RecipeIn, StepIn, write_recipe
from app.work.weigh_lines import LineIn, begin_line, take_weight
from app.work.weighing import WeighingIn, begin_weighing, close_weighing
from tests.makers import Studio

BLUE, YELLOW, BLACK = (ComponentIn("B1 turquoise", "owf", 8500),
                       ComponentIn("Y1 lemon", "owf", 2200), ComponentIn("K1 black", "owf", 1000))
ACID = ComponentIn("citric acid", "owf", 20_000, "assistant")
DYES = (BLUE, YELLOW, BLACK)
DRY_MG = 602_000


class Dyehouse:
    """Jars 1 to 4 (B1, Y1, K1, N1), each opened with 500 g of lot p, and the recipe of a pot."""

    def __init__(self, studio: Studio, components: tuple[ComponentIn, ...] = DYES) -> None:
        self.studio = studio
        studio.cone()
        self.maker = 1
        lot = studio.do(supplier_lot, self.maker, "p")
        self.fills = {number: studio.do(open_jar, JarIn(number, dye, ((lot, 500_000),), 1000))
                      for number, dye in enumerate(("B1 turquoise", "Y1 lemon", "K1 black",
                                                    "N1 navy"), 1)}
        self.recipe: int = studio.do(write_recipe, RecipeIn(
            1, components, liquor_tenths=200, steps=(StepIn("heat up", 850, 46),)))

    def jar(self, number: int) -> JarNow:
        """A jar as it is now."""
        found = self.studio.book.ask(jar_now, number)
        assert found is not None
        return found

    def out(self, weighing: int) -> WeighOut:
        """A weigh-out as it is now."""
        found = self.studio.book.ask(weigh_out, weighing)
        assert found is not None
        return found

    def begin(self, *yarn: int) -> int:
        """A weigh-out for a bath of this yarn, else of 602 g weighed dry."""
        return self.studio.do(begin_weighing, WeighingIn(
            "bath", self.recipe, yarn, None if yarn else DRY_MG))

    def take(self, weighing: int, fill: int, mg: int, **more: object) -> int:
        """One line begun and taken."""
        line: int = self.studio.do(begin_line, LineIn(weighing, fill=fill, **more))  # type: ignore[arg-type]
        self.studio.do(take_weight, line, mg)
        return line

    def weighed(self, *yarn: int, jars: tuple[int, ...] = (1, 2, 3)) -> int:
        """A whole weigh-out by the newest fills of these jars, closed."""
        weighing = self.begin(*yarn)
        for number, mg in zip(jars, (5117, 1324, 602), strict=False):
            self.take(weighing, self.jar(number).fill, mg)
        self.studio.do(close_weighing, weighing)
        return weighing

    def dye(self, weighing: int | None = None, count: int = 2) -> int:
        """A lot of some newly wound skeins, from a weigh-out where one is given."""
        cone = self.studio.cone()
        group = self.studio.wind(cone, count)
        done = self.studio.do(
            into_bath, BathIn((group,), self.recipe, None, weighing), self.studio.random)
        lot: int = done["lots"][0]
        return lot
