import fc from 'fast-check';
import { DateTime } from 'luxon';
import { describe, expect, it } from 'vitest';
import { HOUR_MS, MINUTE_MS, midnightOf } from '../../src/time/calendar.ts';
import { firstInstantFrom, instantsOf, wallAt } from '../../src/time/clock.ts';
import { isZone, zoneClock } from '../../src/time/zone.ts';

/** Offset in minutes as the runtime's own IANA data tell it (ECMA-402), apart from the library under src/time. */
function offsetIn(format: Intl.DateTimeFormat, at: number): number {
  const found = /GMT([+-])(\d\d):(\d\d)/.exec(format.format(at));
  return found ? (found[1] === '-' ? -1 : 1) * (Number(found[2]) * 60 + Number(found[3])) : 0;
}

// Changes of offset as the compiled IANA tz database 2025b lists them (zdump): instant in UTC, minutes before, after.
const CHANGES: [zone: string, at: string, before: number, after: number][] = [
  ['Europe/Helsinki', '2025-03-30T01:00', 120, 180],
  ['Europe/Helsinki', '2025-10-26T01:00', 180, 120],
  ['America/New_York', '2025-03-09T07:00', -300, -240],
  ['America/New_York', '2025-11-02T06:00', -240, -300],
  ['Australia/Lord_Howe', '2025-04-05T15:00', 660, 630],
  ['Australia/Lord_Howe', '2025-10-04T15:30', 630, 660],
  ['Antarctica/Troll', '2025-03-30T01:00', 0, 120],
  ['Africa/Casablanca', '2025-02-23T02:00', 60, 0],
  ['Africa/Casablanca', '2025-04-06T02:00', 0, 60],
  ['Asia/Beirut', '2025-03-29T22:00', 120, 180],
  ['Africa/Cairo', '2025-10-30T21:00', 180, 120],
  ['America/Santiago', '2025-09-07T04:00', -240, -180],
  ['America/Havana', '2025-11-02T05:00', -240, -300],
  ['America/Sao_Paulo', '2018-11-04T03:00', -180, -120],
  ['Asia/Pyongyang', '2015-08-14T15:00', 540, 510],
  ['Pacific/Chatham', '2025-04-05T14:00', 825, 765],
  ['America/Boa_Vista', '2000-10-08T04:00', -240, -180],
  ['America/Boa_Vista', '2000-10-15T03:00', -180, -240],
  ['Europe/Volgograd', '2020-12-26T22:00', 240, 180],
  ['Pacific/Apia', '2011-12-30T10:00', -600, 840],
];

const utc = (text: string) => Date.parse(`${text}Z`);
const around = (zone: string, at: number) => zoneClock(zone, at - 90 * 24 * HOUR_MS, at + 90 * 24 * HOUR_MS);

