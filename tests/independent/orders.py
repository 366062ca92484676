#!/usr/bin/env python3
"""Where published reading orders look besides, worked a second time from the diaries: fasting and bedtime, insulin a day,
lows lined up on exercise and bedtime, what stands before highs, weeks of a pregnancy.

    python3 tests/independent/orders.py pregnancy --from 2026-02-02 --to 2026-02-15 --set pregnancy-type-1 --due 2026-06-15

Definitions (ours; the goals: American Diabetes Association, Standards of Care, section 15)
  fasting       mean of the 15 minutes before the first food noted from 5 to 11, or before 6; none where food is noted before 5
  bedtime       mean of the 15 minutes before 23:00
  middle        median, from three days on
  insulin       units noted on days with any; by name long-acting or not
  lined up      lows by the hours since the last session ended (a session's own minutes apart), and since 23:00
  days          6 AM to 6 AM, as in noted.py. Very high: a high with two hours and more beyond the outer limit began.
                Much high: more time high than on the middle day, of days with 70 % seen
  weeks         seven days; with a due date they begin where a week of the 280 days before it does
"""
from datetime import date, datetime, timedelta
from statistics import median

from canonical import SAMPLES, canonical, table
from measures import LIMITS, Reading, episodes, heights, minutes_of, of_diary, weigh
from noted import WRITTEN, exact, seen

LONG_ACTING = {'long', 'long-acting', 'once-daily', 'basal'}
GOALS = {'fasting': 95}


def evening_exercise():
    for row in table(SAMPLES / 'evening-exercise' / 'diary.tsv', 'utf-8', '\t'):
        if row['Entry'] != 'sensor':
            when = datetime.strptime(f"{row['Date']} {row['Time']}", '%m/%d/%Y %I:%M %p')
            yield when, row['Entry'], row['Amount'], row['Details'], row['Minutes']


def pregnancy():
    for row in table(SAMPLES / 'pregnancy' / 'sheet.csv', 'utf-8-sig'):
        when = datetime.strptime(row['When'], '%d %b %Y %H:%M')
        yield from row_notes(when, row, 'Walk (min)', 'Finger (mg/dL)')


def steady_fortnight():
    for row in table(SAMPLES / 'steady-fortnight' / 'logbook.csv', 'utf-8'):
        yield from row_notes(datetime.strptime(row['When'], '%Y-%m-%d %H:%M'), row, 'Exercise (min)', 'Fingerstick (mg/dL)')


def row_notes(when, row, minutes, finger):
    if row['Carbs (g)'] or row['Food']:
        yield when, 'food', row['Carbs (g)'], row['Food'], ''
    if row['Insulin (IU)']:
        yield when, 'insulin', row['Insulin (IU)'], row['Insulin kind'], ''
    if row[minutes]:
        yield when, 'exercise', '', '', row[minutes]
    for column, kind in ((finger, 'fingerstick'), ('Medicine', 'medicine'), ('Remark', 'remark')):
        if row[column]:
            yield when, kind, '', '', ''


def long_highs():
    for row in table(SAMPLES / 'long-highs' / 'notes.csv', 'utf-8'):
        when = datetime.strptime(f"{row['Date']} {row['Time']}", '%Y/%m/%d %H:%M')
        yield when, row['Kind'], row['Amount'], row['Details'], row['Amount'] if row['Unit'] == 'min' else ''


NOTES = {'evening-exercise': evening_exercise, 'pregnancy': pregnancy, 'steady-fortnight': steady_fortnight, 'long-highs': long_highs}


def at_minute(readings, day, minute):
    here = [reading for reading in readings if reading.day == day and minute - 15 <= reading.minute < minute]
    if not here:
        return None
    return {'date': day.isoformat(), 'mgdl': sum(r.height * r.weight for r in here) / minutes_of(here)}


def middle(values, least=3):
    return median(values) if len(values) >= least else None


def fixed_times(readings, notes, days):
    fasting, bedtime = [], []
    for day in days:
        food = [when.hour * 60 + when.minute for when, kind, *_ in notes if kind == 'food' and when.date() == day]
        if not any(minute < 300 for minute in food):
            breakfast = [minute for minute in food if minute < 660]
            fasting.append(at_minute(readings, day, breakfast[0] if breakfast else 360))
        bedtime.append(at_minute(readings, day, 1380))
    fasting, bedtime = ([one for one in some if one] for some in (fasting, bedtime))
    return {
        'fasting': fasting,
        'bedtime': bedtime,
        'fastingMedian': middle([one['mgdl'] for one in fasting]),
        'bedtimeMedian': middle([one['mgdl'] for one in bedtime]),
    }


def insulin(notes, days):
    def on_days(some):
        sums = {}
        for when, units in some:
            sums[when.date()] = sums.get(when.date(), 0) + units
        return sums
    given = [(when, float(amount), name) for when, kind, amount, name, _ in notes if kind == 'insulin' and amount]
    every = on_days((when, units) for when, units, _ in given)
    def part(wanted):
        sums = on_days((when, units) for when, units, name in given if (name.lower() in LONG_ACTING) == wanted)
        return {'noted': len(sums), 'median': median(sums.values())} if sums else None
    return {
        'days': len(days),
        'noted': len(every),
        'perDay': [{'date': day.isoformat(), 'units': every[day]} for day in days if day in every],
        'median': median(every.values()),
        'longActing': part(True),
        'others': part(False),
    }


