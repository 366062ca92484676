#!/usr/bin/env python3
"""The main numbers of the report, worked a second time from their published definitions.

Shares no code and no language with the program: it was written from the definitions, not from the program, and
tests/independent/measures.test.ts compares the two. Standard library only.

    python3 tests/independent/measures.py readings.csv --from 2026-01-12 --to 2026-01-25 --set adult

Definitions
  bands       Battelino 2019, Diabetes Care 42:1593-1603; real-valued edges Holt 2021, Diabetes Care 44:2589-2625,
              each reading on the limits of its own unit
  CV, SD      all readings, n - 1 (Danne 2017, Diabetes Care 40:1631-1640)
  GMI         Bergenstal 2018, Diabetes Care 41:2275-2280
  percentiles type 7 of Hyndman & Fan 1996, Am Stat 50:361-365 ("inclusive" in Python's statistics)
  episodes    15 minutes beyond the limit to begin, 15 minutes back inside to end (Danne 2017; end rule from memory);
              a pause above 20 minutes or two intervals cuts (ours)
  weights     each reading stands for one interval; where steps are uneven, for the time to the next reading, at most
              1.5 intervals (ours)
"""
import argparse
import csv
import json
import math
from collections import Counter, defaultdict
from datetime import date, datetime, timedelta
from itertools import groupby
from statistics import quantiles

MG_PER_MMOL = 18.0156
LIMITS = {
    'adult': {'mg/dL': (54, 70, 180, 250), 'mmol/L': (3.0, 3.9, 10.0, 13.9)},
    'older': {'mg/dL': (54, 70, 180, 250), 'mmol/L': (3.0, 3.9, 10.0, 13.9)},
    'pregnancy-type-1': {'mg/dL': (54, 63, 140, math.inf), 'mmol/L': (3.0, 3.5, 7.8, math.inf)},
}
BANDS = ['very-low', 'low', 'in-range', 'high', 'very-high']


class Reading:
    def __init__(self, row, limits):
        when = datetime.fromisoformat(row['time'])
        self.wall = when.replace(tzinfo=None)
        self.offset = when.utcoffset() or timedelta(0)
        self.at = self.wall - self.offset
        self.day = self.wall.date()
        self.minute = self.wall.hour * 60 + self.wall.minute
        very_low, low, high, very_high = limits[row['unit']]
        self.interval = row.get('interval')
        # Beyond the sensor's range, with the bound (`<40`) or without (`low`): as if just beyond it.
        self.beyond = -1 if row['value'][0] in '<l' else 1 if row['value'][0] in '>h' else 0
        bound = row['value'].lstrip('<>')
        if not bound[0].isdigit():
            self.mgdl = None
            self.band = 'very-low' if self.beyond < 0 else 'high' if very_high == math.inf else 'very-high'
            return
        value = float(bound)
        self.mgdl = value * (MG_PER_MMOL if row['unit'] == 'mmol/L' else 1)
        value = math.nextafter(value, self.beyond * math.inf) if self.beyond else value
        if value < very_low:
            self.band = 'very-low'
        elif value < low:
            self.band = 'low'
        elif value <= high:
            self.band = 'in-range'
        elif value <= very_high:
            self.band = 'high'
        else:
            self.band = 'very-high'


def minutes_between(earlier, later):
    return (later.at - earlier.at).total_seconds() / 60


def usual_step(readings):
    steps = [minutes_between(a, b) for a, b in zip(readings, readings[1:])]
    counted = Counter(round(2 * step) / 2 for step in steps if 0 < step <= 120)
    return max(counted, key=lambda step: (counted[step], -step))


def weigh(readings):
    """Gives each reading the minutes it stands for; returns interval, gap rule, and whether steps are uneven.

    A reading that was made by one of several sensors has the interval of its own; the interval is then the one of the
    sensor that covers most time.
    """
    steps = [minutes_between(a, b) for a, b in zip(readings, readings[1:])]
    if readings[0].interval is None:
        usual = usual_step(readings)
        for reading in readings:
            reading.interval = usual
    covered = Counter()
    for reading in readings:
        covered[reading.interval] += reading.interval
    interval = covered.most_common(1)[0][0]
    pause = max(20, 2 * interval)
    within = [(step, reading.interval) for step, reading in zip(steps, readings) if step <= pause]
    uneven = [step for step, own in within if abs(step - max(1, round(step / own)) * own) > max(own / 4, min(1, 0.4 * own))]
    mixed = len(covered) > 1 or len(uneven) > 0.05 * len(within)
    for reading, step in zip(readings, steps + [readings[-1].interval]):
        own = reading.interval
        reading.weight = min(step, 1.5 * own) if mixed else step if step < own - max(own / 4, min(1, 0.4 * own)) else own
    return interval, pause, mixed


