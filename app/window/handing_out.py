"""A sheet goes out: kept as a file, and straight into its printer where that is there."""

from collections.abc import Callable
from pathlib import Path

from app.documents.stocks import Stock
from app.problems import Problem
from app.window.bench import Around, Bench
from app.window.papers import keep, open_paper
from app.window.printers import Pages, pages_of


def put_out(
    bench: Bench, kind: str, name: str, pdf: Callable[[], bytes], stock: Stock
) -> None:
    """Made and kept away from the screen; then printed, or opened for the person to print."""
    around = bench.around
    book, printer = around.session.book.path, around.printers.of(stock)

    def made() -> tuple[Path, Pages | None]:
        sheet = pdf()
        return keep(book, kind, name, sheet), _pages(around, printer, sheet, stock, name)

    def is_made(answer: tuple[Path, Pages | None]) -> None:
        path, pages = answer
        if pages is None:
            there = "" if open_paper(path) else f" in {path.parent}"
            bench.say(f"The sheet is {path.name}{there}: print it at 100 %, not fitted to the "
                      "page.")
        else:
            bench.say(_send(around, printer, pages))

    around.background.read(bench, made, is_made)


def hand_out(around: Around, sheet: bytes, file: Path | None, stock: Stock, also: str = "") -> None:
    """Tags that are in the book: printed, or opened where they were saved; `also` is said with it.

    They go out even if the pile that they were printed for is put away meanwhile.
    """
    printer, title = around.printers.of(stock), file.stem if file else stock.title

    def ready() -> Pages | None:
        return _pages(around, printer, sheet, stock, title)

    def is_ready(pages: Pages | None) -> None:
        sent = "" if pages is None else _send(around, printer, pages)
        if words := "; ".join(filter(None, (also, sent))):
            around.say(words)
        if pages is None and file is not None:
            open_paper(file)

    around.background.read(around.background, ready, is_ready)


def _pages(
    around: Around, printer: str, sheet: bytes, stock: Stock, title: str
) -> Pages | None:
    """The pages for the printer that takes them straight; none where a file is opened."""
    return pages_of(sheet, stock, title) if around.printers.knows(printer) else None


def _send(around: Around, printer: str, pages: Pages) -> str:
    """Into the printer; what to say of it, or '' where the trouble is said in its place."""
    try:
        around.printers.send(printer, pages)
    except Problem as problem:
        around.trouble(problem)
        return ""
    return f"Sent to {printer}."
