import './quiet.ts';
import { bakedText } from './baked.ts';
import { type Desk, openDesk } from './state/desk.ts';
import { droppedFiles, pastedFiles } from './state/dropped.ts';
import { beginning } from './state/state.ts';
import { unsaved } from './state/typed.ts';
import { firstSheet } from './views/papers.ts';
import { openScreen } from './views/screen.ts';

// The page: what is dropped goes to the worker, what comes back is shown. Nothing is kept when it is closed.

const own = navigator.language.startsWith('es') ? 'es' : 'en';
const state = beginning(bakedText('region') ?? bakedText('language') ?? own);
const screen = openScreen(state, () => desk);
const desk: Desk = openDesk(state, screen, firstSheet);

addEventListener('dragover', (event) => event.preventDefault());
addEventListener('drop', (event) => {
  event.preventDefault();
  if (!event.dataTransfer) return;
  void droppedFiles(event.dataTransfer).then((found) => (found.length > 0 ? desk.take(found, false) : screen.noDrop()));
});

addEventListener('paste', (event) => {
  const { target, clipboardData } = event;
  if (!clipboardData || (target instanceof Element && target.closest('input, textarea'))) return;
  const found = pastedFiles(clipboardData);
  if (found.length > 0) desk.take(found, false);
});

// Words that no saved file holds are gone with the page.
addEventListener('beforeunload', (event) => {
  if (unsaved(state)) event.preventDefault();
});

screen.dress();
document.documentElement.dataset.ready = 'yes';
// Once the page can be used.
setTimeout(desk.warm, 0);
