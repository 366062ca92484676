#!/usr/bin/env python3
"""Changes between a period and as many days just before it, worked a second time, with their intervals.

    python3 tests/independent/canonical.py evening-exercise | python3 tests/independent/changes.py - --from … --to … --set adult

Definitions (docs/method.md, "Then and now")
  change        later share minus earlier one; days without readings left out
  interval      at each end the widest of
                  1. each period's error from day to day (linearised; n - 1), plain and on the scale of odds (of logarithms for
                     numbers that are no shares), widened for neighbours that resemble each other by 0.3 to 0.6, put together by
                     recovered variances (Zou & Donner 2008), Student's t with Welch's degrees of freedom
                  2. stretches of 2 days (3 from 20 days on) drawn again 1,000 times in both periods (circular blocks,
                     Politis & Romano 1992), percentiles expanded for few days (Hesterberg 2015)
                  3. for what is rare the same as 1 with the degrees of freedom of days that hold it (Kish 1965)
                and no further than all that there was can fall, or a share of one can be reached
  not judged    under 10 days with 70 % on a side; what is rare and would fill fewer than 6 days evenly
  chance        mulberry32, so that the draws can be drawn again
"""
import math
from datetime import timedelta
from statistics import NormalDist

from measures import LIMITS, Reading, day_minutes, minutes_of, of_readings, weigh

WANTED = {
    'in-range': (('in-range',), False),
    'low': (('very-low', 'low'), True),
    'very-low': (('very-low',), True),
    'high': (('high', 'very-high'), False),
    'very-high': (('very-high',), True),
    'mean': (None, False),
}
#: What a rare thing adds once where none was seen, minutes: an hour low, two hours high.
ONCE = {'low': 60, 'very-low': 60, 'very-high': 120}
SMALLEST = {'in-range': 0.05, 'low': 0.01, 'very-low': 0.005, 'high': 0.05, 'very-high': 0.025, 'mean': 9}
SEEDS = {'then': 20190608, 'now': 20170912}


def mulberry32(seed):
    state = seed
    wrap = 0xffffffff
    while True:
        state = (state + 0x6d2b79f5) & wrap
        mixed = ((state ^ (state >> 15)) * (state | 1)) & wrap
        mixed ^= (mixed + (((mixed ^ (mixed >> 7)) * (mixed | 61)) & wrap)) & wrap
        yield (mixed ^ (mixed >> 14)) / 4294967296


def student(p, degrees):
    """Quantile by bisection of the area under the density (Simpson), half the degrees by the gamma function."""
    scale = math.exp(math.lgamma((degrees + 1) / 2) - math.lgamma(degrees / 2)) / math.sqrt(degrees * math.pi)
    density = lambda x: scale * (1 + x * x / degrees) ** (-(degrees + 1) / 2)

    def area(x, steps=4000):
        step = x / steps
        inner = sum((4 if n % 2 else 2) * density(n * step) for n in range(1, steps))
        return (density(0) + inner + density(x)) * step / 3
    low, high = 0, 1
    while 0.5 + area(high) < p:
        high *= 2
    for _ in range(50):
        middle = (low + high) / 2
        low, high = (middle, high) if 0.5 + area(middle) < p else (low, middle)
    return (low + high) / 2


def per_day(readings, first, last, bands):
    """Day by day what counts, of what, for days that hold any reading with a number."""
    rows = []
    for n in range((last - first).days + 1):
        day = first + timedelta(days=n)
        here = [reading for reading in readings if reading.day == day]
        known = [reading for reading in here if reading.mgdl is not None]
        if not known:
            continue
        if bands is None:
            rows.append((day, sum(r.mgdl * r.weight for r in known), minutes_of(known)))
        else:
            rows.append((day, sum(r.weight for r in here if r.band in bands), minutes_of(here)))
    return rows


def resemblance(days, a):
    more = (1 + a) / (1 - a) - 2 * a * (1 - a ** days) / (days * (1 - a) ** 2)
    return more / (1 - (more - 1) / (days - 1)), max(1, days / more - 1)


def correlation(pulls):
    products = pairs = days = 0
    for rows, pull in pulls:
        own = sum(one * one for one in pull)
        if own == 0:
            continue
        days += len(pull)
        for i in range(1, len(pull)):
            if (rows[i][0] - rows[i - 1][0]).days == 1:
                products += pull[i] * pull[i - 1] / (own / len(pull))
                pairs += 1
    if pairs < 8:
        return 0.3
    n = days / len(pulls)
    likely = (products / pairs + 1 / n) / max(0.3, 1 - 4 / n) + 0.5 / math.sqrt(pairs)
    return min(0.6, max(0.3, likely))


