import type { Extras } from '../folderMessages.ts';
import { writesFolders } from '../save/directory.ts';
import { say } from '../say.ts';
import type { Picked } from '../state/dropped.ts';
import { EXTRAS } from '../state/run.ts';
import type { Run } from '../state/state.ts';
import { facesView } from './faces.ts';
import { button, el, tick } from './make.ts';

export interface SavingAll {
  save(into: 'zip' | 'folder'): void;
  saveList(name: string): void;
  addFaces(files: Picked[]): void;
}

/** What is made once for all, by the name of its file. */
const LISTS = [
  ['pdf', 'worklist.pdf'],
  ['html', 'worklist.html'],
  ['csv', 'worklist.csv'],
  ['measures', 'measures.csv'],
] as const;

export function savingAllView(run: Run, act: SavingAll): HTMLElement {
  const extra = (name: Extras): HTMLElement =>
    tick(say(`folder.extras.${name}`), run.extras.includes(name), (on) => {
      run.extras = EXTRAS.filter((one) => (one === name ? on : run.extras.includes(one)));
    });
  return el(
    'section',
    { 'aria-labelledby': 'save-all' },
    el('h3', { id: 'save-all' }, say('folder.saveTitle')),
    el('p', {}, say('folder.saveHelp')),
    ...facesView([...new Set([...run.lacking.values()].flat())], '', act.addFaces),
    run.lacking.size > 0 && el('p', {}, say('folder.lackingFaces', { codes: [...run.lacking.keys()].join(', ') })),
    el(
      'div',
      { class: 'roads' },
      button(say('folder.zip'), () => act.save('zip'), { 'data-save': 'everything' }),
      writesFolders() && button(say('folder.intoFolder'), () => act.save('folder'), { 'data-save': 'folder' }),
      ...LISTS.map(([id, name]) => button(say(`folder.lists.${id}`), () => act.saveList(name), { 'data-save': name })),
    ),
    !writesFolders() && el('p', {}, say('folder.onlyZip')),
    el('details', {}, el('summary', {}, say('folder.extras.legend')), ...EXTRAS.map(extra)),
  );
}
