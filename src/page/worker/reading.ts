import { type Analysis, intake, type Refusal } from '../../analyse.ts';
import { nameInside } from '../../clinic/analysed.ts';
import { failedIn } from '../../clinic/facts.ts';
import { visitChoices } from '../../compose.ts';
import { analyse } from '../../index.ts';
import type { Place, Words } from '../../language/index.ts';
import type { Input } from '../../model/input.ts';
import type { Agreed } from '../../model/visits.ts';
import { agreedFrom } from '../../papers/agreedForm.ts';
import { namedFor, withNames } from '../../papers/alias.ts';
import { ownWords } from '../../papers/own.ts';
import { stemOf } from '../../papers/safeName.ts';
import { issueMessage, type Teller } from '../../papers/teller.ts';
import { choiceRows, columnRows } from '../../papers/understood.ts';
import type { Wanted } from '../../papers/wanted.ts';
import { openWorkbooks } from '../../readers/containers/workbook.ts';
import type { FileSeen, Read, Wish } from '../messages.ts';
import { questionsIn } from './asking.ts';
import { baseOf, type Shelf } from './files.ts';
import { linesOf, withoutOptions } from './said.ts';
import { isRecord, settle } from './settling.ts';

/** Rows that were not used are all in the file that is saved; so many are shown. */
const SHOWN = 500;

/** A person whose papers can be made. */
export interface Current {
  analysis: Analysis;
  /** The files that it was read from, opened. */
  inputs: readonly Input[];
  words: Words;
  place: Place;
  stem: string;
  wanted: Wanted;
}

/** Files by the names that the command reads them by: in a folder of people by where they lie within a person's own. */
export function inputsOf({ bytes }: Shelf, { person, ofMany }: Wish): Input[] {
  return person.files.flatMap((path, i) => {
    const content = bytes.get(path);
    const name = ofMany && person.person ? nameInside(person.person.files[i]!) : baseOf(path);
    return content === undefined ? [] : [{ name, bytes: content }];
  });
}

/** Reads one person's files as the command does, and says what came of it. */
export async function readPerson(
  shelf: Shelf,
  wish: Wish,
  words: { place: Place; own: Words; tell: Teller; forms: readonly Teller[] },
): Promise<{ read: Read; current?: Current }> {
  const { tell, place } = words;
  const settledWish = settle(shelf, wish, place, words.forms);
  if ('issues' in settledWish) {
    return { read: { ...nothing, lines: linesOf(tell, settledWish.issues, (text) => text) } };
  }
  const { wanted, holds } = settledWish;
  const { inputs, own, aliases, renamed } = namedFor(wanted.settings.person, inputsOf(shelf, wish));
  const opened = await openWorkbooks(inputs);
  const settings = withNames(wanted.settings, renamed);
  const analysis = analyse(opened, settings);
  const columns = columnsOf(opened, settings, analysis);
  const read: Read = {
    ok: analysis.ok,
    files: analysis.files.map((file, i) => seen(tell, file, columns[i] ?? [], own)),
    lines: linesOf(tell, analysis.issues, own),
    asked: questionsIn(tell, analysis.issues, {
      ...{ inputs: opened, own },
      unitIn: isRecord(settings.layout) && 'unit' in settings.layout ? 'layout' : 'settings',
    }),
    setAside: analysis.setAside.slice(0, SHOWN).map(({ file, line, ...one }) => ({
      ...{ file: own(file), line },
      reason: own(withoutOptions(issueMessage(tell, { ...one, level: 'warning', origin: { file, line } }))),
    })),
    allRows: analysis.files.length > 1 ? tell.say('cli.told.rows', { ...analysis.ledger }) : '',
    renamed: aliases.map(({ alias, file }) => ({ file, as: alias })),
    failed: [],
    ...{ topics: [], draft: [], remarks: false, written: wanted.agreed },
    holds,
  };
  if (!analysis.ok) return { read };
  const { from, to, days, chosenBy } = analysis.timeline;
  const date = (value: typeof from): string => tell.speaker.value({ q: 'date', value }, 'full');
  const sentence = tell.say(`cli.told.period.${chosenBy}`, { days: days.length, from: date(from), to: date(to) });
  return {
    read: {
      ...read,
      ...visitChoices(analysis, words.own),
      failed: failedIn(analysis),
      unit: unitOf(analysis),
      period: { sentence, from, to, days: days.length },
    },
    current: {
      ...{ analysis, inputs: opened, words: await ownWords(wanted.place), place: wanted.place, wanted },
      stem: wish.ofMany ? wish.person.stem : stemOf(wanted.settings.person.code, wish.person.stem, wish.person.stem),
    },
  };
}

/** A person with the words of a visit: checked as a file of them is. */
export const withTyped = (current: Current, typed: Agreed): Current => ({
  ...current,
  wanted: { ...current.wanted, agreed: agreedTyped(typed) },
});

export function agreedTyped(typed: Agreed): Agreed | null {
  if (Object.keys(typed).length === 0) return null;
  const read = agreedFrom(JSON.stringify(typed), []);
  if (!read.ok) throw new Error(read.problems.join('; '));
  return read.agreed;
}

/** Where a file names its unit, nobody can say another. */
const BY_NUMBERS: readonly string[] = ['values-with-decimals', 'values-whole', 'values-above', 'no-number'];

function unitOf({ files, timeline }: Analysis): NonNullable<Read['unit']> {
  const open = files.some(({ choices }) =>
    choices.some(({ id, by, evidence }) => id === 'unit' && (by === 'user' || BY_NUMBERS.includes(evidence?.is ?? ''))),
  );
  return { shown: timeline.unit, open };
}

const nothing: Read = {
  ...{ ok: false, files: [], lines: [], asked: [], setAside: [], allRows: '' },
  ...{ renamed: [], failed: [], topics: [], draft: [], remarks: false, written: null, holds: {} },
};

/** An analysis keeps no columns, as they quote cells: where it went well, the first half of it is asked again. */
function columnsOf(inputs: readonly Input[], settings: Wanted['settings'], analysis: Analysis | Refusal) {
  const files = analysis.ok ? intake(inputs, settings).files : analysis.files;
  return files.map((file) => file.columns ?? []);
}

function seen(
  tell: Teller,
  file: Analysis['files'][number],
  columns: NonNullable<Analysis['files'][number]['columns']>,
  own: (text: string) => string,
): FileSeen {
  const rows = columnRows(tell, columns);
  return {
    ...{ name: own(file.name), kind: file.kind, persons: file.persons },
    rows: tell.say('cli.told.rows', { ...file.ledger }),
    choices: choiceRows(tell, file.choices),
    columns: columns.map(({ name, role }, i) => ({
      key: name === '' ? `#${i + 1}` : name,
      name: rows[i]![0],
      role,
      as: role === 'ignore' ? rows[i]![1] : (tell.speaker.sayIfKnown(`understood.roles.${role}`) ?? rows[i]![1]),
      why: rows[i]![2],
    })),
  };
}
