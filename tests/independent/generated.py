#!/usr/bin/env python3
"""Made-up exports of made-up people, and the main numbers of each worked out by measures.py from those same exports.

    python3 tests/independent/generated.py FIRST COUNT > cases.ndjson

One case a line: the files as a program is given them, what a person would say about them, and the figures. A case
depends on its number alone. They hold what goes wrong at home: holes, whole days missing, rows given twice and rows that
contradict each other, two units, two sensors of other intervals one after the other, values beyond the sensor's range,
nights on which the clocks change, times that never were, the newest row first, few days. Standard library only; its
zones are those of the machine.

Rules of intake (docs/decisions.md, docs/issues.md; ours unless a source stands there)
  one instant      the same said twice counts once, in mg/dL where one file says mg/dL; what differs is not used at all
  two units        the same when within half a digit of each: 0.05 mmol/L and 0.5 mg/dL
  skipped hour     never was: set aside
  doubled hour     a file that jumps back once passes through it twice; one that passes once takes the pass that joins
                   the readings around it (a pause of at most half the doubled stretch), the first when both or none do
  two intervals    each reading stands for the time to the next, at most 1.5 intervals of its own sensor
"""
import csv
import io
import json
import math
import random
import sys
from datetime import datetime, timedelta, timezone
from zoneinfo import ZoneInfo

from measures import LIMITS, MG_PER_MMOL, Reading, day_minutes, figures, night_minutes, rounded, weigh

MINUTE = timedelta(minutes=1)
DAY = timedelta(days=1)
UTC = timezone.utc
ROUNDING = 0.05 * MG_PER_MMOL + 0.5

# Dates on which the clocks of a zone change, from its government's announcements; Kolkata's do not.
CHANGES = {
    'Europe/London': ['2025-03-30', '2025-10-26'],
    'Europe/Helsinki': ['2025-03-30', '2025-10-26'],
    'America/New_York': ['2025-03-09', '2025-11-02'],
    'Pacific/Auckland': ['2025-04-06', '2025-09-28'],
    'Australia/Lord_Howe': ['2025-04-06', '2025-10-05'],
    'America/Santiago': ['2025-04-05', '2025-09-07'],
    'Asia/Kolkata': ['2025-06-10'],
}
EDGES = {
    'mg/dL': [53, 54, 62, 63, 69, 70, 140, 141, 180, 181, 250, 251],
    'mmol/L': [2.9, 3.0, 3.4, 3.5, 3.8, 3.9, 7.8, 7.9, 10.0, 10.1, 13.9, 14.0],
}


# --- making ---------------------------------------------------------------------------------------------------------

def offset_at(zone, instant):
    return instant.replace(tzinfo=UTC).astimezone(zone).utcoffset() if zone else timedelta(0)


def curve(rng, minutes):
    """mg/dL at each minute asked for: straight between knots, so that whole stretches lie beyond a limit."""
    level, spread = rng.uniform(95, 200), rng.uniform(0.15, 0.55)
    knots, at = [], minutes[0]
    while at <= minutes[-1] + 300:
        knots.append((at, level * math.exp(rng.gauss(0, spread))))
        at += rng.choice([20, 45, 90, 120, 180, 240])
    k = 0
    for minute in minutes:
        while knots[k + 1][0] <= minute:
            k += 1
        (t0, v0), (t1, v1) = knots[k], knots[k + 1]
        yield v0 + (v1 - v0) * (minute - t0) / (t1 - t0) + rng.gauss(0, 1.5)


def worn(rng, start, days):
    """Instants (UTC, naive) at which sensors measured, with the interval of each."""
    first = rng.choice([1, 3, 5, 5, 5, 15, 15])
    days = min(days, 4) if first == 1 else days
    end = start + days * DAY
    if days < 5 or rng.random() < 0.7:
        parts = [(start, end, first)]
    else:
        second = rng.choice([step for step in (3, 5, 15) if step != first])
        change = start + rng.randint(2, days - 2) * DAY + rng.randint(0, 1439) * MINUTE
        parts = [(start, change, first), (change + rng.randint(65, 180) * MINUTE, end, second)]
    slots = []
    for begin, stop, interval in parts:
        at = begin + rng.randint(0, interval - 1) * MINUTE
        while at < stop:
            slots.append((at, interval))
            at += interval * MINUTE
    return slots


def with_holes(rng, slots, kept_whole):
    left = slots_after(rng, slots, kept_whole)
    return left if len(left) > 50 else slots


