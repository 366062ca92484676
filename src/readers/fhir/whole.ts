import type { Choice, ReadSettings } from '../../model/input.ts';
import type { IssueBook } from '../book.ts';
import { bothUnits } from '../glucose/unit.ts';
import type { FhirReading } from './reading.ts';

/** Tells what holds of a file as a whole once its resources are read: unit, what was not used, zone. Gives the zone it names. */
export function tellWhole(
  reading: FhirReading,
  settings: ReadSettings,
  book: IssueBook,
  choices: Choice[],
): string | undefined {
  tellUnit(reading, book, choices);
  for (const [code, count] of reading.often) book.add(code, 'note', 0, { count });
  const { ignored, units, zones } = reading;
  const { from, to } = reading.results;
  const actual = from === '' ? ({ is: 'no-period' } as const) : ({ is: 'days', from, to } as const);
  for (const [what, count] of ignored)
    if (what !== 'summary') book.add('resource-ignored', 'note', 0, { actual: what, count });
    else if (units.size > 0) book.add('results-ignored', 'note', 0, { actual, count });
  if (ignored.has('summary') && units.size === 0) book.add('results-only', 'warning', 0, { actual });
  const [first] = zones;
  const zone = settings.zone === undefined && zones.size === 1 ? first : undefined;
  if (settings.zone) choices.push({ id: 'zone', value: settings.zone, by: 'user' });
  else if (zone !== undefined) choices.push({ id: 'zone', value: zone, by: 'file', evidence: { is: 'tz-code' } });
  if (zones.size > 1)
    book.add('zones-in-file', 'warning', 0, {
      actual: [...zones].map((name) => ({ is: 'named', name })),
      question: { of: 'zone' },
    });
  return zone;
}

function tellUnit({ units, byText, coded, bare, unit }: FhirReading, book: IssueBook, choices: Choice[]): void {
  if (units.size > 0) {
    const [unit, other] = units;
    const value = other === undefined ? unit! : 'both';
    choices.push({ id: 'unit', value, by: 'file', evidence: { is: byText ? 'unit-text' : 'ucum' } });
  }
  if (coded && unit)
    book.add('unit-coded', 'refusal', coded.line, { actual: coded.unit, expected: unit, question: { of: 'unit' } });
  if (bare.count > 0 && units.size === 0) {
    book.add('unit-unclear', 'refusal', bare.line, {
      actual: { is: 'values-seen', count: bare.count, low: bare.low, high: bare.high },
      expected: bothUnits(bare.high, bare.line),
      question: { of: 'unit', answer: 'mg/dL' },
    });
  }
}