def around(value, reach, share):
    if not 0 < value < (1 if share else math.inf):
        return reach, reach
    if share:
        to, back, slope = (lambda x: math.log(x / (1 - x))), (lambda x: 1 / (1 + math.exp(-x))), 1 / (value * (1 - value))
    else:
        to, back, slope = math.log, math.exp, 1 / value
    return value - back(to(value) - reach * slope), back(to(value) + reach * slope) - value


def drawn(rows, seed):
    days = len(rows)
    block = 2 if days < 20 else 3
    chance = mulberry32(seed)
    found = []
    for _ in range(1000):
        taken = []
        while len(taken) < days:
            start = math.floor(next(chance) * days)
            taken += [(start + step) % days for step in range(block)][:days - len(taken)]
        found.append(sum(rows[i][1] for i in taken) / sum(rows[i][2] for i in taken))
    return found


def change(of, then, now):
    share, rare = of != 'mean', WANTED[of][1]
    value = lambda rows: sum(top for _, top, _ in rows) / sum(bottom for *_, bottom in rows)
    a, b = value(then), value(now)
    found = {'before': a, 'now': b}
    even = lambda rows: sum(top for _, top, _ in rows) ** 2 / sum(top * top for _, top, _ in rows) if any(top for _, top, _ in rows) else 0
    if rare and 0 < even(then) + even(now) < 6:
        return {**found, 'why': 'few-seen'}
    pulls = [(rows, [(top - level * bottom) / sum(one for *_, one in rows) for _, top, bottom in rows]) for rows, level in ((then, a), (now, b))]
    alike = correlation(pulls)
    errors = []
    for rows, pull in pulls:
        times, degrees = resemblance(len(rows), alike)
        errors.append((sum(one * one for one in pull) * len(rows) / (len(rows) - 1) * times, degrees))
    (va, da), (vb, db) = errors
    if va + vb <= 0:
        return {**found, 'why': 'none-seen'}
    welch = max(2, math.floor((va + vb) ** 2 / (va ** 2 / da + vb ** 2 / db)))
    t = student(0.975, welch)
    reach = [t * math.sqrt(va), t * math.sqrt(vb)]
    ends = [((reach[0], reach[0]), (reach[1], reach[1])), (around(a, reach[0], share), around(b, reach[1], share))]
    if rare:
        sides = []
        for rows, level, (variance, degrees) in ((then, a, errors[0]), (now, b, errors[1])):
            if level > 0:
                own = student(0.975, max(2, math.floor(min(degrees, even(rows)))))
                sides.append(around(level, own * math.sqrt(variance), share))
            else:
                sides.append((0, -math.log(0.025) * ONCE[of] / sum(bottom for *_, bottom in rows)))
        ends.append(tuple(sides))
    again = sorted(y - x for x, y in zip(drawn(then, SEEDS['then']), drawn(now, SEEDS['now'])))
    tail = NormalDist().cdf(-t * math.sqrt((welch + 1) / welch))
    at = lambda p: again[math.floor(p * (len(again) - 1) + 0.5)]
    low = min([at(tail)] + [b - a - math.hypot(second[0], first[1]) for first, second in ends])
    high = max([at(1 - tail)] + [b - a + math.hypot(second[1], first[0]) for first, second in ends])
    low, high = max(-a, low), min((1 if share else math.inf) - a, high)
    sure = (low > 0 or high < 0) and abs(b - a) >= SMALLEST[of]
    return {**found, 'low': low, 'high': high, 'told': sure}


def changes(rows, first, last, target_set):
    everything = [Reading(row, LIMITS[target_set]) for row in rows]
    weigh(everything)
    days = (last - first).days + 1
    before = first - timedelta(days=days), first - timedelta(days=1)

    def full(begin, end):
        wanted = [begin + timedelta(days=n) for n in range(days)]
        held = day_minutes(everything, wanted)
        return sum(minutes_of([r for r in everything if r.day == day]) >= 0.7 * held[day] for day in wanted)
    found = {'from': first.isoformat(), 'to': last.isoformat(), 'set': target_set, 'fullDays': [full(*before), full(first, last)]}
    judged = min(found['fullDays']) >= 10
    found['changes'] = {}
    for of, (bands, _) in WANTED.items():
        then, now = per_day(everything, *before, bands), per_day(everything, first, last, bands)
        found['changes'][of] = change(of, then, now) if judged else {'why': 'few-days'}
    return found


if __name__ == '__main__':
    of_readings(changes)
