"""People: initials are theirs for ever, their names can be removed on request."""

import hashlib

from sqlalchemy import select

from app.problems import NotFound, Refused
from app.records import Person, Personal
from app.store.deed import Deed


def enrol(deed: Deed, initials: str, name: str = "") -> int:
    """Someone begins to work here; the initials cannot be another's, ever."""
    if not (1 <= len(initials) <= 4 and initials.isalnum()):
        raise Refused(f"'{initials}' are not initials: one to four letters or digits.",
                      "Write them as they will be signed.")
    if deed.value(select(Person.id).where(Person.initials == initials)):
        raise Refused(f"{initials} is taken, also by one who left: old entries are signed so.",
                      "Add a letter.")
    person = deed.add(Person(initials=initials))
    if name:
        deed.add(personal(deed, "name", name, person=person))
    deed.say(f"enrolled {initials}")
    return person


def retire(deed: Deed, initials: str) -> None:
    """Someone leaves: no more deeds in their name, and all they did stays theirs."""
    person = deed.one(select(Person.id, Person.left).where(
        Person.initials == initials, Person.struck.is_(None)))
    if person is None:
        raise NotFound(f"Nobody here signs as {initials}.", "Choose one of those who sign.")
    if person.left:
        raise Refused(f"{initials} left already.", "All they did stays theirs.")
    deed.change(Person, person.id, left=deed.seq)
    deed.say(f"{initials} left")


def personal(deed: Deed, field: str, value: str, *, person: int | None = None,
             customer: int | None = None) -> Personal:
    """A field about someone: the journal gets its salted digest alone."""
    salt = deed.chance.randbytes(16).hex()
    digest = hashlib.sha256((salt + value).encode()).hexdigest()
    return Personal(field=field, value=value, salt=salt, digest=digest,
                    person=person, customer=customer)
