import { fingerprint } from '../bytes/hash.ts';
import type { Baked } from '../model/baked.ts';

/** Names within `templates/` of lists that a clinic may change. */
export const REVISED = { foods: 'foods.json', medicines: 'medicines.json' } as const;

/** Element of the page that holds the hashes of `templates/` as they were when it was built, and that of a clinic's own. */
export const AS_BUILT = 'as-built';
export const CLINIC = 'clinic';

const element = (id: string, text: string): string =>
  `<script type="text/plain" data-of="${id}">${text.replaceAll('<', '\\u003c')}</script>\n`;

/** Which files of `templates/` are no longer those the page was built of. */
export function revisedIn(html: string, read: (path: string) => Uint8Array): string[] {
  const text = new RegExp(`<script type="text/plain" data-of="${AS_BUILT}">([^<]*)</script>`).exec(html)?.[1] ?? '{}';
  const built = JSON.parse(text) as Record<string, string>;
  return Object.entries(built).flatMap(([path, hash]) => (fingerprint(read(path)) === hash ? [] : [path]));
}

/** The page with a clinic's own in it, before its own script, which is the last element of the page. Nothing of it can end an element. */
export function withBaked(html: string, baked: Baked): string {
  const at = html.lastIndexOf('<script>');
  return html.slice(0, at) + element(CLINIC, JSON.stringify(baked)) + html.slice(at);
}
