import type { Framed } from '../messages.ts';
import { enliven } from './enliven.ts';

interface Policy {
  createHTML(text: string): string;
}
declare const trustedTypes:
  | { createPolicy(name: string, rules: { createHTML(text: string): string }): Policy }
  | undefined;

/** Only what the worker wrote becomes markup: there every text of a file is a text node by construction. */
const policy =
  typeof trustedTypes === 'undefined' ? undefined : trustedTypes.createPolicy('paper', { createHTML: (text) => text });

/**
 * A sandbox keeps scripts of a paper from running once more, besides the policy. One engine then keeps ours from listening there too:
 * the policy alone has to do in it.
 */
let sandboxed = true;

function listens(inside: Document): boolean {
  let heard = false;
  inside.addEventListener('heard', () => (heard = true));
  inside.dispatchEvent(new Event('heard'));
  return heard;
}

/**
 * Shows a paper in a frame in the place of the one before, which stays until the new one is there. The frame runs no script and
 * takes the policy of the page over, which names no style of a single paper: its looks are adopted instead.
 */
export async function showPaper(
  place: HTMLElement,
  paper: Framed,
  title: string,
  faces: readonly FontFace[],
): Promise<Document | undefined> {
  const frame = document.createElement('iframe');
  frame.title = title;
  frame.className = 'paper coming';
  if (sandboxed) frame.setAttribute('sandbox', 'allow-same-origin allow-modals');
  frame.setAttribute('srcdoc', policy?.createHTML(paper.html) ?? paper.html);
  const loaded = new Promise((done) => frame.addEventListener('load', done, { once: true }));
  place.append(frame);
  await loaded;
  const { contentDocument: inside, contentWindow } = frame;
  if (!inside || !contentWindow) return undefined;
  if (sandboxed && !listens(inside)) {
    sandboxed = false;
    frame.remove();
    return showPaper(place, paper, title, faces);
  }
  const Sheet = (contentWindow as Window & { CSSStyleSheet: typeof CSSStyleSheet }).CSSStyleSheet;
  const sheet = new Sheet();
  // It grows with what is in it: a bar that came for a moment would push the curve from under the pointer that reads it.
  sheet.replaceSync(`${paper.style}\n@media screen{html{overflow:hidden}}`);
  inside.adoptedStyleSheets = [sheet];
  for (const face of faces) inside.fonts.add(face);
  // Laid out in a task of its own, so that the page is held up twice for a little and not once for long.
  inside.documentElement.getBoundingClientRect();
  await new Promise((done) => setTimeout(done));
  enliven(inside, contentWindow.addEventListener.bind(contentWindow));
  const grow = (): void => {
    frame.style.height = `${inside.documentElement.getBoundingClientRect().height}px`;
  };
  new ResizeObserver(grow).observe(inside.documentElement);
  grow();
  // Not those that came after it: a paper that was wanted later is on its way.
  for (let old = frame.previousElementSibling; old; old = frame.previousElementSibling) {
    old.remove();
    // One that never came is waited for no longer.
    old.dispatchEvent(new Event('load'));
  }
  frame.className = 'paper';
  return inside;
}

/** Prints the paper that is shown, on its own. */
export function printPaper(place: HTMLElement): void {
  const frame = place.querySelector('iframe');
  frame?.contentWindow?.focus();
  frame?.contentWindow?.print();
}
