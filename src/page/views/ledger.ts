import type { FileSeen, Line, Read } from '../messages.ts';
import { say, spoken } from '../say.ts';
import type { Answered } from '../state/state.ts';
import { button, el, table } from './make.ts';

export interface Changing {
  answer(answers: Answered[]): void;
  saveAnswers(): void;
}

/** How the files were understood: every row, every column, every choice, and what can be changed. A click away, never in the way. */
export function ledgerView(read: Read, passedOver: readonly string[], act: Changing): Node[] {
  return [
    el(
      'details',
      { class: 'ledger' },
      el('summary', {}, say('ledger.title')),
      el('p', {}, say('ledger.help')),
      read.allRows === '' ? null : el('p', {}, el('strong', {}, say('ledger.all')), ' ', read.allRows),
      passedOver.length > 0 && el('p', {}, say('ledger.passedOver', { names: passedOver.join(', ') })),
      ...read.renamed.map(({ file, as }) => el('p', {}, say('ledger.renamed', { file, as }))),
      ...read.files.map((file) => fileLedger(file, act)),
      ...(read.setAside.length > 0 ? [setAside(read)] : []),
      button(say('ledger.save'), act.saveAnswers),
    ),
  ];
}

function fileLedger(file: FileSeen, act: Changing): HTMLElement {
  return el(
    'section',
    {},
    el('h3', {}, file.name),
    el('p', {}, file.rows),
    file.persons.length > 0 && el('p', {}, say('ledger.persons', { names: file.persons.join(', ') })),
    file.choices.length > 0 &&
      table(
        say('ledger.choices', { file: file.name }),
        [say('ledger.what'), say('ledger.chosen'), say('ledger.by')],
        file.choices,
      ),
    file.columns.length > 0 &&
      table(
        say('ledger.columns', { file: file.name }),
        [say('ledger.column'), say('ledger.meaning'), say('ledger.why')],
        file.columns.map(({ key, name, role, as, why }) => [name, meaningOf(key, name, role, as, act), why]),
      ),
  );
}

/** What a column was taken for, to be changed on the spot. */
function meaningOf(key: string, name: string, role: string, as: string, act: Changing): HTMLElement {
  const { roles } = spoken();
  const select = el('select', {
    'aria-label': say('ledger.change', { column: name }),
    onchange: () => act.answer([{ layout: { meanings: { [key]: select.value } } }]),
  });
  if (roles[role] === undefined && role !== 'ignore') select.append(el('option', { value: role, selected: true }, as));
  select.append(...meaningOptions([...Object.keys(roles), 'ignore'], role));
  return select;
}

/** Meanings to choose from, in words. */
export function meaningOptions(known: readonly string[], chosen: string): Node[] {
  const { roles } = spoken();
  return known.map((one) =>
    el('option', { value: one, selected: one === chosen }, one === 'ignore' ? say('ask.ignore') : (roles[one] ?? one)),
  );
}

function setAside({ setAside: rows }: Read): HTMLElement {
  const lines = rows.map(({ file, line, reason }) => [`${file}:${line}`, reason]);
  return table(say('ledger.setAside'), [say('ledger.place'), say('ledger.reason')], lines);
}

/** A line with its place, where it does not name the file itself. */
export const placedText = ({ text, place }: Line): string =>
  place === '' || text.includes(place.replace(/:\d+$/, '')) ? text : `${place}: ${text}`;

/** What is to be known of the files, the gravest first. */
export function linesView(lines: readonly Line[]): Node[] {
  const shown = lines.filter(({ level }) => level !== 'refusal');
  if (shown.length === 0) return [];
  const warnings = shown.filter(({ level }) => level === 'warning');
  const notes = shown.filter(({ level }) => level === 'note');
  return [
    ...(warnings.length > 0
      ? [
          el(
            'section',
            { class: 'warnings', 'aria-label': say('told.check') },
            el('h3', {}, say('told.check')),
            el('ul', {}, ...warnings.map((line) => el('li', {}, placedText(line)))),
          ),
        ]
      : []),
    ...(notes.length > 0
      ? [
          el(
            'details',
            {},
            el('summary', {}, say('told.notes')),
            el('ul', {}, ...notes.map((line) => el('li', {}, placedText(line)))),
          ),
        ]
      : []),
  ];
}
