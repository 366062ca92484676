import type { Asked, Read, Reading } from '../messages.ts';
import { say, spoken } from '../say.ts';
import type { Answered } from '../state/state.ts';
import { linesView, meaningOptions, placedText } from './ledger.ts';
import { button, el, newId, table } from './make.ts';

export interface Asking {
  /** All answers that were given, at once. */
  answer(answers: Answered[]): void;
  /** Everything that was answered, as if it had not been. */
  forget(): void;
}

/** What a question's part of the page has for an answer so far; null: none. */
type Given = () => Answered | null;

/**
 * What the files leave open, each with this file's own rows and every answer there is. Nothing is chosen beforehand and nothing
 * is sent by the Enter key: the one button stands at the end and says when an answer is still wanted.
 */
export function askingView({ asked, lines }: Pick<Read, 'asked' | 'lines'>, answers: boolean, act: Asking): Node[] {
  const parts = asked.map(questionPart);
  const wanted = el('p', { class: 'wanted', role: 'status' });
  const go = button(say('ask.go'), () => {
    const given = parts.flatMap(({ answer }) => answer() ?? []);
    if (given.length === 0) {
      wanted.textContent = say('ask.none');
      return;
    }
    act.answer(given);
  });
  const unasked = lines.filter(({ text }) => !asked.some((one) => one.text === text));
  const others = unasked.filter(({ level }) => level === 'refusal');
  return [
    el('h2', { tabindex: -1 }, asked.length > 0 ? say('ask.title') : say('ask.cannot')),
    el('p', {}, asked.length > 0 ? say('ask.help') : say('ask.cannotHelp')),
    ...others.map((line) => el('p', { class: 'grave' }, placedText(line))),
    ...parts.map(({ part }) => part),
    ...(asked.length > 0 ? [wanted] : []),
    el('div', { class: 'roads' }, asked.length > 0 && go, answers && button(say('ask.forget'), act.forget)),
    ...linesView(unasked),
  ];
}

function questionPart(asked: Asked): { part: HTMLElement; answer: Given } {
  const { of, field, text, file, rows } = asked;
  const { inner, answer } = answersOf(asked);
  const shown = rows.length > 0 ? [rowsTable(rows, file)] : [];
  const part = el(
    'fieldset',
    { class: 'question', 'data-of': of, 'data-field': field },
    el('legend', {}, text),
    ...shown,
    ...inner,
  );
  return { part, answer };
}

function answersOf(asked: Asked): { inner: Node[]; answer: Given } {
  if (asked.names.length > 0) return meanings(asked);
  if (asked.readings.length > 0) return readings(asked);
  if (asked.of === 'zone') return zone(asked);
  if (asked.of === 'period') return period();
  if (asked.field === 'start' || asked.field === 'year') return typed(asked.field);
  return { inner: [el('p', {}, say('ask.byFile'))], answer: () => null };
}

/** Answers of which one is chosen, each with what the file's own rows would mean then. */
function readings(asked: Asked): { inner: Node[]; answer: Given } {
  const name = newId('answer');
  const inputs = asked.readings.map(({ value }) => el('input', { type: 'radio', name, value }));
  const options = asked.readings.map(({ label, shows }, i) =>
    el(
      'label',
      { class: 'reading' },
      inputs[i]!,
      el('span', {}, el('strong', {}, label), ...shows.map((line) => el('span', { class: 'shows' }, line))),
    ),
  );
  return {
    inner: [el('div', { class: 'readings' }, ...options)],
    answer: () => {
      const at = inputs.findIndex(({ checked }) => checked);
      return at < 0 ? null : answerOf(asked, asked.readings[at]!);
    },
  };
}

function answerOf({ of, field }: Asked, { value }: Reading): Answered {
  if (of === 'unit') return { asked: { unit: value === 'mmol/L' ? 'mmol/L' : 'mg/dL' } };
  if (of === 'day-order') return { asked: { dateOrder: value as 'day-first' } };
  if (of === 'losses') return { asked: { acceptLosses: [value] } };
  // A person looked at the readings, and says that they are what they seem not to be.
  if (value === 'confirmed') return { layout: { series: 'confirmed' } };
  return { layout: { [field]: field === 'serialDates' ? Number(value) : value } };
}

/** Names of the file, each with a list of meanings to choose from. */
function meanings({ field, names }: Asked): { inner: Node[]; answer: Given } {
  const { roles, kinds } = spoken();
  const known = field === 'kinds' ? kinds : [...Object.keys(roles), 'ignore'];
  const selects = names.map(({ name, role, seen }) => {
    const select = el('select', {}, el('option', { value: '' }, say('ask.choose')));
    select.append(...meaningOptions(known, role));
    return {
      name,
      select,
      part: el('label', { class: 'meaning' }, el('span', {}, el('strong', {}, name), ' ', seen), select),
    };
  });
  return {
    inner: selects.map(({ part }) => part),
    answer: () => {
      const chosen = selects.filter(({ select }) => select.value !== '');
      const lacking = field !== 'columns' && chosen.length < selects.length;
      if (chosen.length === 0 || lacking) return null;
      return { layout: { [field]: Object.fromEntries(chosen.map(({ name, select }) => [name, select.value])) } };
    },
  };
}

function zone({ suggestions }: Asked): { inner: Node[]; answer: Given } {
  const list = newId('zones');
  const input = el('input', { type: 'text', list, autocomplete: 'off', spellcheck: false });
  return {
    inner: [
      el('label', { class: 'field' }, el('span', {}, say('ask.zone')), input),
      el('datalist', { id: list }, ...suggestions.map((value) => el('option', { value }))),
    ],
    answer: () => (suggestions.includes(input.value.trim()) ? { asked: { zone: input.value.trim() } } : null),
  };
}

/** What no row of the file says: when it begins, or in which year. */
function typed(field: 'start' | 'year'): { inner: Node[]; answer: Given } {
  const start = field === 'start';
  const input = el('input', start ? { type: 'datetime-local' } : { type: 'number', min: 1999, max: 2999, step: 1 });
  return {
    inner: [el('label', { class: 'field' }, el('span', {}, say(start ? 'ask.start' : 'ask.year')), input)],
    answer: () => {
      if (input.value === '' || !input.checkValidity()) return null;
      return { layout: { [field]: start ? input.value.replace('T', ' ') : Number(input.value) } };
    },
  };
}

function period(): { inner: Node[]; answer: Given } {
  const [from, to] = [el('input', { type: 'date' }), el('input', { type: 'date' })];
  return {
    inner: [
      el('label', { class: 'field' }, el('span', {}, say('look.from')), from),
      el('label', { class: 'field' }, el('span', {}, say('look.to')), to),
    ],
    answer: () => {
      const asked = {
        ...(from.value === '' ? {} : { from: from.value }),
        ...(to.value === '' ? {} : { to: to.value }),
      };
      return Object.keys(asked).length === 0 ? null : { asked };
    },
  };
}

function rowsTable(rows: readonly string[][], file: string): HTMLElement {
  const width = Math.max(...rows.map((row) => row.length));
  const names = rows[0]!.slice(1);
  const titles = Array.from({ length: width - 1 }, (_, i) => names[i] || say('ask.column', { place: String(i + 1) }));
  return table(say('ask.rows', { file }), [say('ask.line'), ...titles], rows.slice(1));
}
