#!/usr/bin/env python3
"""Further numbers, worked a second time from their definitions: what measures.py does for the main ones.

    python3 tests/independent/canonical.py evening-exercise | python3 tests/independent/more.py - --from … --to … --set adult

Definitions
  tight range   Danne 2017, Diabetes Care 40:1631-1640: 70-140 mg/dL, 3.9-7.8 mmol/L, each reading in its own unit
  GRI           Klonoff 2023, J Diabetes Sci Technol 17:1226-1242: 3.0 VLow + 2.4 Low + 1.6 VHigh + 0.8 High
  MODD, CONGA   Molnar 1972, Diabetologia 8:342; McDonnell 2005, Diabetes Technol Ther 7:253
  MAG, GVP      Hermanides 2010; Peyser 2018, Diabetes Technol Ther 20:6 (formula from memory)
  LBGI, HBGI    Kovatchev (constants from memory)
  J-index       Wojcicki 1995, Horm Metab Res 27:41
  overnight     mean of 05:30-06:00 minus mean of 00:00-00:30; nights with 70 % of their readings (ours)
  rates         least squares over the readings of 20 minutes, at least 4, spanning 14 minutes, no gap (ours)
  fall          the largest between two readings of such 20 minutes (ours)
  very high     above 250 mg/dL or 13.9 mmol/L; in pregnancy 200 or 11.1 (ours); runs end at a pause
  bedtime       mean of 22:45-23:00 (ours)
  week parts    median of a clock hour, Monday to Friday and weekend, 3 days a side (ours)
  brief dips    days with readings below a limit on which no low (15 minutes below 70; level 2: below 54) lies; one over midnight
                lies on both days (15 minutes: Danne 2017, Diabetes Care 40:1631-1640; told at all: ours)
  earlier       the main shares and the mean of as many days just before; on which side of each goal both periods lie
                (Battelino 2019, Diabetes Care 42:1593-1603, for adults; both with 14 days and 70 % of the time)
"""
import math
from datetime import timedelta
from statistics import mean, median, stdev

from measures import BANDS, LIMITS, Reading, heights, measures, minutes_between, minutes_of, of_readings, pieces, weigh


GOALS = [('low', '<', 0.04), ('very-low', '<', 0.01), ('in-range', '>', 0.7), ('high', '<', 0.25), ('very-high', '<', 0.05)]


def goals_met(figures):
    shares = dict(figures['shares'])
    shares['low'] += shares['very-low']
    shares['high'] += shares['very-high']
    return [shares[of] < share if op == '<' else shares[of] > share for of, op, share in GOALS]


def judged(figures):
    return figures['coverage']['share'] >= 0.7 and len(figures['coverage']['byDay']) >= 14


def nearest_earlier(known, index, minutes, slack):
    """The reading nearest to so many minutes before, of those within the slack; ties go to the later one."""
    wanted = known[index].at - timedelta(minutes=minutes)
    best = None
    for earlier in reversed(known[:index]):
        apart = abs((earlier.at - wanted).total_seconds()) / 60
        if apart <= slack and (best is None or apart < best[0]):
            best = (apart, earlier)
        if (wanted - earlier.at).total_seconds() / 60 > slack:
            break
    return best and best[1]


def differences(known, interval, minutes, piece_of):
    found = []
    for index, reading in enumerate(known):
        earlier = nearest_earlier(known, index, minutes, interval / 2)
        if earlier and (piece_of is None or piece_of[id(earlier)] == piece_of[id(reading)]):
            found.append(reading.mgdl - earlier.mgdl)
    return found


def risk(mgdl):
    return 1.509 * (math.log(min(600, max(20, mgdl))) ** 1.084 - 5.381)


def windows(readings, pause):
    for piece in pieces(readings, pause):
        for end, last in enumerate(piece):
            window = [r for r in piece[max(0, end - 40):end + 1] if minutes_between(r, last) <= 20.5]
            if len(window) >= 4 and minutes_between(window[0], last) >= 14:
                yield window


def longest_run(readings, pause):
    longest = 0
    for piece in pieces(readings, pause):
        run = 0
        for reading in piece:
            run = run + reading.weight if reading.over else 0
            longest = max(longest, run)
    return longest


def bedtime(by_day):
    found = []
    for day, readings in by_day.items():
        late = [r for r in readings if 1365 <= r.minute < 1380]
        if late:
            found.append({'date': day.isoformat(), 'mgdl': sum(r.height * r.weight for r in late) / minutes_of(late)})
    return found