def lined_up(readings, starts, sessions):
    during, without = [0, 0], [0, 0]
    after = {(a, b): [0, 0] for a, b in ((0, 4), (4, 8), (8, 12), (12, 24))}
    bed = {(a, b): [0, 0] for a, b in ((0, 2), (2, 4), (4, 6), (6, 8))}
    for reading in readings:
        ended = [begin + length for begin, length in sessions if begin + length <= reading.at]
        hours = (reading.at - max(ended)).total_seconds() / 3600 if ended else None
        place = next((one for (a, b), one in after.items() if hours is not None and a <= hours < b), without)
        if any(begin <= reading.at < begin + length for begin, length in sessions):
            place = during
        late = (reading.minute - 1380) % 1440 / 60
        for one in (place, next((one for (a, b), one in bed.items() if a <= late < b), None)):
            if one is not None:
                one[0] += reading.at in starts
                one[1] += reading.weight / 60
    return {'during': during, 'exercise': list(after.values()), 'without': without, 'bedtime': list(bed.values())}


def before_highs(readings, highs, notes, days, target):
    rows = []
    for day in days:
        six = datetime.combine(day, datetime.min.time()) + timedelta(hours=6)
        end = six + timedelta(days=1)
        here = [reading for reading in readings if six <= reading.at < end]
        enough = seen(here, six, end) >= 0.7
        above = sum(r.weight for r in here if r.band in ('high', 'very-high')) / minutes_of(here) if here else 0
        began = any(six <= start < end for start in highs)
        rows.append({
            'day': day,
            'veryHigh': True if began else False if enough else None,
            'share': above if enough else None,
            'moved': any(kind == 'exercise' and six <= when < end for when, kind, *_ in notes),
            'written': any(kind in WRITTEN and when.date() == day for when, kind, *_ in notes),
        })
    usual = median([row['share'] for row in rows if row['share'] is not None])
    for row in rows:
        row['muchHigh'] = None if row['share'] is None else row['share'] > usual

    def sides(of, on, known):
        found = {}
        for name, wanted in (('withIt', True), ('without', False)):
            some = [row[of] for row in rows if on(row) == wanted and row[of] is not None and (known or row['written'])]
            found[name] = {'k': sum(some), 'n': len(some)}
        a, b = found['withIt'], found['without']
        found['p'] = exact(a['k'], a['n'], b['k'], b['n']) if min(a['n'], b['n']) >= 3 else None
        return found
    return {
        of: {
            'dates': [row['day'].isoformat() for row in rows if row[of]],
            'exercise': sides(of, lambda row: row['moved'], False),
            'weekend': sides(of, lambda row: row['day'].isoweekday() >= 6, True),
        }
        for of in ('veryHigh', 'muchHigh')
    }


def weeks(readings, days, due, fixed):
    into = (lambda day: 280 - (due - day).days) if due else (lambda day: (day - days[0]).days)
    starts = [n for n, day in enumerate(days) if n == 0 or into(day) % 7 == 0]
    found = []
    for begin, end in zip(starts, starts[1:] + [len(days)]):
        here = [reading for reading in readings if days[begin] <= reading.day <= days[end - 1]]
        share = min(1, minutes_of(here) / (1440 * (end - begin)))
        known = [reading for reading in here if reading.mgdl is not None]
        enough = share >= 0.7
        part = lambda bands: sum(r.weight for r in here if r.band in bands) / minutes_of(here) if enough else None
        found.append({
            'from': days[begin].isoformat(),
            'days': end - begin,
            'share': share,
            'inRange': part(('in-range',)),
            'low': part(('low', 'very-low')),
            'mean': sum(r.mgdl * r.weight for r in known) / minutes_of(known) if enough else None,
            'week': into(days[begin]) // 7 if due else None,
        })
    values = [one['mgdl'] for one in fixed['fasting']]
    below = sum(value < GOALS['fasting'] for value in values)
    return {'weeks': found, 'fasting': {'n': len(values), 'median': median(values), 'below': below, 'goal': GOALS['fasting']}}


def orders(source, first, last, target_set, due):
    limits = LIMITS[target_set]
    rows = [{'time': time, 'value': value, 'unit': unit} for time, value, unit in canonical(source)]
    everything = [Reading(row, limits) for row in rows]
    _, pause, _ = weigh(everything)
    readings = [reading for reading in everything if first <= reading.day <= last]
    heights(readings, limits)
    notes = sorted(note for note in NOTES[source]() if first <= note[0].date() <= last)
    days = [first + timedelta(days=n) for n in range((last - first).days + 1)]
    at = {(reading.day.isoformat(), reading.minute): reading.at for reading in reversed(readings)}
    begun = lambda one: at[one['date'], one['startMinute']]
    sessions = [(when, timedelta(minutes=float(minutes or 0))) for when, kind, _, _, minutes in notes if kind == 'exercise']
    fixed = fixed_times(readings, notes, days)
    highs = [begun(one) for one in episodes(readings, pause, 'high') if one['outerMinutes'] >= 120]
    return {
        'from': first.isoformat(),
        'to': last.isoformat(),
        'set': target_set,
        'due': due.isoformat() if due else None,
        'fixed': fixed,
        'insulin': insulin(notes, days),
        'lined': lined_up(readings, {begun(one) for one in episodes(readings, pause, 'low')}, sessions),
        'highs': before_highs(readings, highs, notes, days, target_set),
        'pregnancy': weeks(readings, days, due, fixed) if target_set.startswith('pregnancy') else None,
    }


if __name__ == '__main__':
    of_diary(orders, NOTES, due=True)