def day_minutes(readings, days):
    """Minutes of each calendar day: 1440 less what the clocks went forward in it."""
    held = {day: 1440 for day in days}
    for b, forward in changes(readings, days):
        held[b.day] -= forward
    return held


def night_minutes(readings, days):
    """The same for midnight to six: a change late in the evening is none of it."""
    held = {day: 360 for day in days}
    for b, forward in changes(readings, days):
        held[b.day] -= forward if b.minute < 420 else 0
    return held


def changes(readings, days):
    """The first reading after each change of clocks on these days, with the minutes they went forward."""
    for a, b in zip(readings, readings[1:]):
        if a.offset != b.offset and b.day in days:
            yield b, (b.offset - a.offset).total_seconds() / 60


def share_seen(readings, minutes):
    return min(1, sum(reading.weight for reading in readings) / minutes)


def heights(readings, limits):
    """mg/dL for order and extremes: beyond the sensor counts as the outermost value it did report, or the outer limit."""
    known = [reading.mgdl for reading in readings if reading.mgdl is not None]
    very_low, _, high, very_high = limits['mg/dL']
    bottom = min(known + [very_low])
    top = max(known + [high if very_high == math.inf else very_high])
    for reading in readings:
        reading.height = reading.mgdl
        if reading.mgdl is None:
            reading.height = bottom if reading.beyond < 0 else top


