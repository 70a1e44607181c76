"""A sheet goes out: kept as a file, and straight into its printer where that is there."""

from collections.abc import Callable
from pathlib import Path

from app.documents.stocks import Stock
from app.problems import Problem
from app.window.bench import Bench
from app.window.papers import keep, open_paper
from app.window.printers import Pages, pages_of


def put_out(
    bench: Bench, kind: str, name: str, pdf: Callable[[], bytes], stock: Stock
) -> None:
    """Made and kept away from the screen; then printed, or opened for the person to print."""
    around = bench.around
    book = around.session.book.path
    printer = printer_of(bench, stock)

    def made() -> tuple[Path, Pages | None]:
        sheet = pdf()
        path = keep(book, kind, name, sheet)
        return path, pages_of(sheet, stock, name) if printer else None

    def is_made(answer: tuple[Path, Pages | None]) -> None:
        path, pages = answer
        if pages is None:
            there = "" if open_paper(path) else f" in {path.parent}"
            bench.say(f"The sheet is {path.name}{there}: print it at 100 %, not fitted to the "
                      "page.")
        else:
            bench.say(send(bench, printer, pages))

    around.background.read(bench, made, is_made)


def printer_of(bench: Bench, stock: Stock) -> str:
    """The printer that takes this stock's sheets straight, or '' where they are opened as files."""
    printers = bench.around.printers
    return "" if printers is None else printers.straight(stock)


def send(bench: Bench, printer: str, pages: Pages) -> str:
    """Into the printer; what to say of it, or '' where the trouble is said in its place."""
    printers = bench.around.printers
    if printers is None:
        return ""
    try:
        printers.send(printer, pages)
    except Problem as problem:
        bench.around.trouble(problem)
        return ""
    return f"Sent to {printer}."
