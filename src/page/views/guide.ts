import { GUIDES, type Guide, type GuidePicture } from '../guide.ts';
import { kept } from '../kept.ts';
import { type ScreenKey, say, spoken } from '../say.ts';
import type { Way } from '../state/state.ts';
import { button, el } from './make.ts';

/** Within reach in every state: what is going on below stays as it is while somebody reads. */
export const guideButton = (way: () => Way): HTMLElement =>
  button(say('guide.open'), () => openGuide(way() === 'own' ? 'patient' : 'clinic'), { 'data-do': 'guide' });

function openGuide(first: Guide): void {
  const dialog = document.getElementById('guide') as HTMLDialogElement;
  const body = el('div', {});
  const show = (guide: Guide): void => {
    for (const one of choices) one.setAttribute('aria-pressed', String(one.dataset.guide === guide));
    body.replaceChildren(...guideView(guide));
  };
  const choices = (['patient', 'clinic'] as const).map((guide) =>
    button(say(`guide.${guide}.name`), () => show(guide), { 'data-guide': guide }),
  );
  const close = button(say('guide.close'), () => dialog.close(), { 'data-do': 'close' });
  dialog.setAttribute('aria-labelledby', 'guide-title');
  dialog.replaceChildren(
    el('div', { class: 'guideHead' }, el('h2', { id: 'guide-title', tabindex: -1 }, say('guide.title')), close),
    el('div', { class: 'roads', role: 'group', 'aria-label': say('guide.which') }, ...choices),
    body,
  );
  show(first);
  dialog.showModal();
  dialog.querySelector<HTMLElement>('#guide-title')!.focus();
  dialog.scrollTop = 0;
}

function guideView(guide: Guide): Node[] {
  const { language, cautions } = spoken();
  const pictures: GuidePicture[] = JSON.parse(kept(`guide-${guide}-${language}`));
  const part = ({ name, pictures: shown = [], cautions: ids = [], not }: (typeof GUIDES)[Guide][number]): Node[] => [
    el('h3', {}, say(`guide.${guide}.${name}.title` as ScreenKey)),
    el('p', {}, say(`guide.${guide}.${name}.text` as ScreenKey)),
    ...pictures.filter(({ how }) => shown.includes(how)).map(pictureView),
    ...(not ? [el('p', {}, say('foot.not'))] : []),
    ...(ids.length > 0 ? [el('ul', {}, ...ids.map((id) => el('li', {}, cautions[id])))] : []),
  ];
  return [
    el('p', { class: 'lead' }, say(`guide.${guide}.lead`)),
    ...GUIDES[guide].flatMap(part),
    el('p', { class: 'shows' }, say('guide.invented')),
  ];
}

/** As an image, in which nothing of a drawing can run or be asked for. */
const pictureView = ({ shows, read, svg }: GuidePicture): HTMLElement =>
  el(
    'figure',
    {},
    el('img', { src: `data:image/svg+xml,${encodeURIComponent(svg)}`, alt: shows }),
    el('figcaption', {}, read),
  );
