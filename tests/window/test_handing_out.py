"""A sheet goes out: a file that is opened, or straight into the printer."""

from app.documents.print_grid import print_grid
from app.documents.stocks import stock
from app.problems import NotFound
from app.window.handing_out import printer_of, put_out, send
from app.window.printers import Printers, pages_of
from tests.window.benches.tag_table_hands import opened_files

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


def test_without_a_printer_the_file_is_opened_and_said(qapp, settings, tmp_path):
    bench = Bench(Book(tmp_path / "studio.book"), settings, nobody)
    files = opened_files()
    opened = next(files)
    put_out(bench, "tags", "grid.pdf", lambda: print_grid(SMALL), SMALL)
    assert [file.name for file in opened] == ["grid.pdf"]
    assert bench.said == [
        "The sheet is grid.pdf: print it at 100 %, not fitted to the page."]
    next(files, None)


def test_a_printer_that_fails_leaves_the_file_and_says_why(qapp, settings, tmp_path):
    settings.printers.name("laser")
    settings.printers.choose(SMALL.name, "laser")
    bench = Bench(Book(tmp_path / "studio.book"), settings, nobody)
    assert printer_of(bench, SMALL) == "laser"
    put_out(bench, "tags", "grid.pdf", lambda: print_grid(SMALL), SMALL)
    assert bench.troubles == ["The printer laser is not there now."]
    assert (tmp_path / "studio tags" / "grid.pdf").exists()


def test_where_no_printers_are_known_nothing_is_sent(qapp, settings, tmp_path):
    bench = Bench(Book(tmp_path / "studio.book"), settings, nobody)
    bench.printers = None
    assert printer_of(bench, SMALL) == ""
    assert send(bench, "laser", pages_of(print_grid(SMALL), SMALL, "grid")) == ""
