"""Codes of lots from before the book: any text, but none that reads as something else of ours."""

from app.calculations.codes import Kind, bare_characters, code_of

LONGEST = 24  # characters; a tag has no room for more


def no_old_lot(bare: str) -> tuple[str, str] | None:
    """Why these bare characters cannot be the code of a lot from before the book, and the way out.

    A lot's code of an earlier book may be one; what stands for a cone, a plate or a skein may not.
    """
    if not bare:
        return "says nothing", "Write the code that stands on its tags."
    if len(bare) > LONGEST:
        return f"is longer than {LONGEST} characters", "Give it a shorter one, for new tags."
    code = code_of(bare)
    if code is not None and code.kind is not Kind.LOT:
        return "reads as the code of something else", f"Put letters before it, like OLD{bare}."
    return None


def reads_as_another(mark: str) -> bool:
    """Whether a mark, scanned without its dash, reads as a code of ours that it is not."""
    code = code_of(bare_characters(mark))
    return code is not None and code.text != mark
