"""A day as it is said over a counter: in a week, on Friday, on 4 May, in April."""

from datetime import date, datetime, time, timedelta
from re import fullmatch

from app.problems import BadInput

_DAYS = ("monday", "tuesday", "wednesday", "thursday", "friday", "saturday", "sunday")
_MONTHS = ("january", "february", "march", "april", "may", "june", "july", "august", "september",
           "october", "november", "december")
_LEAST = 3  # letters by which a day or month is known
_ASK = "Write a day like Friday, 4 May or 2026-05-04, or in how many days."


def day_said(text: str, today: date) -> date:
    """The day that is meant, seen from today; a date without its year is the next such day."""
    words = text.casefold().replace(",", " ").replace(".", " ").split()
    if words and words[-1].startswith("day"):
        words = words[:-1]
    found = _one_word(words[0], today) if len(words) == 1 else _of_month(words, today)
    if found is None:
        raise BadInput(f"“{text.strip()}” is no day that can be read.", _ASK)
    return found


def end_of(day: date) -> datetime:
    """The last minute of a day by the clock on the wall: kept until that day means the whole day.
    """
    return datetime.combine(day, time(23, 59)).astimezone()


def month_said(words: str, today: date, least: int = 2) -> tuple[date, date, str] | None:
    """'april glove', 'apr 2025 glove': the month's first day, the next one's, the other words.

    Without its year it is the last such month that has begun; none where no month is named, or
    where fewer words than `least` are said.
    """
    said = words.casefold().split()
    place = next((n for n, word in enumerate(said) if _month(word)), None)
    if place is None or len(said) < least:
        return None
    month, rest = _month(said[place]) or 0, said[:place] + said[place + 1:]
    years = [word for word in rest if fullmatch(r"20\d\d", word)]
    year = int(years[0]) if years else today.year - (month > today.month)
    following = date(year + month // 12, month % 12 + 1, 1)
    return date(year, month, 1), following, " ".join(w for w in rest if w not in years[:1])


def _one_word(word: str, today: date) -> date | None:
    if word.isdecimal() and len(word) <= 3:
        return today + timedelta(days=int(word))
    if word in ("today", "tomorrow"):
        return today + timedelta(days=word == "tomorrow")
    if fullmatch(r"\d{4}-\d\d-\d\d", word):
        try:
            return date.fromisoformat(word)
        except ValueError:
            return None
    days = [n for n, day in enumerate(_DAYS) if len(word) >= _LEAST and day.startswith(word)]
    return today + timedelta(days=(days[0] - today.weekday()) % 7 or 7) if days else None


def _of_month(words: list[str], today: date) -> date | None:
    numbers = [int(word) for word in words if word.isdecimal()]
    months = [month for word in words if (month := _month(word))]
    if len(months) != 1 or not 1 <= len(numbers) <= 2 or len(numbers) + 1 != len(words):
        return None
    try:
        if len(numbers) == 2:
            return date(numbers[1], months[0], numbers[0])
        this_year = date(today.year, months[0], numbers[0])
        return this_year if this_year >= today else this_year.replace(year=today.year + 1)
    except ValueError:
        return None


def _month(word: str) -> int | None:
    fits = [n for n, month in enumerate(_MONTHS, 1)
            if len(word) >= _LEAST and month.startswith(word)]
    return fits[0] if fits else None