def modal_day(readings, interval):
    width = 15 if interval <= 5 else 30 if interval <= 15 else 60
    bins = defaultdict(list)
    for reading in readings:
        bins[reading.minute // width].append(reading)
    rows = []
    for number in range(1440 // width):
        here = bins[number]
        n, days = len(here), len({reading.day for reading in here})
        row = {'minute': number * width, 'n': n, 'days': days}
        enough = n >= 5 and days >= 5
        cut = quantiles([reading.height for reading in here], n=20, method='inclusive') if enough else None
        for name, part in (('p5', 1), ('p25', 5), ('p50', 10), ('p75', 15), ('p95', 19)):
            shown = enough and (n >= 20 or name not in ('p5', 'p95'))
            row[name] = cut[part - 1] if shown else None
        rows.append(row)
    return {'binMinutes': width, 'raw': rows}


def pieces(readings, pause):
    """Stretches without a pause above the rule."""
    piece = readings[:1]
    for before, reading in zip(readings, readings[1:]):
        if minutes_between(before, reading) > pause:
            yield piece
            piece = []
        piece.append(reading)
    yield piece


def minutes_of(run):
    return sum(reading.weight for reading in run)


def episodes(readings, pause, side):
    wanted, outer = ({'low', 'very-low'}, 'very-low') if side == 'low' else ({'high', 'very-high'}, 'very-high')
    found = []
    for piece in pieces(readings, pause):
        runs = [(beyond, list(run)) for beyond, run in groupby(piece, key=lambda reading: reading.band in wanted)]
        inside = []
        for number, (beyond, run) in enumerate(runs):
            long_enough = minutes_of(run) > 14.5
            if beyond and (inside or long_enough):
                inside += run
            elif inside and long_enough:
                found.append(told(inside, piece, minutes_between(inside[0], run[0]), False, side, outer))
                inside = []
            elif inside:
                inside += run
        if inside:
            last = inside[-1]
            found.append(told(inside, piece, minutes_between(inside[0], last) + last.weight, True, side, outer))
    return found


def told(inside, piece, minutes, cut, side, outer):
    stretches = [minutes_of(run) for band, run in groupby(inside, key=lambda reading: reading.band) for run in [list(run)] if band == outer]
    extreme = (min if side == 'low' else max)(inside, key=lambda reading: reading.height)
    return {
        'date': inside[0].day.isoformat(),
        'startMinute': inside[0].minute,
        'minutes': max(15, minutes),
        'extreme': extreme.height,
        'level': 2 if any(stretch > 14.5 for stretch in stretches) else 1,
        'outerMinutes': sum(stretches),
        'night': inside[0].minute < 360,
        'cut': {'start': inside[0] is piece[0], 'end': cut},
    }


def night(day, readings, held):
    here = [reading for reading in readings if reading.day == day and reading.minute < 360]
    share = share_seen(here, held)
    very_low = sum(reading.weight for reading in here if reading.band == 'very-low')
    low = very_low + sum(reading.weight for reading in here if reading.band == 'low')
    state = 'very-low' if very_low else 'low' if low else 'none-seen' if share >= 0.7 else 'unknown'
    # At one height, what is beyond the range of the sensor lies further out.
    lowest = min(here, key=lambda reading: (reading.height, reading.beyond), default=None)
    return {
        'date': day.isoformat(),
        'share': share,
        'state': state,
        'lowMinutes': low,
        'veryLowMinutes': very_low,
        'lowest': lowest.height if lowest else None,
        'lowestMinute': lowest.minute if lowest else None,
    }


def measures(rows, first, last, target_set):
    limits = LIMITS[target_set]
    everything = [Reading(row, limits) for row in rows]
    rhythm = weigh(everything)
    readings = [reading for reading in everything if first <= reading.day <= last]
    return figures(readings, rhythm, first, last, target_set)


def figures(readings, rhythm, first, last, target_set, held=None, night_held=None):
    """`rhythm`: what `weigh` gave. `held`: minutes of each day, and of its night, where a zone tells them."""
    interval, pause, mixed = rhythm
    limits = LIMITS[target_set]
    heights(readings, limits)
    days = [first + timedelta(days=n) for n in range((last - first).days + 1)]
    held = held or day_minutes(readings, days)
    night_held = night_held or night_minutes(readings, days)
    by_day = {day: [reading for reading in readings if reading.day == day] for day in days}
    shares = {day: share_seen(by_day[day], held[day]) for day in days}
    hours = sum(shares[day] * held[day] for day in days) / 60
    of_hours = sum(held.values()) / 60

    known = [reading for reading in readings if reading.mgdl is not None]
    time_known = minutes_of(known)
    mean = sum(reading.mgdl * reading.weight for reading in known) / time_known
    square = sum(reading.weight * (reading.mgdl - mean) ** 2 for reading in known) / time_known
    sd = math.sqrt(square * len(known) / (len(known) - 1))

    minutes = {band: sum(reading.weight for reading in readings if reading.band == band) for band in BANDS}
    total = sum(minutes.values())
    return {
        'from': first.isoformat(),
        'to': last.isoformat(),
        'set': target_set,
        'readings': len(readings),
        'interval': interval,
        'mixed': mixed,
        'coverage': {
            'share': hours / of_hours,
            'hours': hours,
            'ofHours': of_hours,
            'fullDays': sum(share >= 0.7 for share in shares.values()),
            'byDay': [shares[day] for day in days],
        },
        'mean': mean,
        'censored': sum(reading.beyond != 0 for reading in readings),
        'sd': sd,
        'cv': 100 * sd / mean,
        'gmi': None if target_set.startswith('pregnancy') or hours < 72 else {
            'percent': 3.31 + 0.02392 * mean,
            'mmolPerMol': 12.71 + 4.70587 * mean / MG_PER_MMOL,
        },
        'minutes': minutes,
        'shares': {band: minutes[band] / total for band in BANDS},
        'modalDay': modal_day(readings, interval) if len({reading.day for reading in readings}) >= 5 else None,
        'lows': episodes(readings, pause, 'low'),
        'highs': episodes(readings, pause, 'high'),
        'nights': [night(day, readings, night_held[day]) for day in days],
    }


def rounded(value):
    """Twelve digits are far beyond what is compared, and keep the files the same on every machine."""
    if isinstance(value, float):
        return float(f'{value:.12g}')
    if isinstance(value, dict):
        return {key: rounded(part) for key, part in value.items()}
    if isinstance(value, list):
        return [rounded(part) for part in value]
    return value


def asked():
    """What every script here is asked: which days, on which limits. What they are of each adds itself."""
    parser = argparse.ArgumentParser()
    parser.add_argument('--from', dest='first', type=date.fromisoformat, required=True)
    parser.add_argument('--to', dest='last', type=date.fromisoformat, required=True)
    parser.add_argument('--set', dest='target_set', default='adult', choices=LIMITS)
    return parser


def show(found):
    print(json.dumps(rounded(found), indent=1))


def of_readings(work):
    """Runs `work` on a table of canonical.py, from a file or (-) from standard input."""
    parser = asked()
    parser.add_argument('readings', help='a table of canonical.py; - for standard input')
    given = parser.parse_args()
    with open(0 if given.readings == '-' else given.readings, newline='', encoding='utf-8') as file:
        show(work(list(csv.DictReader(file)), given.first, given.last, given.target_set))


def of_diary(work, sources, due=False):
    """Runs `work` on one of the sources that have notes; with `due`, on the day a child is expected as well."""
    parser = asked()
    parser.add_argument('source', choices=sources)
    if due:
        parser.add_argument('--due', type=date.fromisoformat)
    given = parser.parse_args()
    show(work(given.source, given.first, given.last, given.target_set, *([given.due] if due else [])))


if __name__ == '__main__':
    of_readings(measures)
