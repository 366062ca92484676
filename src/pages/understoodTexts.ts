import type { Speaker } from '../language/index.ts';
import type { Choice } from '../model/input.ts';
import type { Quantity } from '../model/quantity.ts';
import { word } from './context.ts';

/** What a reader says of a choice: the form of its data, and the text of `understood` that says it. */
type Form = readonly [form: RegExp, text: string];

const NUMBER = String.raw`(-?\d+(?:\.\d+)?)`;
const fixed = (text: string, key: string): Form => [new RegExp(`^${text}$`), key];
const numbers = (text: string, key: string): Form => fixed(text.replaceAll('#', NUMBER), key);
/** Which row, as written in the file: never grouped in thousands. */
const LINE: Form = fixed(String.raw`line (\d+)`, 'line');
const ORDERS = ['day-first', 'month-first', 'year-first'].map((order) => fixed(order, order));

/** Values by choice. What stands in no list is a name, a mark or a zone, and is shown as it is. */
const VALUES: Readonly<Record<string, readonly Form[]>> = {
  delimiter: [fixed('tab', 'tab')],
  header: [LINE, fixed('none', 'none')],
  clock: [
    fixed('date and time in one column', 'one-column'),
    fixed('date and time in two columns', 'two-columns'),
    fixed('dates without a time', 'dates-only'),
    fixed('seconds', 'seconds'),
    fixed('millis', 'millis'),
    fixed('serial', 'serial'),
  ],
  'date-order': ORDERS,
  'half-of-day': [fixed('order of rows', 'row-order')],
  'glucose-kind': [fixed('sensor', 'sensor'), fixed('finger stick', 'finger-stick')],
  layout: [fixed('columns', 'columns')],
};

const EVIDENCE: Readonly<Record<string, readonly Form[]>> = {
  encoding: [
    fixed('byte-order mark', 'byte-order-mark'),
    fixed('valid UTF-8', 'valid-utf-8'),
    fixed('zero bytes at every other place', 'zero-bytes'),
  ],
  delimiter: [numbers('# fields in # of # rows', 'fields')],
  header: [fixed('columns told by what is in them', 'by-content')],
  clock: [fixed('00:00 in every row', 'every-midnight')],
  'date-order': [
    fixed('same date either way', 'same-date'),
    fixed('other order lies in the future', 'other-order-future'),
    numbers('# of # day steps', 'day-steps'),
  ],
  'serial-dates': [fixed('the other count lies in the future', 'other-count-future')],
  'decimal-mark': [numbers('# of # cells', 'cells')],
  unit: [
    fixed('unit written in each row', 'unit-in-rows'),
    fixed('unit text', 'unit-text'),
    numbers('# values from # to #, with decimals', 'values-with-decimals'),
    numbers('# values from # to #, whole numbers', 'values-whole'),
  ],
  'glucose-kind': [numbers('# min between values', 'minutes-between')],
  values: [fixed(String.raw`(.*): (\d+) of (\d+)`, 'same-of')],
};

/** What issues show that a reader worked out; the rest of what they show stands in a file. */
const SHOWN: Readonly<Record<string, readonly Form[]>> = {
  'sparse-glucose': EVIDENCE['glucose-kind']!,
  'date-order-contradicts-file': ORDERS,
};

/** Number of parts a text takes, in the order of the data. */
const NAMES = ['a', 'b', 'c'] as const;

function said(speaker: Speaker, forms: readonly Form[] | undefined, data: string): string {
  for (const [form, key] of forms ?? []) {
    const parts = form.exec(data)?.slice(1);
    if (!parts) continue;
    const quantity = (part: string): Quantity =>
      key !== 'line' && /^-?\d+(\.\d+)?$/.test(part)
        ? word(speaker.number(Number(part), part.split('.')[1]?.length ?? 0))
        : word(part);
    const params = Object.fromEntries(parts.map((part, i) => [NAMES[i] ?? 'd', quantity(part)]));
    return speaker.repeat({ key: `understood.${key}`, params });
  }
  return data;
}

/** The value of a choice as the paper says it: names and marks of the file unchanged, our own words in its language. */
export function valueText(speaker: Speaker, { id, value }: Choice): string {
  if (id !== 'columns') return said(speaker, VALUES[id], value);
  return value.replace(/ = ([a-z-]+)(?=, |$)/g, (whole, role: string) => {
    const known = speaker.sayIfKnown(`understood.roles.${role}`);
    return known === null ? whole : ` = ${known}`;
  });
}

export const evidenceText = (speaker: Speaker, { id, evidence }: Choice): string =>
  said(speaker, EVIDENCE[id], evidence ?? '');

/** What an issue found or expected, as the paper says it. */
export const shownText = (speaker: Speaker, code: string, text: string | undefined): string =>
  said(speaker, SHOWN[code], text ?? '').replace(
    /\(line (\d+)\)/g,
    (_, n: string) => `(${speaker.say('understood.line', { a: word(n) })})`,
  );
