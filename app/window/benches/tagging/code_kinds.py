"""What a code that was scanned at the tag table stands for."""

from app.calculations.codes import Kind, bare_characters, code_of


def kind_of(code: str) -> Kind:
    """What a code stands for; a lot from before the book has no dash in it, its marks have."""
    ours = code_of(bare_characters(code))
    if ours is not None:
        return ours.kind
    return Kind.SKEIN if "-" in code else Kind.LOT
