import { expect, test } from 'vitest';
import { measure } from '../../src/measures/index.ts';
import { targetSets } from '../../src/targets/index.ts';
import { type NoteOn, timelineOf } from '../support/timeline.ts';

/** How near an alarm stands to a low is ours. A low from 10:00 to 10:30 on the first day, another on the third. */
const value = (minute: number, day: number) => (day !== 1 && minute >= 600 && minute < 630 ? 60 : 110);
const note = (minute: number, day = 0, kind: NoteOn['kind'] = 'alarm'): NoteOn => ({ day, minute, kind });

function alarmsOf(...notes: NoteOn[]) {
  const { alarms } = measure(timelineOf({ days: 3, value, notes }), targetSets.adult);
  if (!alarms.ok) throw new Error(alarms.why);
  return alarms.value;
}

test.each([
  [584, 0],
  [585, 1],
  [600, 1],
  [630, 1],
  [631, 0],
])('an alarm belongs to a low from 15 minutes before it to its end: minute %i, %i', (minute, lowsWith) => {
  expect(alarmsOf(note(minute))).toMatchObject({ lowsWith, lows: 2, noted: 1 });
});

test.each([
  [539, 1],
  [540, 0],
  [690, 0],
  [691, 1],
])('it stands apart from an hour before to an hour after any low: minute %i, %i', (minute, expected) => {
  expect(alarmsOf(note(minute)).withoutLow).toBe(expected);
});

test('nights end at six; days and alarms are counted, other notes are not', () => {
  const found = alarmsOf(note(359), note(100), note(360), note(359, 2), note(600, 2, 'meal'), note(10, 1, 'insulin'));
  expect(found).toMatchObject({ noted: 4, days: 2, lowsWith: 0 });
  expect(found.nights).toEqual([
    { date: '2026-03-02', alarms: 2 },
    { date: '2026-03-04', alarms: 1 },
  ]);
});

test('nothing is said where none was noted', () => {
  const { alarms } = measure(timelineOf({ days: 3, value, notes: [note(600, 0, 'meal')] }), targetSets.adult);
  expect(alarms).toEqual({ ok: false, why: 'none-noted' });
});
