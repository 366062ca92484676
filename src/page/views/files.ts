import { chosenFiles, type Picked } from '../state/dropped.ts';
import { el, newId } from './make.ts';

/** Whether this engine lets a folder be chosen. */
export const hasFolders = (): boolean => 'webkitdirectory' in document.createElement('input');

/** A file button that looks like a button and is one for the keyboard. */
export function fileButton(text: string, folder: boolean, take: (files: Picked[]) => void): HTMLElement {
  const input = el('input', {
    ...{
      type: 'file',
      id: newId(folder ? 'folder' : 'files'),
      multiple: true,
      class: 'unseen',
      webkitdirectory: folder,
    },
    onchange: () => {
      const files = chosenFiles(input);
      // The same file can be chosen again.
      input.value = '';
      if (files.length > 0) take(files);
    },
  });
  return el('label', { class: 'button' }, input, text);
}
