import type { Found, Someone } from '../messages.ts';
import { say } from '../say.ts';
import type { Picked } from '../state/dropped.ts';
import { fileButton, hasFolders } from './files.ts';
import { button, el, newId, tick } from './make.ts';

export interface Choosing {
  /** `code`: whose files these are, where somebody had to say so. */
  open(person: Someone, ofMany: boolean, code?: string): void;
  /** Reads everyone. */
  begin(): void;
  /** Files beside each other that are each a person's own. */
  apart(): void;
  /** Visit files of earlier visits. */
  earlier(files: Picked[]): void;
  /** Whether everyone is compared with them. */
  compare(on: boolean): void;
}

const filesOf = ({ files }: Someone): string => files.map((path) => path.slice(path.lastIndexOf('/') + 1)).join(', ');

/** Whose files these are, before anything is made of them. */
export function whoView(found: Found, since: boolean, act: Choosing): Node[] {
  if (found.whose === 'none') return [el('h2', { tabindex: -1 }, say('who.none')), el('p', {}, say('who.noneHelp'))];
  if (found.whose === 'ask') {
    return [
      el('h2', { tabindex: -1 }, say('who.ask')),
      el('p', {}, say('who.askHelp')),
      el('div', { class: 'readings' }, together(found, act), separate(found, act)),
    ];
  }
  const one = (person: Someone): HTMLElement =>
    el(
      'tr',
      {},
      el('th', { scope: 'row' }, person.code),
      el('td', {}, person.wrong ?? filesOf(person)),
      el(
        'td',
        {},
        person.wrong === undefined && button(say('who.open', { code: person.code }), () => act.open(person, true)),
      ),
    );
  return [
    el('h2', { tabindex: -1 }, say('who.many', { count: String(found.people.length) })),
    el('p', {}, found.toldBy),
    ...(found.wrong === ''
      ? [
          el('p', {}, say('folder.before')),
          earlierView(found, since, act),
          button(say('folder.begin'), act.begin, { 'data-do': 'begin' }),
        ]
      : [el('p', { class: 'grave' }, found.wrong)]),
    el(
      'div',
      { class: 'scroll', tabindex: 0, role: 'region', 'aria-label': say('who.list') },
      el('table', {}, el('caption', { class: 'unseen' }, say('who.list')), el('tbody', {}, ...found.people.map(one))),
    ),
  ];
}

/** What everyone is compared with, and what the settings of the folder name that nobody brought. */
const earlierView = ({ earlier, lacking }: Found, since: boolean, act: Choosing): HTMLElement =>
  el(
    'section',
    { class: 'earlier', 'aria-label': say('folder.earlier') },
    lacking.length > 0 && el('p', { class: 'grave' }, say('folder.lacking', { names: lacking.join(', ') })),
    earlier !== '' && el('p', {}, earlier),
    earlier !== '' && tick(say('folder.compare'), since, act.compare),
    el(
      'div',
      { class: 'roads' },
      fileButton(say('folder.earlierFiles'), false, act.earlier),
      hasFolders() && fileButton(say('folder.earlierFolder'), true, act.earlier),
    ),
  );

/** That files are one person's is somebody's word: it is given with the person's code, which then stands on the papers. */
function together({ together: person }: Found, act: Choosing): HTMLElement {
  const id = newId('code');
  const code = el('input', { id, type: 'text', maxlength: 80, autocomplete: 'off', spellcheck: false });
  return el(
    'div',
    { class: 'reading' },
    el('h3', {}, say('who.together')),
    el('p', {}, filesOf(person)),
    el('div', { class: 'field' }, el('label', { for: id }, say('who.sameCode')), code),
    button(say('who.togetherDo'), () => {
      const typed = code.value.trim();
      if (typed === '') code.focus();
      else act.open(person, false, typed);
    }),
  );
}

function separate({ people }: Found, act: Choosing): HTMLElement {
  return el(
    'div',
    { class: 'reading' },
    el('h3', {}, say('who.apart', { count: String(people.length) })),
    el('ul', {}, ...people.map((person) => el('li', {}, `${person.code}: ${filesOf(person)}`))),
    button(say('who.apartDo'), act.apart),
  );
}
