import { describe, expect, test } from 'vitest';
import { messageParams, type Speaker, speakerOf } from '../../src/language/index.ts';
import type { LocalDate } from '../../src/model/glucose.ts';
import type { Params } from '../../src/model/quantity.ts';
import { targetSets } from '../../src/targets/index.ts';
import { english } from '../support/english.ts';

const targets = targetSets.adult;

/** A speaker of messages made up here, whose keys no type knows. */
type Loose = Omit<Speaker, 'say'> & { say(key: string, params?: Params): string };

function speaking(messages: object, base: object = {}): Loose {
  const words = { id: 'xx', locale: 'en-US', direction: 'ltr', units: english.units, ...base, m: messages };
  return speakerOf(words, { unit: 'mg/dL', voice: 'clinic', targets }) as unknown as Loose;
}

describe('saying', () => {
  test('a count chooses the plural arm and is printed with the thousands mark', () => {
    const speaker = speaking({ rows: '{n, plural, one {# row} other {{n} rows}} of {unit}' });
    expect(speaker.say('m.rows', { n: { q: 'count', value: 1 } })).toBe('1 row of mg/dL');
    expect(speaker.say('m.rows', { n: { q: 'count', value: 6612 } })).toBe('6,612 rows of mg/dL');
  });

  test('a part of a count chooses by what is printed', () => {
    const speaker = speaking({ h: '{n, plural, one {# hour} other {# hours}}' });
    expect(speaker.say('m.h', { n: { q: 'count', value: 1.2 } })).toBe('1\u00a0hour');
  });

  test('dates are named up to three, then counted by the message', () => {
    const speaker = speaking({ when: '{dates, select, few {on {dates}} other {on many days}}' });
    const dates = (n: number) => ({
      dates: { q: 'dates' as const, value: Array.from({ length: n }, (_, i) => `2024-06-0${i + 1}` as LocalDate) },
    });
    expect(speaker.say('m.when', dates(2))).toBe('on June 1 and June 2');
    expect(speaker.say('m.when', dates(4))).toBe('on many days');
  });

  test('empty arms leave no double spaces', () => {
    const speaker = speaking({ s: 'One. {w, select, a {} other {Two.}} Three. {w, select, a {} other {}}' });
    expect(speaker.say('m.s', { w: { q: 'word', value: 'a' } })).toBe('One. Three.');
  });

  test('text from a file is printed as it stands, braces and all', () => {
    const speaker = speaking({ s: 'Noted: {text}' });
    expect(speaker.say('m.s', { text: { q: 'word', value: "{n} <b> '#'" } })).toBe("Noted: {n} <b> '#'");
  });
});

describe('refusing', () => {
  test.each([
    ['a missing key', 'm.none', {}, 'm.none'],
    ['a branch instead of a message', 'm', {}, 'm'],
    ['an inherited name', 'm.constructor', {}, 'm.constructor'],
    ['a missing parameter', 'm.needs', {}, '{what}'],
    ['a malformed message', 'm.broken', {}, 'm.broken'],
  ])('%s is named', (_, key, params, named) => {
    const speaker = speaking({ needs: 'Give {what}', broken: '{n, plural, one {#}' });
    expect(() => speaker.say(key, params)).toThrow(named);
    if (key === 'm.none') expect(speaker.sayIfKnown(key)).toBe(null);
  });

  test('a limit the set does not have', () => {
    const speaker = speakerOf(english, { unit: 'mg/dL', voice: 'clinic', targets: targetSets['pregnancy-type-1'] });
    expect(() => speaker.value({ q: 'limit', of: 'very-high' })).toThrow('pregnancy-type-1');
  });

  test.each([[null], ['text'], [{ id: 'en' }], [{ id: 'en', locale: 'en-US', direction: 'up' }]])(
    'words that are not a language: %j',
    (words) => {
      expect(() => speakerOf(words, { unit: 'mg/dL', voice: 'clinic', targets })).toThrow(/words of a language/);
    },
  );
});

describe('other languages', () => {
  test('the locale settles clock, order, marks and decimals', () => {
    const british = speaking({}, { locale: 'en-GB' });
    expect(british.value({ q: 'date', value: '2024-06-04' as LocalDate })).toBe('Tue 4 June');
    expect(british.value({ q: 'clock', value: 160 })).toBe('02:40');
    const argentine = speaking({}, { locale: 'es-AR' });
    expect(argentine.number(1234.5, 1)).toBe('1.234,5');
    expect(() => speaking({}, { locale: 'xx-XX' })).toThrow(/No forms for the locale "xx-XX"/);
  });

  test('in right-to-left text numbers and units are isolated', () => {
    const speaker = speaking({ s: '{x}' }, { direction: 'rtl' });
    expect(speaker.say('m.s', { x: { q: 'minutes', value: 55 } })).toBe('\u206655\u00a0min\u2069');
  });
});

test('parameters of a message, in all its arms', () => {
  expect([...messageParams('{a} {b, select, x {{c}} other {{d, plural, other {#}}}}', 'en-US')].sort()).toEqual([
    'a',
    'b',
    'c',
    'd',
  ]);
});
