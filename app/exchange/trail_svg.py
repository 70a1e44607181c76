"""The picture of a trail as SVG (W3C SVG 1.1), from the same places as on screen and paper."""

from collections.abc import Iterator
from xml.sax.saxutils import escape, quoteattr

from app.documents.trail_picture import (
    CUT,
    STROKES,
    Line,
    Picture,
    SetTag,
    SetWay,
    curve,
    outline,
    plate,
)
from app.documents.typesetting import Face

_INK, _SECOND, _PAPER, _GROUND, _RED = "#161616", "#5A5A5A", "#F6F6F6", "#FFFFFF", "#B3001B"
_FACES = {
    Face.CODE_BOLD: "font-family=\"'Atkinson Hyperlegible Mono', monospace\" font-weight=\"700\"",
    Face.BOLD: "font-family=\"'Atkinson Hyperlegible Next', sans-serif\" font-weight=\"700\"",
    Face.WORDS: "font-family=\"'Atkinson Hyperlegible Next', sans-serif\"",
}


def picture_svg(picture: Picture, title: str, sentences: str) -> bytes:
    """The picture with its title, and its content in sentences for those who cannot see it."""
    width, height = _number(picture.width), _number(picture.height)
    parts = [
        '<?xml version="1.0" encoding="UTF-8"?>',
        f'<svg xmlns="http://www.w3.org/2000/svg" width="{width}" height="{height}" '
        f'viewBox="0 0 {width} {height}" role="img">',
        f"<title>{escape(title)}</title>", f"<desc>{escape(sentences)}</desc>",
        f'<rect width="{width}" height="{height}" fill="{_GROUND}"/>',
        *(part for way in picture.ways for part in _way(way)),
        *(part for tag in picture.tags for part in _tag(tag)), "</svg>",
    ]
    return "\n".join(parts).encode("utf-8")


def _way(way: SetWay) -> Iterator[str]:
    stroke = STROKES[way.way.certainty]
    (x, y), *_ = way.points
    path = f"M{_number(x)} {_number(y)}" + "".join(
        "C" + " ".join(f"{_number(x)} {_number(y)}" for x, y in piece)
        for piece in curve(way.points))
    dash = f' stroke-dasharray="{" ".join(map(_number, stroke.dash))}"' if stroke.dash else ""
    yield (f'<path d="{path}" fill="none" stroke="{_INK}" stroke-width="{_number(stroke.weight)}"'
           f'{dash}/>')
    if stroke.opened:
        yield (f'<path d="{path}" fill="none" stroke="{_GROUND}" '
               f'stroke-width="{_number(stroke.opened)}"/>')


def _tag(one: SetTag) -> Iterator[str]:
    for away in (8, 4) if one.tag.many else ():
        yield _shape(outline(one, CUT, away), _PAPER, _SECOND, 1)
    yield _shape(outline(one, CUT), _GROUND if one.tag.here else _PAPER, _INK,
                 3 if one.tag.here else 1)
    for line in one.lines:
        yield _text(line)
    if one.tag.held:
        x, y, width, height = plate(one)
        here = one.tag.held == "here"
        cut = 6.0
        points = [(x + cut, y), (x + width - cut, y), (x + width, y + cut),
                  (x + width, y + height - cut), (x + width - cut, y + height),
                  (x + cut, y + height), (x, y + height - cut), (x, y + cut)]
        yield _shape(points, _RED if here else _GROUND, _RED, 2)
        yield _text(Line(x + width / 2, y + height / 2 + 4.5, "HOLD", 13, Face.BOLD),
                    _GROUND if here else _RED)


def _shape(points: list[tuple[float, float]], fill: str, ink: str, weight: float) -> str:
    said = " ".join(f"{_number(x)},{_number(y)}" for x, y in points)
    return f'<polygon points="{said}" fill="{fill}" stroke="{ink}" stroke-width="{weight}"/>'


def _text(line: Line, ink: str = "") -> str:
    fill = ink or (_SECOND if line.second else _INK)
    face = _FACES.get(line.face, _FACES[Face.WORDS])
    return (f'<text x="{_number(line.x)}" y="{_number(line.y)}" {face} '
            f'font-size="{_number(line.size)}" fill={quoteattr(fill)} text-anchor="middle">'
            f"{escape(line.words)}</text>")


def _number(value: float) -> str:
    return f"{value:.1f}".removesuffix(".0")