describe('a zone', () => {
  it.each(CHANGES)('%s changes at %s from %d to %d minutes', (zone, text, before, after) => {
    const at = utc(text);
    const clock = around(zone, at);
    expect(wallAt(clock, at - 1) - (at - 1)).toBe(before * MINUTE_MS);
    expect(wallAt(clock, at) - at).toBe(after * MINUTE_MS);
  });

  // Wall clock in, instants out. Dates and hours follow from the changes listed above.
  it.each([
    ['Europe/Helsinki', '2025-03-30T02:59:59', ['2025-03-30T00:59:59']],
    ['Europe/Helsinki', '2025-03-30T03:00', []],
    ['Europe/Helsinki', '2025-03-30T03:59', []],
    ['Europe/Helsinki', '2025-03-30T04:00', ['2025-03-30T01:00']],
    ['Europe/Helsinki', '2025-10-26T02:59', ['2025-10-25T23:59']],
    ['Europe/Helsinki', '2025-10-26T03:30', ['2025-10-26T00:30', '2025-10-26T01:30']],
    ['Europe/Helsinki', '2025-10-26T04:00', ['2025-10-26T02:00']],
    ['America/New_York', '2025-03-09T02:30', []],
    ['America/New_York', '2025-11-02T01:30', ['2025-11-02T05:30', '2025-11-02T06:30']],
    ['Australia/Lord_Howe', '2025-04-06T01:29', ['2025-04-05T14:29']],
    ['Australia/Lord_Howe', '2025-04-06T01:30', ['2025-04-05T14:30', '2025-04-05T15:00']],
    ['Australia/Lord_Howe', '2025-04-06T02:00', ['2025-04-05T15:30']],
  ])('%s shows %s at %j', (zone, wall, instants) => {
    const clock = around(zone, utc(wall));
    expect(instantsOf(clock, utc(wall))).toEqual(instants.map(utc));
  });

  // A day may begin after midnight or hold 23, 24, 25 hours, or none at all where a date was left out.
  it.each([
    ['Europe/Helsinki', '2025-03-30', 1380],
    ['Europe/Helsinki', '2025-03-31', 1440],
    ['Europe/Helsinki', '2025-10-26', 1500],
    ['America/New_York', '2025-11-02', 1500],
    ['Australia/Lord_Howe', '2025-04-06', 1470],
    ['America/Santiago', '2025-09-07', 1380],
    ['America/Havana', '2025-11-02', 1500],
    ['Antarctica/Troll', '2025-03-30', 1320],
    ['Pacific/Apia', '2011-12-30', 0],
  ])('%s: %s has %d minutes', (zone, date, minutes) => {
    const midnight = midnightOf(date);
    const clock = around(zone, midnight);
    const start = firstInstantFrom(clock, midnight);
    expect((firstInstantFrom(clock, midnight + 24 * HOUR_MS) - start) / MINUTE_MS).toBe(minutes);
  });

  // What an engine knows of the years to come is as old as the engine: the years before it was made are compared.
  it('agrees with the runtime on every zone, month by month from 1990 to 2025', () => {
    const differ = Intl.supportedValuesOf('timeZone')
      .filter(isZone)
      .flatMap((zone) => {
        const format = new Intl.DateTimeFormat('en-US', { timeZone: zone, timeZoneName: 'longOffset' });
        const clock = zoneClock(zone, utc('1990-01-01T00:00'), utc('2026-01-01T00:00'));
        const months = Array.from({ length: 36 * 12 }, (_, i) => Date.UTC(1990, i, 10, 5));
        const wrong = months.filter((at) => (wallAt(clock, at) - at) / MINUTE_MS !== offsetIn(format, at));
        return wrong.map((at) => `${zone} ${new Date(at).toISOString()}`);
      });
    expect(differ).toEqual([]);
  });

  it('knows every zone that the runtime knows', () => {
    const strange = Intl.supportedValuesOf('timeZone').filter((zone) => zone.includes('/') && !zone.startsWith('Etc/'));
    expect(strange.filter((zone) => !isZone(zone))).toEqual([]);
  });

  it('finds every instant by what the wall shows', () => {
    const zones = fc.constantFrom(...Intl.supportedValuesOf('timeZone').filter(isZone));
    const instants = fc.integer({ min: utc('1995-01-01T00:00'), max: utc('2049-01-01T00:00') });
    fc.assert(
      fc.property(zones, instants, (zone, at) => {
        const clock = zoneClock(zone, at - 40 * 24 * HOUR_MS, at + 40 * 24 * HOUR_MS);
        expect(instantsOf(clock, wallAt(clock, at))).toContain(at);
      }),
    );
  });

  it('agrees with a general date library on which instants a wall clock may mean', () => {
    const near = fc.tuple(fc.constantFrom(...CHANGES), fc.integer({ min: -300, max: 300 }));
    fc.assert(
      fc.property(near, ([[zone, text, , after], minutes]) => {
        const wall = utc(text) + (after + minutes) * MINUTE_MS;
        const local = DateTime.fromMillis(wall, { zone: 'UTC' }).setZone(zone, { keepLocalTime: true });
        const possible = local
          .getPossibleOffsets()
          .filter(
            (found) =>
              found.toFormat('yyyyMMddHHmm') === DateTime.fromMillis(wall, { zone: 'UTC' }).toFormat('yyyyMMddHHmm'),
          )
          .map((found) => found.toMillis());
        expect(instantsOf(around(zone, utc(text)), wall)).toEqual(possible.sort((a, b) => a - b));
      }),
    );
  });

  it('is not drawn out by a hostile date', () => {
    const clock = zoneClock('Europe/Helsinki', Number.NEGATIVE_INFINITY, Number.POSITIVE_INFINITY);
    expect(clock.from.length).toBeLessThan(300);
  });

  it.each([
    ['Europe/Helsinki', true],
    ['America/Argentina/Buenos_Aires', true],
    ['UTC', true],
    ['America/Port-au-Prince', true],
    ['europe/helsinki', false],
    ['EST', false],
    ['IST', false],
    ['CET', false],
    ['+02:00', false],
    ['GMT+3', false],
    ['Etc/GMT+3', false],
    ['Mars/Base', false],
    ['', false],
    ['Europe/Helsinki; rm -rf', false],
  ])('%s is a zone: %s', (name, is) => {
    expect(isZone(name)).toBe(is);
  });

  it('refuses an unknown zone', () => {
    expect(() => zoneClock('Mars/Base', 0, 1)).toThrow(RangeError);
  });
});
