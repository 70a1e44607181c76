"""A sheet goes out: a file that is opened, or straight into the printer."""

from app.documents.print_grid import print_grid
from app.documents.stocks import stock
from app.problems import NotFound
from app.window.handing_out import hand_out, put_out
from app.window.printers import Printers

SMALL = stock("small-63x38")


class Bench:
    """As much of a bench as hands a sheet out."""

    def __init__(self, book, settings, opened):
        self.around, self.session, self.said, self.troubles = self, self, [], []
        self.book, self.background = book, self
        self.printers = Printers(settings.printers, lambda: ("laser",), opened)
        self.path = book

    def read(self, _owner, job, done):
        done(job())

    def say(self, words):
        self.said.append(words)

    def trouble(self, problem):
        self.troubles.append(problem.what)


class Book:
    def __init__(self, path):
        self.path = path


def nobody(_name):
    raise NotFound("The printer laser is not there now.", "Switch it on.")


def test_without_a_printer_the_file_is_opened_and_said(qapp, settings, tmp_path, opened):
    bench = Bench(Book(tmp_path / "studio.book"), settings, nobody)
    put_out(bench, "tags", "grid.pdf", lambda: print_grid(SMALL), SMALL)
    assert [file.name for file in opened] == ["grid.pdf"]
    assert bench.said == [
        "The sheet is grid.pdf: print it at 100 %, not fitted to the page."]


def test_a_printer_that_fails_leaves_the_file_and_says_why(qapp, settings, tmp_path):
    settings.printers.name("laser")
    settings.printers.choose(SMALL.name, "laser")
    bench = Bench(Book(tmp_path / "studio.book"), settings, nobody)
    assert bench.printers.of(SMALL) == "laser"
    put_out(bench, "tags", "grid.pdf", lambda: print_grid(SMALL), SMALL)
    assert bench.troubles == ["The printer laser is not there now."]
    assert (tmp_path / "studio tags" / "grid.pdf").exists()


def test_what_is_in_the_book_is_opened_and_what_gave_way_on_it_is_said(
    qapp, settings, tmp_path, opened
):
    bench = Bench(Book(tmp_path / "studio.book"), settings, nobody)
    hand_out(bench, print_grid(SMALL), tmp_path / "tags.pdf", SMALL, "care left out")
    assert (opened, bench.said) == ([tmp_path / "tags.pdf"], ["care left out"])
    hand_out(bench, print_grid(SMALL), None, SMALL)
    assert (len(opened), len(bench.said)) == (1, 1)
