#!/usr/bin/env python3
"""What follows noted meals, and the days with most time very high, worked a second time from the diaries.

    python3 tests/independent/meals.py pregnancy --from 2026-02-02 --to 2026-02-15 --set pregnancy-type-1

Definitions (ours, but for the area: Wolever 2004, Br J Nutr 91:295-301; goals: American Diabetes Association, Standards of
Care, section 15)
  meal          food notes within 15 minutes of its first
  course        from the note on, three hours, of which 70 % were seen; a reading in the 15 minutes before, or none is told
  baseline      mean of the readings of those 15 minutes, the note's own minute with them
  1 h, 2 h      the nearest reading, 10 minutes off at most; of two equally near the later
  area          trapezoids above the baseline, only the part above it
  compared      70 % seen, no other meal of 10 g and more (or of no amount) within 2 hours, no low from 15 minutes before,
                10 g or more, no exercise within the hour after; and food that is no glucose taken for a low
  top days      the four with most time beyond 250 mg/dL, in pregnancy 200, of those with an hour and more
"""
from datetime import date, timedelta
from statistics import median

from canonical import canonical
from measures import LIMITS, Reading, heights, minutes_of, of_diary, weigh
from orders import NOTES

GLUCOSE = {'glucose tablet', 'glucose tablets', 'glucose gel', 'dextrose', 'dextrose tablet', 'dextrose tablets'}
AFTER = {'oneHour': 140, 'twoHours': 120}


def meals_of(notes):
    groups = []
    for when, kind, amount, name, _ in notes:
        if kind != 'food':
            continue
        if groups and when - groups[-1]['at'] <= timedelta(minutes=15):
            meal = groups[-1]
        else:
            meal = {'at': when, 'grams': None, 'names': []}
            groups.append(meal)
        meal['names'].append(name)
        if amount:
            meal['grams'] = (meal['grams'] or 0) + float(amount)
    return groups


def nearest(readings, at):
    near = [reading for reading in readings if abs((reading.at - at).total_seconds()) <= 600]
    return min(near, key=lambda reading: (abs((reading.at - at).total_seconds()), -(reading.at - at).total_seconds())).height if near else None


def area_above(points, level):
    whole = 0
    for (t, a), (u, b) in zip(points, points[1:]):
        a, b, step = a - level, b - level, u - t
        if a >= 0 and b >= 0:
            whole += (a + b) / 2 * step
        elif a > 0 or b > 0:
            top, other = max(a, b), min(a, b)
            whole += top * top * step / (2 * (top - other))
    return whole


def course(readings, at):
    before = [r for r in readings if at - timedelta(minutes=15) <= r.at <= at]
    after = [r for r in readings if at <= r.at < at + timedelta(minutes=180)]
    if not before or minutes_of(after) < 0.7 * 180:
        return None
    minutes = lambda reading: (reading.at - at).total_seconds() / 60
    baseline = sum(r.height for r in before) / len(before)
    peak = max(after, key=lambda reading: reading.height)
    return {
        'baseline': baseline,
        'oneHour': nearest(readings, at + timedelta(hours=1)),
        'twoHours': nearest(readings, at + timedelta(hours=2)),
        'peak': peak.height,
        'minutesToPeak': minutes(peak),
        'highMinutes': sum(r.weight for r in after if r.band in ('high', 'very-high')),
        'area': area_above([(minutes(r), r.height) for r in after], baseline),
    }


def compared(meal, later, readings, sessions):
    at = meal['at']
    big = [one for one in later if one['grams'] is None or one['grams'] >= 10]
    low = any(r.band in ('low', 'very-low') for r in readings if at - timedelta(minutes=15) <= r.at < at + timedelta(minutes=1))
    return not (
        (big and big[0]['at'] - at <= timedelta(hours=2))
        or low
        or any(name.strip().lower() in GLUCOSE for name in meal['names'])
        or (meal['grams'] is not None and meal['grams'] < 10)
        or any(at <= start <= at + timedelta(hours=1) for start in sessions)
    )


def meals(source, first, last, target_set):
    limits = LIMITS[target_set]
    rows = [{'time': time, 'value': value, 'unit': unit} for time, value, unit in canonical(source)]
    everything = [Reading(row, limits) for row in rows]
    weigh(everything)
    readings = [reading for reading in everything if first <= reading.day <= last]
    heights(readings, limits)
    notes = sorted(note for note in NOTES[source]() if first <= note[0].date() <= last)
    found = meals_of(notes)
    sessions = [when for when, kind, *_ in notes if kind == 'exercise']
    for n, meal in enumerate(found):
        meal['course'] = course(readings, meal['at'])
        meal['compared'] = meal['course'] is not None and compared(meal, found[n + 1:], readings, sessions)
    pregnant = target_set.startswith('pregnancy')
    beyond = 200 if pregnant else limits['mg/dL'][3]
    per_day = {}
    for reading in readings:
        if reading.beyond > 0 or (reading.mgdl or 0) > beyond:
            per_day[reading.day] = per_day.get(reading.day, 0) + reading.weight
    top = sorted((-minutes, day) for day, minutes in per_day.items() if minutes >= 60)[:4]

    def beside(name):
        values = [meal['course'][name] for meal in found if meal['compared'] and meal['course'][name] is not None]
        return {'n': len(values), 'median': median(values), 'below': sum(value < AFTER[name] for value in values)}
    return {
        'from': first.isoformat(),
        'to': last.isoformat(),
        'set': target_set,
        'meals': [
            {'at': meal['at'].strftime('%Y-%m-%d %H:%M'), 'grams': meal['grams'], 'compared': meal['compared'], 'course': meal['course']}
            for meal in found
        ],
        'pregnancy': {name: beside(name) for name in AFTER} if pregnant else None,
        'topDays': [{'date': day.isoformat(), 'minutes': -minutes} for minutes, day in top],
    }


if __name__ == '__main__':
    of_diary(meals, NOTES)