def slots_after(rng, slots, kept_whole):
    lost = rng.choice([0, 0.005, 0.05, 0.25])
    # Where many are lost, nobody can tell to the reading when one sensor gave way to another.
    if len({interval for _, interval in slots}) > 1:
        lost = min(lost, 0.05)
    holes = []
    for _ in range(rng.choice([0, 1, 3, 8])):
        begin = rng.choice(slots)[0]
        holes.append((begin, begin + rng.choice([12, 18, 21, 31, 50, 90, 300, 800, 1440]) * MINUTE))
    return [
        (at, interval) for at, interval in slots
        if kept_whole(at) or (rng.random() >= lost and not any(a <= at < b for a, b in holes))
    ]


def written(rng, value, unit, words):
    """A value as a sensor would put it."""
    native = value if unit == 'mg/dL' else value / MG_PER_MMOL
    if rng.random() < 0.05:
        native = rng.choice(EDGES[unit])
    bottom, top = (40, 400) if unit == 'mg/dL' else (2.2, 22.2)
    if native < bottom:
        return 'low' if words else f'<{bottom}'
    if native > top:
        return 'HIGH' if words else f'>{top}'
    return f'{native:.0f}' if unit == 'mg/dL' else f'{native:.1f}'


def said_in(text, unit, other):
    """The same value as an export in the other unit has it."""
    if unit == other or text in ('low', 'HIGH'):
        return text
    if text[0] in '<>':
        return {'<40': '<2.2', '>400': '>22.2', '<2.2': '<40', '>22.2': '>400'}[text]
    return f'{float(text) / MG_PER_MMOL:.1f}' if other == 'mmol/L' else f'{float(text) * MG_PER_MMOL:.0f}'


