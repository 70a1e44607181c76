"""What can go wrong, in words a person at the bench can act on."""


class Problem(Exception):
    """Base of every error that may be shown to a person.

    `what` says what did not happen and what was kept, `next_step` what to do about it.
    Anything raised that is not a Problem is a fault of the program.
    """

    def __init__(self, what: str, next_step: str = "") -> None:
        super().__init__(f"{what} {next_step}".strip())
        self.what = what
        self.next_step = next_step


class Refused(Problem):
    """The studio's own rules say no to something that has not happened yet; nothing was saved."""


class NotFound(Problem):
    """The thing asked for is not in the book."""


class BadInput(Problem):
    """What came in cannot be read; it was kept as it was."""


class BookBusy(Problem):
    """Another window or computer is writing; trying again may work."""


class BookUnusable(Problem):
    """The book cannot be used: too new, damaged, no room, no permission."""
