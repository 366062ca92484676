import { basename, dirname, resolve } from 'node:path';
import { fingerprint } from '../bytes/hash.ts';
import { bytesOf, utf8 } from '../bytes/text.ts';
import type { Baked } from '../model/baked.ts';
import { REVISED, revisedIn, withBaked } from '../papers/bakedPage.ts';
import type { FolderSettings } from '../schemas/settings.ts';
import type { Door } from './door.ts';
import { EXIT, reasonOf, WrongUse } from './exits.ts';
import { ownFile } from './home.ts';
import { jsonOf } from './json.ts';
import { logWords } from './logWords.ts';
import { medicines } from './medicines.ts';
import { saveAll } from './save.ts';
import { settle } from './settings.ts';
import { reasonText } from './tell.ts';
import { topicOrder } from './topicOrder.ts';

export interface PageOptions extends FolderSettings {
  out: string;
  thresholds?: string;
}

/** Writes a copy of the page with a clinic's own settings, words and thresholds in it. */
export async function page({ out, thresholds, ...asked }: PageOptions, door: Door): Promise<number> {
  const { tell, today, print, complain } = door;
  // Refused here as a report would refuse them.
  await settle(asked, undefined, today);
  const html = utf8(ownFile('dist/daybands.html'));
  const revised = revisedIn(html, (path) => ownFile(`templates/${path}`));
  const words = Object.fromEntries(
    revised
      .filter((path) => path.startsWith('words/'))
      .map((path) => [path.slice('words/'.length, -'.json'.length), JSON.parse(utf8(ownFile(`templates/${path}`)))]),
  );
  const order = topicOrder();
  const baked: Baked = {
    settings: asked,
    date: today,
    ...(thresholds === undefined ? {} : { thresholds: await checkedThresholds(thresholds) }),
    ...(Object.keys(words).length === 0 ? {} : { words }),
    ...(revised.includes(REVISED.foods) ? { logWords: logWords() } : {}),
    ...(revised.includes(REVISED.medicines) ? { medicines: medicines() } : {}),
    ...(order === undefined ? {} : { topicOrder: order }),
  };
  const bytes = bytesOf(withBaked(html, baked));
  const path = resolve(out);
  try {
    saveAll(dirname(path), [{ name: basename(path), bytes }]);
  } catch (error) {
    complain(tell.say('cli.page.unsaved', { path, reason: { sentence: reasonText(tell, reasonOf(error)) } }));
    return EXIT.partly;
  }
  print(tell.say('cli.page.written', { path, hash: fingerprint(bytes) }));
  const names = [...Object.keys(asked), ...Object.keys(baked).filter((name) => name !== 'settings' && name !== 'date')];
  print(tell.say('cli.page.holds', { names: names.length === 0 ? '–' : names.join(', ') }));
  return EXIT.done;
}

/** The content of a thresholds file that holds. */
async function checkedThresholds(path: string): Promise<unknown> {
  const { parseThresholds } = await import('../schemas/thresholds.ts');
  const content = jsonOf(path, 'wrongThresholds');
  const checked = parseThresholds(content);
  if (!checked.ok) throw new WrongUse('wrongThresholds', { path, problem: checked.problems.join('; ') });
  return content;
}
