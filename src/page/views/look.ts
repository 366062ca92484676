import type { Read } from '../messages.ts';
import { say, spoken } from '../say.ts';
import { type State, setAside } from '../state/state.ts';
import { choice, el, tick } from './make.ts';

export interface Looking {
  /** Something of the wishes changed: read and show again. */
  changed(): void;
}

const USUAL = 'usual';
/** As settings beside the files say, where the page has no name of its own for it. */
const LYING = 'lying';
const DAYS = ['7', '14', '21', '28', '90'];

/** Period, goals, comparison, paper: each changes what is shown at once. */
export function lookView(state: State, read: Read, act: Looking): Node[] {
  const { asked } = state;
  const { holds } = read;
  const set = (change: () => void) => {
    change();
    act.changed();
  };
  const goals = Object.entries(spoken().targets);
  return [
    ...periodFields(state, read, act),
    choice(say('look.goals'), goals, holds.targets ?? 'adult', (value) =>
      set(() => (asked.targets = value as 'adult')),
    ),
    comparing(state, read, act),
    ...unitChoice(state, read, act),
    choice(
      say('look.paper'),
      [
        ['a4', 'A4'],
        ['letter', 'US Letter'],
      ],
      holds.paper ?? 'a4',
      (value) => set(() => (asked.paper = value as 'a4')),
    ),
    tick(say('look.large'), holds.large ?? false, (on) => set(() => (asked.large = on))),
    tick(say('look.grey'), holds.grey ?? false, (on) => set(() => (asked.grey = on))),
    text(say('look.code'), holds.code ?? '', 'code', state, act),
    text(say('look.name'), holds.name ?? '', 'name', state, act),
  ];
}

/** What the period is compared with; visit files that were brought can be chosen. */
function comparing(state: State, { holds }: Read, act: Looking): HTMLElement {
  const { asked, person } = state;
  const visits = person?.visits ?? [];
  const names = visits.map((path) => path.slice(path.lastIndexOf('/') + 1)).join(', ');
  const options: [string, string][] = [
    ['none', say('look.compareNone')],
    ['previous', say('look.comparePrevious')],
    ...(visits.length > 0 ? [['visits', say('look.compareVisits', { names })] as [string, string]] : []),
  ];
  const { compare = holds.changed === undefined ? 'none' : LYING } = holds;
  const known = options.find(([value]) => value === compare)?.[0];
  const other = visits.length > 0 && compare !== LYING ? 'visits' : LYING;
  const now = known ?? other;
  if (now === LYING || ('compare' in asked && asked.compare === undefined))
    options.push([LYING, say('look.compareSettings')]);
  return choice(say('look.compare'), options, now, (value) => {
    if (value === 'none') setAside(state, 'compare', 'changed');
    else {
      delete asked.changed;
      if (value === LYING) delete asked.compare;
      else asked.compare = value === 'visits' ? [...visits] : value;
    }
    act.changed();
  });
}

/** Which unit is shown and by whose word; it can be said where no file names it. */
function unitChoice({ asked }: State, { unit, holds }: Read, act: Looking): Node[] {
  if (!unit) return [];
  if (!unit.open && holds.unit === undefined) return [el('p', {}, say('look.unitNamed', { unit: unit.shown }))];
  const options = [
    ...(holds.unit === undefined ? [[USUAL, say('look.unitSeen', { unit: unit.shown })] as const] : []),
    ...(['mg/dL', 'mmol/L'] as const).map((one) => [one, one] as const),
  ];
  const set = (value: string): void => {
    if (value === USUAL) delete asked.unit;
    else asked.unit = value === 'mmol/L' ? 'mmol/L' : 'mg/dL';
    act.changed();
  };
  return [choice(say('look.unit'), options, holds.unit ?? USUAL, set)];
}

function periodFields({ asked }: State, read: Read, act: Looking): Node[] {
  const { from = '', to = '' } = read.period ?? {};
  const start = el('input', { type: 'date', value: asked.from ?? from });
  const end = el('input', { type: 'date', value: asked.to ?? to });
  const dates = el(
    'div',
    { class: 'dates', hidden: asked.from === undefined && asked.to === undefined },
    el('label', { class: 'field' }, el('span', {}, say('look.from')), start),
    el('label', { class: 'field' }, el('span', {}, say('look.to')), end),
  );
  const byDates = (): void => {
    if (start.value === '' || end.value === '' || start.value > end.value) return;
    delete asked.days;
    Object.assign(asked, { from: start.value, to: end.value });
    act.changed();
  };
  for (const input of [start, end]) input.addEventListener('change', byDates);
  const now = asked.from !== undefined ? 'dates' : asked.days === undefined ? USUAL : String(asked.days);
  const options: [string, string][] = [
    [USUAL, say('look.usual')],
    ...DAYS.map((days): [string, string] => [days, say('look.days', { days })]),
    ['dates', say('look.dates')],
  ];
  const by = choice(say('look.period'), options, now, (value) => {
    dates.hidden = value !== 'dates';
    if (value === 'dates') return;
    delete asked.from;
    delete asked.to;
    if (value === USUAL) delete asked.days;
    else asked.days = Number(value);
    act.changed();
  });
  return [by, dates];
}

function text(label: string, value: string, name: 'code' | 'name', state: State, act: Looking): HTMLElement {
  const input = el('input', {
    ...{ type: 'text', value, maxlength: 80, autocomplete: 'off', spellcheck: false },
    onchange: () => {
      if (input.value.trim() === '') setAside(state, name);
      else state.asked[name] = input.value.trim();
      act.changed();
    },
  });
  return el('label', { class: 'field' }, el('span', {}, label), input);
}
