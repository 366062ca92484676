#!/usr/bin/env python3
"""What follows exercise, and what stands before lows, worked a second time from the diaries: what measures.py does for
readings.

    python3 tests/independent/noted.py evening-exercise --from 2026-04-13 --to 2026-05-10 --set adult

Definitions (ours, but for the test)
  session       an exercise note; looked at from its start to 6 the next morning. Low: any reading below the limit. Open:
                none seen, and an hour and more or 30 % without readings
  day           6 AM to 6 AM. Lows began on it; a night low touches midnight to 6; told where any came or 70 % was seen
  follows       a low that began up to 12 hours after the end of exercise
  p             Fisher's exact test, two-sided, by counting with whole numbers (math.comb)
"""
from datetime import date, datetime, timedelta
from fractions import Fraction
from math import comb

from canonical import SAMPLES, canonical, table
from measures import LIMITS, Reading, episodes, heights, minutes_of, of_diary, weigh


def evening_exercise():
    for row in table(SAMPLES / 'evening-exercise' / 'diary.tsv', 'utf-8', '\t'):
        if row['Entry'] != 'sensor':
            when = datetime.strptime(f"{row['Date']} {row['Time']}", '%m/%d/%Y %I:%M %p')
            yield when, row['Entry'], row['Details'], row['Minutes']


def pregnancy():
    for row in table(SAMPLES / 'pregnancy' / 'sheet.csv', 'utf-8-sig'):
        when = datetime.strptime(row['When'], '%d %b %Y %H:%M')
        if row['Walk (min)']:
            yield when, 'exercise', 'walk', row['Walk (min)']
        for column, kind in (('Carbs (g)', 'food'), ('Insulin (IU)', 'insulin'), ('Finger (mg/dL)', 'fingerstick'), ('Medicine', 'medicine'), ('Remark', 'remark')):
            if row[column]:
                yield when, kind, row['Food'] if kind == 'food' else '', ''


def steady_fortnight():
    for row in table(SAMPLES / 'steady-fortnight' / 'logbook.csv', 'utf-8'):
        when = datetime.strptime(row['When'], '%Y-%m-%d %H:%M')
        if row['Exercise (min)']:
            yield when, 'exercise', row['Exercise kind'], row['Exercise (min)']
        else:
            yield when, 'other', '', ''


NOTES = {'evening-exercise': evening_exercise, 'pregnancy': pregnancy, 'steady-fortnight': steady_fortnight}
#: What people write down themselves; sensors note the rest.
WRITTEN = {'food', 'insulin', 'exercise', 'medicine', 'fingerstick', 'remark', 'other'}


def seen(readings, begin, end):
    return min(1, minutes_of(readings) * 60 / (end - begin).total_seconds())


def longest_hole(readings, begin, end):
    at, hole = begin, timedelta(0)
    for reading in readings:
        hole = max(hole, reading.at - at)
        at = reading.at + timedelta(minutes=reading.weight)
    return max(hole, end - at).total_seconds() / 60


def until_six(readings, start):
    six = datetime.combine(start.date() + timedelta(days=1), datetime.min.time()) + timedelta(hours=6)
    here = [reading for reading in readings if start <= reading.at < six]
    low = any(reading.band in ('low', 'very-low') for reading in here)
    if not low and (seen(here, start, six) < 0.7 or longest_hole(here, start, six) > 60):
        low = None
    return {
        'low': low,
        'lowMinutes': sum(reading.weight for reading in here if reading.band in ('low', 'very-low')),
        'lowest': min((reading.height for reading in here), default=None),
    }


def exact(a, n, b, m):
    """Tables with these margins that are no likelier than the one seen."""
    def ways(k):
        return comb(n, k) * comb(m, a + b - k)
    tables = range(max(0, a + b - m), min(n, a + b) + 1)
    return float(Fraction(sum(ways(k) for k in tables if ways(k) <= ways(a)), comb(n + m, a + b)))


def noted(source, first, last, target_set):
    limits = LIMITS[target_set]
    rows = [{'time': time, 'value': value, 'unit': unit} for time, value, unit in canonical(source)]
    everything = [Reading(row, limits) for row in rows]
    _, pause, _ = weigh(everything)
    readings = [reading for reading in everything if first <= reading.day <= last]
    heights(readings, limits)
    notes = [note for note in NOTES[source]() if first <= note[0].date() <= last]
    sessions = [(when, timedelta(minutes=float(minutes or 0))) for when, kind, _, minutes in notes if kind == 'exercise']
    starts = [datetime.fromisoformat(low['date']) + timedelta(minutes=low['startMinute']) for low in episodes(readings, pause, 'low')]
    ends = [start + timedelta(minutes=low['minutes']) for start, low in zip(starts, episodes(readings, pause, 'low'))]

    days, came, night_came, moved, written = [], {}, {}, {}, {}
    for number in range((last - first).days + 1):
        midnight = datetime.combine(first + timedelta(days=number), datetime.min.time())
        six, next_midnight = midnight + timedelta(hours=6), midnight + timedelta(days=1)
        next_six = next_midnight + timedelta(hours=6)
        here = [reading for reading in readings if six <= reading.at < next_six]
        night = [reading for reading in readings if next_midnight <= reading.at < next_six]
        begun = any(six <= start < next_six for start in starts)
        touched = any(start < next_six and end > next_midnight for start, end in zip(starts, ends))
        day = midnight.date().isoformat()
        days.append(day)
        came[day] = True if begun else False if seen(here, six, next_six) >= 0.7 else None
        night_came[day] = True if touched else False if seen(night, next_midnight, next_six) >= 0.7 else None
        moved[day] = any(six <= when < next_six for when, _ in sessions)
        written[day] = any(when.date() == midnight.date() and kind in WRITTEN for when, kind, _, _ in notes)

    def sides(outcome):
        def side(wanted):
            some = [outcome[day] for day in days if moved[day] == wanted and written[day] and outcome[day] is not None]
            return {'k': sum(some), 'n': len(some)}
        with_it, without = side(True), side(False)
        enough = min(with_it['n'], without['n']) >= 3
        return {
            'dates': [day for day in days if outcome[day]],
            'withIt': with_it,
            'without': without,
            'p': exact(with_it['k'], with_it['n'], without['k'], without['n']) if enough else None,
        }

    begin = datetime.combine(first, datetime.min.time()) + timedelta(hours=6)
    inside = [start for start in starts if start >= begin]
    follow = [start for start in inside if any(when < start <= when + length + timedelta(hours=12) for when, length in sessions)]
    return {
        'from': first.isoformat(),
        'to': last.isoformat(),
        'set': target_set,
        'sessions': [until_six(readings, when) for when, _ in sessions],
        'lows': sides(came),
        'nightLows': sides(night_came),
        'followed': {'k': len(follow), 'n': len(inside)},
    }


if __name__ == '__main__':
    of_diary(noted, NOTES)
