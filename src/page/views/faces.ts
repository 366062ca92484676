import { say } from '../say.ts';
import type { Picked } from '../state/dropped.ts';
import { fileButton } from './files.ts';
import { el } from './make.ts';

/** So many letters are shown; one name seldom has more. */
const MOST = 24;

/** Letters that would stand as a mark on paper, and the road: a font of theirs. */
export function facesView(lacking: readonly string[], wrong: string, add: (files: Picked[]) => void): Node[] {
  if (lacking.length === 0 && wrong === '') return [];
  const signs = lacking.slice(0, MOST).join(' ') + (lacking.length > MOST ? ' …' : '');
  return [
    el(
      'section',
      { class: 'grave', 'aria-label': say('faces.title') },
      wrong === '' ? el('p', {}, say('faces.lacking', { signs })) : el('p', {}, say('faces.wrong', { file: wrong })),
      el('p', {}, say('faces.how')),
      fileButton(say('faces.add'), false, add),
    ),
  ];
}