def week_parts(by_day):
    sides = [[readings for day, readings in by_day.items() if readings and (day.weekday() >= 5) == weekend] for weekend in (False, True)]
    if min(len(side) for side in sides) < 3:
        return None
    hours = []
    for hour in range(24):
        seen = [[[r.height for r in readings if r.minute // 60 == hour] for readings in side] for side in sides]
        held = [[values for values in side if values] for side in seen]
        hours.append([median(sum(side, [])) if len(side) >= 3 else None for side in held])
    return hours


def slopes(readings, pause):
    for window in windows(readings, pause):
        times = [minutes_between(window[0], r) for r in window]
        middle, level = mean(times), mean(r.height for r in window)
        slope = sum((t - middle) * (r.height - level) for t, r in zip(times, window)) / sum((t - middle) ** 2 for t in times)
        # A slope of exactly 1 is not above 1, in whatever order the sum was added up.
        yield round(slope, 9)


def overnight(by_day):
    nights = []
    for day, readings in by_day.items():
        night = [r for r in readings if r.minute < 360]
        start = [r for r in night if r.minute < 30]
        end = [r for r in night if r.minute >= 330]
        if minutes_of(night) < 0.7 * 360 or not start or not end:
            continue
        level = lambda part: sum(r.height * r.weight for r in part) / minutes_of(part)
        nights.append({'date': day.isoformat(), 'change': level(end) - level(start)})
    return nights


def brief_dips(readings, lows):
    """Days on which readings below a limit are all there is: no low lies there."""
    below = lambda some, *bands: {r.day.isoformat() for r in some if r.band in bands}
    within = {1: [], 2: []}
    for low in lows:
        first = next(r for r in readings if r.day.isoformat() == low['date'] and r.minute == low['startMinute'])
        within[low['level']] += [r for r in readings if 0 <= minutes_between(first, r) < low['minutes']]
    touched = {r.day.isoformat() for r in within[1] + within[2]}
    return {
        'low': sorted(below(readings, 'low', 'very-low') - touched),
        'veryLow': sorted(below(readings, 'very-low') - below(within[2], 'very-low')),
    }


def more(rows, first, last, target_set):
    limits = LIMITS[target_set]
    everything = [Reading(row, limits) for row in rows]
    for reading, row in zip(everything, rows):
        low, high = (70, 140) if row['unit'] == 'mg/dL' else (3.9, 7.8)
        level = (200 if row['unit'] == 'mg/dL' else 11.1) if target_set.startswith('pregnancy') else limits[row['unit']][3]
        reading.over = reading.beyond > 0 or (not reading.beyond and float(row['value']) > level)
        reading.tight = not reading.beyond and low <= float(row['value']) <= high
    interval, pause, mixed = weigh(everything)
    readings = [reading for reading in everything if first <= reading.day <= last]
    heights(readings, limits)
    days = (last - first).days + 1
    by_day = {first + timedelta(days=n): [] for n in range(days)}
    for reading in readings:
        by_day[reading.day].append(reading)
    total = minutes_of(readings)
    known = [reading for reading in readings if not reading.beyond]
    piece_of = {id(reading): number for number, piece in enumerate(pieces(known, pause)) for reading in piece}
    steps = [(b.mgdl - a.mgdl, minutes_between(a, b)) for a, b in zip(known, known[1:]) if piece_of[id(a)] == piece_of[id(b)]]
    whole = sum(step for _, step in steps)
    percent = {band: 100 * sum(r.weight for r in readings if r.band == band) / total for band in BANDS}
    main = measures(rows, first, last, target_set)
    sd, level = main['sd'], main['mean']
    pregnant = target_set.startswith('pregnancy')
    rates = list(slopes(readings, pause))
    found = {
        'from': first.isoformat(),
        'to': last.isoformat(),
        'set': target_set,
        'mixed': mixed,
        'tightRange': None if pregnant else sum(r.weight for r in readings if r.tight) / total,
        'gri': None if pregnant or days < 14 else min(100, 3 * percent['very-low'] + 2.4 * percent['low'] + 0.8 * percent['high'] + 1.6 * percent['very-high']),
        'modd': mean(abs(d) for d in differences(known, interval, 1440, None)),
        'conga': [stdev(differences(known, interval, 60 * hours, piece_of)) for hours in (1, 2, 4)],
        'mag': sum(abs(change) for change, _ in steps) / (whole / 60),
        'gvp': 100 * (sum(math.hypot(change, step) for change, step in steps) / whole - 1),
        'lbgi': mean(10 * min(0, risk(r.mgdl)) ** 2 for r in known),
        'hbgi': mean(10 * max(0, risk(r.mgdl)) ** 2 for r in known),
        'jIndex': 0.001 * (level + sd) ** 2,
        'overnight': overnight(by_day),
        'brief': brief_dips(readings, main['lows']),
        'rates': {
            'falling': [sum(-slope > over for slope in rates) / len(rates) for over in (1, 2, 3)],
            'rising': [sum(slope > over for slope in rates) / len(rates) for over in (1, 2, 3)],
            'steepest': min(rates),
            'fall': max(r.height - window[-1].height for window in windows(readings, pause) for r in window),
        },
        'veryHigh': {
            'share': sum(r.weight for r in readings if r.over) / total,
            'unbroken': longest_run(readings, pause),
            'mostInDay': max(sum(r.weight for r in day if r.over) for day in by_day.values()),
        },
        'bedtime': bedtime(by_day),
        'weekParts': week_parts(by_day),
    }
    earlier = first - timedelta(days=days), first - timedelta(days=1)
    if any(earlier[0] <= reading.day <= earlier[1] for reading in everything):
        then = measures(rows, *earlier, target_set)
        found['earlier'] = {'shares': then['shares'], 'mean': then['mean'], 'lows': len(then['lows']), 'highs': len(then['highs'])}
        if target_set == 'adult' and judged(then) and judged(main):
            found['earlier']['goals'] = {'then': goals_met(then), 'now': goals_met(main)}
    return found


if __name__ == '__main__':
    of_readings(more)
