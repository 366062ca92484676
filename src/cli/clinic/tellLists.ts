import { listSpeaker } from '../../clinic/lists.ts';
import { TIERS } from '../../clinic/tiers.ts';
import { countTiers } from '../../clinic/worklist.ts';
import type { Speaker } from '../../language/index.ts';
import type { WorklistLine } from '../../model/clinic.ts';
import { briefReasons, tierName } from '../../pages/worklistTexts.ts';
import { printable, printableLine } from '../../papers/teller.ts';
import type { Door } from '../door.ts';

/** So many of those who could not be read are named in the terminal; the worklist names all. */
const NAMED = 20;

/** How many stand in each tier, a line each. */
export function tierLines(lines: readonly WorklistLine[], speaker: Speaker): string[] {
  const counts = countTiers(lines);
  const most = String(lines.length).length;
  return TIERS.map((tier) => `${String(counts[tier]).padStart(most)}  ${tierName(speaker, tier)}`);
}

/** How many stand in each tier, whose results lie there and are not of this run, and who could not be read and why. */
export function tellLists(
  { tell, words, print, complain }: Door,
  lines: readonly WorklistLine[],
  passedOver: readonly string[],
  former: readonly string[],
): void {
  const speaker = listSpeaker(words);
  for (const line of tierLines(lines, speaker)) print(`  ${line}`);
  if (passedOver.length > 0) print(tell.say('cli.clinic.passedOver', { n: passedOver.length }));
  if (former.length > 0) {
    const names = [...former.slice(0, NAMED), ...(former.length > NAMED ? ['…'] : [])].join(', ');
    print(tell.say('cli.clinic.former', { n: former.length, names }));
  }
  const unread = lines.filter(({ tier }) => tier === 'unread');
  for (const { outcome, reasons } of unread.slice(0, NAMED)) {
    complain(`${printable(outcome.code)}: ${printableLine(briefReasons(speaker, reasons))}`);
  }
  if (unread.length > NAMED) complain(tell.say('cli.clinic.moreUnread', { n: unread.length - NAMED }));
  print(tell.say('cli.told.caution'));
}
