"""Which reference skein a yarn is weighed beside: fibres of one kind take up water alike."""

from app.calculations.fibre_names import fibre_written
from app.calculations.fibre_text import read_composition
from app.problems import BadInput


def regain_class(fibre: str) -> str:
    """`wool` for any wool, `wool and polyamide` for a blend; else the words as they stand.

    A blend has a class of its own: it takes up water as all its fibres do together.
    """
    try:
        shares = read_composition(fibre)
    except BadInput:
        return " ".join(fibre.casefold().split())
    names = dict.fromkeys(_kind(share.fibre) for share in shares)
    return " and ".join(names)


def _kind(words: str) -> str:
    fibre = fibre_written(words).fibre
    if fibre is None:
        return words.casefold()
    return "wool" if fibre.group == "wool" else fibre.key
