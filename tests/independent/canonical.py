#!/usr/bin/env python3
"""Turns the sample stories and the open-data excerpt into one plain table each: time,value,unit.

Written by hand from what each file's README says, without any of the program's readers, so that a mistake of theirs
shows. Standard library only.

    python3 tests/independent/canonical.py SOURCE > readings.csv

time   local wall clock, ISO 8601, with the offset from UTC where the source lets one know it
value  as in the file; `low` or `high` where the sensor tells only that it is beyond its range
unit   mg/dL or mmol/L
"""
import csv
import io
import sys
from datetime import datetime, timedelta, timezone
from pathlib import Path

HOME = Path(__file__).resolve().parents[2]
SAMPLES = HOME / 'sample-data'
EXCERPT = HOME / 'tests' / 'data' / 't1d_uom'


def table(path, encoding, delimiter=',', skip=0):
    """Rows as dicts; `skip` lines stand above the header."""
    text = path.read_bytes().decode(encoding)
    lines = text.splitlines(keepends=True)[skip:]
    return csv.DictReader(io.StringIO(''.join(lines)), delimiter=delimiter)


def steady_fortnight():
    for row in table(SAMPLES / 'steady-fortnight' / 'readings.csv', 'utf-8'):
        yield datetime.strptime(row['When'], '%Y-%m-%d %H:%M'), row['Sensor glucose (mg/dL)'], 'mg/dL'


def evening_exercise():
    for row in table(SAMPLES / 'evening-exercise' / 'diary.tsv', 'utf-8', '\t'):
        if row['Entry'] == 'sensor':
            yield datetime.strptime(f"{row['Date']} {row['Time']}", '%m/%d/%Y %I:%M %p'), row['Amount'], row['Unit']


def autumn_clock_change():
    """The clocks go back at 04:00 on 26 October; the file goes on in the order of time, so a step back shows it."""
    summer, winter = timezone(timedelta(hours=3)), timezone(timedelta(hours=2))
    zone, before = summer, None
    for row in table(SAMPLES / 'autumn-clock-change' / 'mittaukset.csv', 'cp1252', ';', skip=4):
        date, clock, value = list(row.values())[:3]
        wall = datetime.strptime(f'{date} {clock}', '%d.%m.%Y %H:%M')
        if before is not None and wall < before:
            zone = winter
        before = wall
        yield wall.replace(tzinfo=zone), value.replace(',', '.'), 'mmol/L'


def pregnancy():
    for row in table(SAMPLES / 'pregnancy' / 'sheet.csv', 'utf-8-sig'):
        if row['Sensor (mg/dL)']:
            yield datetime.strptime(row['When'], '%d %b %Y %H:%M'), row['Sensor (mg/dL)'], 'mg/dL'


def thin_data():
    for row in table(SAMPLES / 'thin-data' / 'readings.csv', 'utf-8'):
        try:
            when = datetime.strptime(row['When'] or '', '%Y-%m-%d %H:%M')
            value = float(row['Glucose (mg/dL)'] or '')
        except ValueError:
            continue  # titles, summaries, times that never were, words in place of values
        if when.year == 2026 and 20 <= value <= 600:
            yield when, row['Glucose (mg/dL)'], 'mg/dL'


def long_highs():
    for row in table(SAMPLES / 'long-highs' / 'sensor.csv', 'utf-8'):
        yield datetime.strptime(row['Time'], '%Y/%m/%d %H:%M:%S'), row['Glucose mg/dL'].lower(), 'mg/dL'


def excerpt(person):
    for row in table(EXCERPT / f'glucose-{person}.csv', 'utf-8-sig'):
        yield datetime.strptime(row['bg_ts'], '%d/%m/%Y %H:%M'), row['value'], 'mmol/L'


SOURCES = {
    'steady-fortnight': steady_fortnight,
    'evening-exercise': evening_exercise,
    'autumn-clock-change': autumn_clock_change,
    'pregnancy': pregnancy,
    'thin-data': thin_data,
    'long-highs': long_highs,
    't1d-uom-2314': lambda: excerpt(2314),
    't1d-uom-2320': lambda: excerpt(2320),
    't1d-uom-2404': lambda: excerpt(2404),
}


def canonical(source):
    """Rows in order of time; a repeated row once, and none of those that contradict each other at one time."""
    found = {}
    for when, value, unit in SOURCES[source]():
        found.setdefault(when, set()).add((value, unit))
    agreed = {when: values.pop() for when, values in found.items() if len(values) == 1}
    order = sorted(agreed, key=lambda when: when if when.tzinfo else when.replace(tzinfo=timezone.utc))
    return [(when.isoformat(), *agreed[when]) for when in order]


if __name__ == '__main__':
    out = csv.writer(sys.stdout, lineterminator='\n')
    out.writerow(['time', 'value', 'unit'])
    out.writerows(canonical(sys.argv[1]))
