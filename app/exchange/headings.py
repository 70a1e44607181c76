"""What columns of a list are called: of a delivery note, in the languages mills write in."""

import re
import unicodedata
from collections.abc import Mapping
from dataclasses import dataclass

from app.exchange.written import GRAMS


@dataclass(frozen=True, slots=True)
class ListKind:
    """A kind of list that comes in: what it says, how its columns are headed, what it must say."""

    name: str
    """'a delivery note'."""
    fields: Mapping[str, str]
    """Each field with the words a person reads."""
    wordings: Mapping[str, tuple[str, ...]]
    """What a field's column may be headed as, as `bare` writes it."""
    needed: tuple[str, ...]
    two_of: tuple[str, ...] = ()
    """Two of these are needed, whichever; the first ones are asked for."""
    settled: tuple[str, ...] = ()
    """What need not be there, but is asked for where several columns fit it equally well."""
    above: tuple[str, ...] = ()
    """What may stand once above the table."""
    for_all: tuple[str, ...] = ()
    """What a person may say once for all rows."""


FIELDS = {
    "base": "the base",
    "note": "the number of the note",
    "supplier": "the supplier",
    "arrived": "the day it came",
    "batch": "the spinner's batch",
    "cone": "the cone's number",
    "gross": "the gross weight",
    "tare": "the empty centre (tare)",
    "net": "the net weight",
    "wrap": "the weight of 100 m",
    "moisture": "the moisture",
}
"""Each field with the words a person reads."""

WORDINGS = {
    "base": ("base", "yarn", "quality", "article", "article name", "yarn quality", "description",
             "garn", "garnqualitat", "qualitat", "artikel", "bezeichnung", "fil", "qualite",
             "kwaliteit", "garen", "calidad", "hilo", "articulo", "filato", "qualita", "articolo",
             "kvalitet", "kvalitetet", "lanka"),
    "note": ("note", "note no", "note number", "delivery note", "delivery note no",
             "delivery note number", "delivery no", "dispatch note", "advice note",
             "lieferschein", "lieferschein nr", "lieferscheinnummer", "bon de livraison",
             "bl no", "pakbon", "pakbonnummer", "albaran", "numero de albaran", "ddt", "bolla",
             "folgeseddel", "følgeseddel", "foljesedel"),
    "supplier": ("supplier", "mill", "spinner", "spinning mill", "sender", "lieferant",
                 "spinnerei", "fournisseur", "filature", "leverancier", "spinnerij", "proveedor",
                 "fornitore", "filatura", "leverandør", "leverantor"),
    "arrived": ("date", "day", "arrived", "received", "delivered", "delivery date", "datum",
                "lieferdatum", "eingang", "date de livraison", "leverdatum", "fecha", "data",
                "data consegna", "dato", "leveringsdato"),
    "batch": ("batch", "batch no", "spin lot", "spinners batch", "spinner batch", "lot", "lot no",
              "charge", "chargen nr", "partie", "partienummer", "los", "lot de filature", "partij",
              "partijnummer", "lote", "partida", "lotto", "partita", "parti", "batchnr"),
    "cone": ("cone", "cone no", "cone number", "package", "package no", "konus", "kone",
             "kone nr", "konus nr", "spule", "spule nr", "cone nr", "numero de cone", "kegel",
             "kegelnummer", "cono", "cono no", "rocca", "rocca no", "spole", "spole nr"),
    "gross": ("gross", "gross weight", "weight gross", "brutto", "bruttogewicht",
              "gewicht brutto", "brut", "poids brut", "bruto", "brutogewicht", "peso bruto",
              "lordo", "peso lordo", "bruttovægt", "bruttovikt", "bruttovekt"),
    "tare": ("tare", "tare weight", "centre", "empty centre", "empty cone", "tube", "tara",
             "leergewicht", "hulse", "huls", "poids a vide", "tubo", "hylse", "hylsa"),
    "net": ("net", "net weight", "nett", "netto", "nettogewicht", "gewicht netto", "poids net",
            "neto", "peso neto", "peso netto", "nettovægt", "nettovikt", "nettovekt"),
    "wrap": ("100 m", "wrap", "wrap 100 m", "weight of 100 m", "lea", "weife", "weifenprobe",
             "echevette"),
    "moisture": ("moisture", "moisture content", "feuchte", "feuchtigkeit", "humidite", "vocht",
                 "humedad", "umidita", "fugt", "fukt"),
}
"""As `bare` writes them."""

DELIVERY_NOTE = ListKind(
    "a delivery note", FIELDS, WORDINGS,
    needed=("base", "note", "batch"),
    two_of=("gross", "tare", "net"),
    above=("base", "note", "supplier", "arrived", "batch"),
    for_all=("base", "note", "batch", "tare", "arrived"),
)

_APART = re.compile(r"[^\w%]+|_")
_UNITS = {*GRAMS, "%", "in"}


def bare(heading: str) -> str:
    """A heading without case, accents, stops and units: 'Poids brut (kg)' is 'poids brut'."""
    words = " ".join(word for word in _words(heading) if word not in _UNITS)
    return re.sub(r"\b100m\b", "100 m", words)


def unit_of(heading: str) -> str:
    """The unit of weight that a heading names, '' where it names none or two."""
    units = {word for word in _words(heading) if word in GRAMS}
    return units.pop() if len(units) == 1 else ""


def _words(heading: str) -> list[str]:
    plain = unicodedata.normalize("NFKD", heading.casefold().replace("'", "").replace("’", ""))
    letters = "".join(c for c in plain if not unicodedata.combining(c))
    return [word for word in _APART.split(letters) if word]