def export(rng, rows, unit, stamp, order):
    """Rows (instant, offset, text) as delimited text."""
    comma = unit == 'mmol/L' and rng.random() < 0.4
    mark = ';' if comma else rng.choice([',', ';', '\t'])
    shape = '%Y-%m-%dT%H:%M:%S' if stamp == 'offset' else rng.choice(['%Y-%m-%d %H:%M', '%Y-%m-%d %H:%M:%S', '%d.%m.%Y %H:%M'])
    lines = []
    for at, offset, text in rows:
        wall = (at + offset).strftime(shape)
        if stamp == 'offset':
            hours, minutes = divmod(abs(offset) // MINUTE, 60)
            wall += f"{'-' if offset < timedelta(0) else '+'}{hours:02}:{minutes:02}"
        lines.append(f"{wall}{mark}{text.replace('.', ',') if comma else text}")
    if order == 'newest':
        lines.reverse()
    elif order == 'shuffled':
        rng.shuffle(lines)
    return '\n'.join([f'Time{mark}Sensor glucose ({unit})', *lines, ''])


def case(number):
    rng = random.Random(number)
    stamp = rng.choice(['zone', 'zone', 'offset', 'written'])
    # A file wholly at +00:00 may be in world time, and is refused.
    name = None if stamp == 'written' else rng.choice([name for name in sorted(CHANGES) if stamp == 'zone' or name != 'Europe/London'])
    zone = ZoneInfo(name) if name else None
    days = rng.choice([1, 2, 3, 5, 7, 10, 14, 14, 14])
    centre = datetime.fromisoformat(rng.choice(CHANGES[name or 'Asia/Kolkata']))
    start = centre - rng.randint(0, days) * DAY - offset_at(zone, centre)
    slots = worn(rng, start, days)
    changes = [b for (a, _), (b, _) in zip(slots, slots[1:]) if offset_at(zone, a) != offset_at(zone, b)]
    # Offsets tell of a change only through the readings around it, so those are there; and a lone reading between two
    # holes would not tell which of two sensors it is of.
    worn_anew = [b for (b, one), (_, other) in zip(slots[1:], slots) if one != other]
    kept = lambda at: (stamp == 'offset' and any(abs(at - change) < DAY for change in changes)) or any(
        abs(at - change) < DAY / 4 for change in worn_anew
    )
    slots = with_holes(rng, slots, kept)
    minutes = [(at - start) // MINUTE for at, _ in slots]
    unit = rng.choice(['mg/dL', 'mmol/L'])
    words = rng.random() < 0.5
    rows = [(at, offset_at(zone, at), written(rng, value, unit, words)) for (at, _), value in zip(slots, curve(rng, minutes))]
    files = [(unit, rows)]
    kind = rng.choice(['one', 'one', 'overlap', 'other unit', 'both units', 'contradict'])
    if kind != 'one':
        second = unit if kind in ('overlap', 'contradict') else 'mmol/L' if unit == 'mg/dL' else 'mg/dL'
        half = len(rows) // 2
        cut = half if kind == 'other unit' else half // 2
        tail = [(at, offset, said_in(text, unit, second)) for at, offset, text in rows[cut:]]
        if kind == 'contradict':
            tail = [(at, offset, other_value(rng, text, second)) for at, offset, text in tail]
        files = [(unit, rows[:half] if kind in ('other unit', 'overlap') else rows), (second, tail)]
        if kind == 'overlap':
            files[0] = (unit, rows[: half + half // 2])
    # Order alone tells the two passes through a doubled hour apart.
    orders = ['asc', 'newest'] if stamp == 'zone' and name != 'Asia/Kolkata' else ['asc', 'newest', 'shuffled']
    skipped = stamp == 'zone' and rng.random() < 0.5
    exports = []
    for file_unit, file_rows in files:
        if skipped:
            file_rows = with_skipped(zone, changes, file_rows)
        if file_rows:
            exports.append({'unit': file_unit, 'text': export(rng, file_rows, file_unit, stamp, rng.choice(orders))})
    dates = sorted({(at + offset).date() for at, offset, _ in rows})
    first, last = dates[0], dates[-1]
    if len(dates) > 4 and rng.random() < 0.3:
        first += DAY
        last -= rng.choice([0, 1]) * DAY
        # A handful of readings tells nobody the interval of a new sensor.
        new = [at + offset for (at, interval), (_, offset, _) in zip(slots, rows) if interval != slots[0][1]]
        if new and sum(wall.date() <= last for wall in new) < 12:
            last = dates[-1]
    settings = {
        'targets': rng.choice(['adult', 'adult', 'older', 'pregnancy-type-1']),
        'period': {'from': first.isoformat(), 'to': last.isoformat()},
        'dateOrder': 'day-first',
        **({'zone': name} if stamp == 'zone' else {}),
    }
    given = {
        'number': number,
        'tells': [kind, stamp, name, f'{len({interval for _, interval in slots})} intervals', f'{len(dates)} days', f'{len(changes)} changes'],
        'files': [{'name': f'{k}.csv', 'text': each['text']} for k, each in enumerate(exports)],
        'settings': settings,
    }
    sensors = dict(slots)
    found = read_again(exports, zone if stamp == 'zone' else None, sensors)
    given['figures'] = rounded(worked_out(found, sensors, zone if stamp == 'zone' else None, first, last, settings['targets']))
    return given


def other_value(rng, text, unit):
    """Now and then another value for the same instant."""
    if rng.random() > 0.03 or not text[0].isdigit():
        return text
    return f'{float(text) + 30:.0f}' if unit == 'mg/dL' else f'{float(text) + 2:.1f}'


def with_skipped(zone, changes, rows):
    """Rows a clock that was not put forward would have written, in their place in the file."""
    for change in changes:
        before, after = offset_at(zone, change - DAY), offset_at(zone, change + DAY)
        here = [k for k, (at, _, _) in enumerate(rows) if at < change and change - at < DAY]
        if after > before and here:
            ghost = [(change + step * MINUTE, before, rows[here[-1]][2]) for step in (0, 5)]
            ghost = [row for row in ghost if not instants(zone, row[0] + row[1])]
            k = here[-1] + 1
            rows = rows[:k] + ghost + rows[k:]
    return rows


# --- reading the files again and working the figures out ------------------------------------------------------------

def instants(zone, wall):
    """Instants at which clocks of the zone showed this: none, one or two."""
    found = []
    for fold in (0, 1):
        at = wall.replace(tzinfo=zone, fold=fold).astimezone(UTC)
        if at.astimezone(zone).replace(tzinfo=None) == wall and at.replace(tzinfo=None) not in found:
            found.append(at.replace(tzinfo=None))
    return sorted(found)


def read_file(text):
    lines = text.splitlines()
    mark = lines[0][4]
    for line in lines[1:]:
        when, value = line.split(mark)
        offset = None
        if 'T' in when:
            moment = datetime.fromisoformat(when)
            offset, wall = moment.utcoffset(), moment.replace(tzinfo=None)
        elif '.' in when:
            wall = datetime.strptime(when, '%d.%m.%Y %H:%M')
        else:
            wall = datetime.fromisoformat(when)
        yield wall, offset, value.replace(',', '.')


def placed(rows, zone):
    """(instant, offset, value) of each row that has an instant, and how many have none."""
    if zone is None:
        return [(wall - (offset or timedelta(0)), offset or timedelta(0), value) for wall, offset, value in rows], 0
    steps = [b[0] - a[0] for a, b in zip(rows, rows[1:])]
    if sum(step < timedelta(0) for step in steps) > sum(step > timedelta(0) for step in steps):
        rows = rows[::-1]
    known = [(wall, instants_of(zone, wall), value) for wall, _, value in rows]
    found, none, k = [], 0, 0
    while k < len(known):
        wall, at, value = known[k]
        if len(at) == 2:
            run = k
            while k < len(known) and len(known[k][1]) == 2:
                k += 1
            found += doubled(known, run, k)
            continue
        if at:
            found.append((at[0], value))
        else:
            none += 1
        k += 1
    return [(at, offset_at(zone, at), value) for at, value in found], none


CACHE = {}


def instants_of(zone, wall):
    """As `instants`, asked once for each hour: changes come at whole or half hours."""
    key = (zone.key, wall.date(), wall.hour, wall.minute // 30)
    if key not in CACHE:
        CACHE[key] = [at - wall for at in instants(zone, wall)]
    return [wall + back for back in CACHE[key]]


def doubled(known, run, end):
    jumps = [k for k in range(run + 1, end) if known[k][0] < known[k - 1][0]]
    if len(jumps) == 1:
        return [(known[k][1][0 if k < jumps[0] else 1], known[k][2]) for k in range(run, end)]
    walls = [known[k][0] for k in range(run, end)]
    half = (known[run][1][1] - known[run][1][0]) / 2
    before = run > 0 and min(walls) - known[run - 1][0] <= half
    after = end < len(known) and known[end][0] - max(walls) <= half
    second = after and not before
    return [(known[k][1][1 if second else 0], known[k][2]) for k in range(run, end)]


def in_mgdl(row):
    value, unit = row
    return float(value.lstrip('<>')) * (MG_PER_MMOL if unit == 'mmol/L' else 1)


def same(a, b):
    """Whether two rows (value, unit) of one instant say the same."""
    signs = [row[0][0] if row[0][0] in '<>' else row[0] if row[0][0].isalpha() else '' for row in (a, b)]
    if signs[0] != signs[1]:
        return False
    if signs[0].isalpha():
        return True
    return float(a[0].lstrip('<>')) == float(b[0].lstrip('<>')) if a[1] == b[1] else abs(in_mgdl(a) - in_mgdl(b)) <= ROUNDING


def read_again(exports, zone, sensors):
    by_instant, none = {}, 0
    for each in exports:
        rows, lost = placed(list(read_file(each['text'])), zone)
        none += lost
        for at, offset, value in rows:
            by_instant.setdefault(at, []).append((offset, value, each['unit']))
    used, duplicates, contradicting = [], 0, 0
    for at in sorted(by_instant):
        group = sorted(by_instant[at], key=lambda row: row[2] != 'mg/dL')
        if all(same(group[0][1:], row[1:]) for row in group):
            duplicates += len(group) - 1
            offset, value, unit = group[0]
            used.append((at, offset, value, unit))
        else:
            sayings = []
            for row in group:
                if not any(same(saying, row[1:]) for saying in sayings):
                    sayings.append(row[1:])
            contradicting += len(sayings)
            duplicates += len(group) - len(sayings)
    return {'rows': used, 'duplicates': duplicates, 'setAside': none + contradicting}


def worked_out(found, sensors, zone, first, last, target_set):
    everything, interval = [], next(iter(sensors.values()))
    for at, offset, value, unit in found['rows']:
        interval = sensors.get(at, interval)
        time = (at + offset).replace(tzinfo=timezone(offset)).isoformat()
        everything.append(Reading({'time': time, 'value': value.lower(), 'unit': unit, 'interval': interval}, LIMITS[target_set]))
    days = [first + n * DAY for n in range((last - first).days + 1)]
    if zone:
        clock = lambda day, hour: datetime(day.year, day.month, day.day, hour, tzinfo=zone).astimezone(UTC)
        held = {day: (clock(day + DAY, 0) - clock(day, 0)) / MINUTE for day in days}
        night_held = {day: (clock(day, 6) - clock(day, 0)) / MINUTE for day in days}
    else:
        held, night_held = day_minutes(everything, days), night_minutes(everything, days)
    readings = [reading for reading in everything if first <= reading.day <= last]
    main = figures(readings, weigh(readings), first, last, target_set, held, night_held)
    return {'used': len(found['rows']), 'duplicates': found['duplicates'], 'setAside': found['setAside'], **main}


if __name__ == '__main__':
    begin, count = int(sys.argv[1]), int(sys.argv[2])
    for number in range(begin, begin + count):
        print(json.dumps(case(number)))
