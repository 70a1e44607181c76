"""The words that are understood, and their help."""

import argparse
from collections.abc import Callable
from pathlib import Path
from typing import NoReturn, TypeAlias

from app.commands.answer import BOOK_VARIABLE, WRONG_WORDS, Answer, Options
from app.commands.asking import find, free_counts, record, trace, verify
from app.commands.doing import orders, tags, take_in
from app.commands.shop_files import customer_data, shades

_EXITS = """how it ends, for scripts:
  0  done
  1  refused, or not found as one thing; a sentence on stderr says why
  2  wrong words on the command line
  3  the book cannot be used"""


class _Words(argparse.ArgumentParser):
    def error(self, message: str) -> NoReturn:
        self.exit(WRONG_WORDS, f"{message}. “{self.prog} --help” shows the words.\n")


_Under: TypeAlias = "argparse._SubParsersAction[_Words]"


def parser() -> _Words:
    """All words; `run` of what was understood gives the answer, no word means the window."""
    words = _Words("conetrail", epilog=_EXITS, parents=[_book(), _json()],
                   description="The record of a dye studio, from cone to skein. "
                               "Without a word the window opens.",
                   formatter_class=argparse.RawDescriptionHelpFormatter)
    words.set_defaults(run=None, json=False)
    under = words.add_subparsers(dest="word", metavar="WORD", parser_class=_Words)
    _add_asking(under)
    _add_doing(under)
    one = _word(under, "demo", _demo, "live the invented studio's days into a new book")
    one.add_argument("--out", type=Path, metavar="DIR", help="where; else ./conetrail-demo")
    return words


def _add_asking(under: _Under) -> None:
    code = "a code as it is printed or typed, a part of one, or a name; ? is what cannot be read"
    one = _word(under, "find", find, "what something is, and where", _book(), _json())
    one.add_argument("code", metavar="CODE", help=code)
    one = _word(under, "trace", trace, "where it comes from and went to, how sure", _book(),
                _json())
    one.add_argument("code", metavar="CODE", help=code)
    one.add_argument("--out", type=Path, metavar="FILE.pdf", help="the same as paper")
    one.add_argument("--by", default="", metavar="INITIALS", help="who prints it")
    one = _word(under, "free-counts", free_counts, "what is left to sell of every lot, as CSV",
                _book(), _json())
    one.add_argument("file", type=Path, metavar="FILE", help="where to")
    one = _word(under, "record", record, "the batch record of a lot, as paper", _book(), _json())
    one.add_argument("lot", metavar="LOT", help="its code, or a part of it")
    one.add_argument("file", type=Path, nargs="?", metavar="FILE.pdf",
                     help="where to; else batch-record-LOT.pdf here")
    one.add_argument("--by", default="", metavar="INITIALS", help="who prints it")
    _word(under, "verify", verify, "check the whole book against its journal", _book(), _json())


def _add_doing(under: _Under) -> None:
    one = _word(under, "tags", tags, "print the tags that a lot still needs", _book(), _json(),
                _by())
    one.add_argument("lot", metavar="LOT")
    one.add_argument("--out", type=Path, metavar="FILE.pdf", required=True, help="where to")
    one.add_argument("--stock", default="swing-85x55", metavar="NAME", help="printed on what")
    one.add_argument("--first-cell", type=int, default=1, metavar="N", help="the first free cell")
    one.add_argument("--count", type=int, metavar="N", help="so many; else all that are needed")
    one = _word(under, "take-in", take_in, "take a mill's list of cones in, CSV or XLSX", _book(),
                _json(), _by())
    one.add_argument("file", type=Path, metavar="FILE")
    one.add_argument("--column", action="append", default=[], type=_pair, metavar="FIELD=HEADING",
                     help="which column holds what, where its heading does not say it")
    one.add_argument("--say", action="append", default=[], type=_pair, metavar="FIELD=WORDS",
                     help="once for all rows that do not say it: supplier=…, \"tare=64 g\"")
    one.add_argument("--leave-bad-rows", action="store_true", help="take in the good rows alone")
    one.add_argument("--look", action="store_true", help="only look; nothing is saved")
    one = _word(under, "orders", orders, "take in a web shop's orders, CSV or XLSX", _book(),
                _json(), _by())
    one.add_argument("file", type=Path, metavar="FILE")
    one.add_argument("--column", action="append", default=[], type=_pair, metavar="FIELD=HEADING",
                     help="which column holds what, where its heading does not say it")
    one.add_argument("--look", action="store_true", help="only look; nothing is saved")
    _add_files(under)


def _add_files(under: _Under) -> None:
    one = _word(under, "shades", shades, "take in shade readings, CSV, XLSX or CGATS text", _book(),
                _json(), _by())
    one.add_argument("file", type=Path, metavar="FILE")
    one.add_argument("--column", action="append", default=[], type=_pair, metavar="FIELD=HEADING",
                     help="which column holds what, where its heading does not say it")
    one.add_argument("--say", action="append", default=[], type=_pair, metavar="FIELD=WORDS",
                     help="once for all rows that do not say it: lamp=D65, observer=2")
    one.add_argument("--leave-bad-rows", action="store_true", help="take in the good rows alone")
    one = _word(under, "customer-data", customer_data, "all that is kept of a customer, on request",
                _book(), _json())
    one.add_argument("name", metavar="NAME", help="the name, or enough of it to be the only one")
    one.add_argument("file", type=Path, metavar="FILE", help="where to: .json all, .csv the buys")


def _word(
    under: _Under, name: str, run: Callable[[Options], Answer], help: str,
    *more: _Words,
) -> _Words:
    word = under.add_parser(name, help=help, description=f"{help[:1].upper()}{help[1:]}.",
                            epilog=_EXITS, parents=more,
                            formatter_class=argparse.RawDescriptionHelpFormatter)
    word.set_defaults(run=run)
    return word


def _demo(options: Options) -> Answer:
    from app.commands.showing import demo

    return demo(options)


def _book() -> _Words:
    book = _Words(add_help=False)
    book.add_argument("--book", type=Path, metavar="FILE", default=argparse.SUPPRESS,
                      help=f"the studio's book; else ${BOOK_VARIABLE}, else the one in your own "
                           "folder")
    return book


def _json() -> _Words:
    json = _Words(add_help=False)
    json.add_argument("--json", action="store_true", default=argparse.SUPPRESS,
                      help="answer as data for a program")
    return json


def _by() -> _Words:
    by = _Words(add_help=False)
    by.add_argument("--by", required=True, metavar="INITIALS", help="who does it")
    return by


def _pair(text: str) -> tuple[str, str]:
    name, equals, words = text.partition("=")
    if not equals:
        raise argparse.ArgumentTypeError(f"“{text}” is not like FIELD=WORDS")
    return name.strip(), words.strip()
