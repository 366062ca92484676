import type { Input } from '../../src/model/input.ts';
import { chance } from '../../src/stats/chance.ts';
import { layoutAnswer } from './answers.ts';
import type { ClockChange } from './clockChange.ts';
import type { Making } from './columns.ts';
import { DEFECTS } from './defects.ts';
import { isOpenFormat } from './openRecords.ts';
import { render } from './render.ts';
import { isByHand, isTwoFiles, isUnitWrong, pick, type Shape } from './shape.ts';
import { sheetsOf, zoneNamed } from './table.ts';
import { TIME_FORMS } from './timeForms.ts';
import { type TrueNote, type TrueReading, truthOf } from './truth.ts';
import { words as allWords, UNKNOWN_KINDS } from './words.ts';

export interface Place {
  sheet: string;
  line: number;
}

/** A written shape with everything that must come back, fixed before anything is read. */
export interface Written {
  shape: Shape;
  inputs: Input[];
  readings: (TrueReading & Place)[];
  notes: (TrueNote & Place)[];
  /** Lines that must be set aside; lines that may be. */
  bad: Place[];
  loose: Set<string>;
  /** Every line that holds data. */
  offset: number;
  change?: ClockChange;
  /** Whether instants must be real ones. */
  offsetWritten: boolean;
  zone: string;
  /** Why a question is fair. Closed when empty. */
  open: string[];
  /** Why it must be refused, whatever is answered. */
  never: string[];
  /** Nobody can answer: a refusal is right, and ends it. */
  final: boolean;
  /** The file names a unit that its numbers contradict: right numbers without a question are luck. */
  mustAsk: boolean;
  answers: {
    unit: 'mg/dL' | 'mmol/L';
    dateOrder?: 'day-first' | 'month-first' | 'year-first';
    /** The lines of a layout that a question about this field asks for. */
    layout(sheet: string, field: string): object;
  };
}

export const placeKey = ({ sheet, line }: Place): string => `${sheet}:${line}`;

/** The printed list of what makes a shape open. */
function openReasons({ shape, form, truth }: Making): string[] {
  const open: string[] = [];
  const add = (holds: boolean, why: string) => holds && open.push(why);
  const days = truth.readings.map(({ wall }) => new Date(wall).getUTCDate());
  const fits = truth.readings.every(({ native }) => native >= 10 && native <= 55.5);
  add(shape.unitAt === 'nowhere' && fits, 'no unit is named and the values fit both');
  add(form.order !== undefined && days.every((day) => day <= 12), 'every day is up to 12');
  add(
    shape.notes.startsWith('kind-') && UNKNOWN_KINDS.includes(shape.vocabulary),
    'the words of the kinds are unknown',
  );
  add(shape.secondClock === 'nameless', 'two clocks without a label');
  add(shape.second === 'twin' || shape.second === 'nameless-few', 'two columns of glucose without a label');
  add(form.world === true, 'world time only');
  add(shape.container === 'counted', 'minutes since a start that is not said');
  add(shape.container === 'yearless', 'no year is said');
  add(shape.header === 'absent' && (shape.decoy !== 'none' || shape.secondClock !== 'none'), 'columns without names');
  add(shape.unitAt === 'foreign' || isUnitWrong(shape), 'the unit named is unknown or cannot be');
  return open;
}

const NEVER: Record<string, string> = {
  'two-column': 'two people',
  'two-last-names': 'two people',
  'two-records': 'two people',
  'two-emails': 'two people',
  'two-files': 'two people',
  'two-ids': 'two people',
  'two-unclear': 'two people, unclear',
};

export function write(shape: Shape): Written {
  const next = chance(shape.seed);
  const words = allWords.get(shape.language)!;
  const form = TIME_FORMS[shape.time]!;
  const truth = truthOf(shape, words, form.seconds === true, next);
  if (shape.person === 'two-unclear')
    truth.readings.forEach((reading, k) => {
      if (k % 2 === 1 && reading.limit === 0) reading.native = Math.round(reading.native * 16) / 10;
    });
  const making: Making = { shape, words, form, truth, next };
  const open = openReasons(making);
  const sheets = sheetsOf(making);
  const spoilt = shape.container === 'two-files' || isTwoFiles(shape) ? pick(sheets, next) : sheets[0]!;
  const wanted =
    shape.container === 'wide' || isOpenFormat(shape) || isByHand(shape)
      ? undefined
      : DEFECTS[shape.defect]!(spoilt.name === 'notes' ? sheets[0]! : spoilt, making);
  if (wanted?.open) open.push(wanted.open);
  const { inputs, lineOf } = render(sheets, shape);
  const readings: Written['readings'] = [];
  const notes: Written['notes'] = [];
  const bad: Place[] = [];
  const loose = new Set<string>();
  for (const sheet of sheets)
    for (const line of sheet.lines) {
      const place = { sheet: sheet.name, line: lineOf.get(line)! };
      for (const reading of line.readings) readings.push({ ...reading, ...place });
      for (const note of line.notes) notes.push({ ...note, ...place });
      if (line.is === 'bad') bad.push(place);
      if (line.is === 'free' || line.is === 'head' || wanted?.loose?.has(line)) loose.add(placeKey(place));
    }
  return {
    shape,
    inputs,
    readings,
    notes,
    bad,
    loose,
    offset: truth.offset,
    ...(truth.change ? { change: truth.change } : {}),
    offsetWritten: form.offset === true || form.world === true,
    zone: zoneNamed(making),
    open,
    final: wanted?.final === true || shape.unitAt === 'foreign',
    mustAsk: isUnitWrong(shape),
    never: NEVER[shape.person] ? [NEVER[shape.person]!] : [],
    answers: {
      unit: shape.unit as 'mg/dL' | 'mmol/L',
      ...(form.order ? { dateOrder: form.order } : {}),
      layout: (name, field) => {
        const sheet = sheets.find((one) => one.name === name) ?? sheets[0]!;
        return layoutAnswer(sheet, lineOf, making, field);
      },
    },
  };
}
