import { listSpeaker } from '../../clinic/lists.ts';
import { rulesOf } from '../../clinic/rules.ts';
import { PUBLISHED } from '../../clinic/thresholds.ts';
import { FLAGGED, TIERS } from '../../clinic/tiers.ts';
import { countTiers, rank } from '../../clinic/worklist.ts';
import type { Outcome } from '../../model/clinic.ts';
import { tierName } from '../../pages/worklistTexts.ts';
import type { Thresholds } from '../../schemas/thresholds.ts';
import type { Door } from '../door.ts';
import type { Asked, ClinicOptions } from './asked.ts';
import { exitOf } from './exit.ts';
import { runPeople } from './run.ts';

/** Reads everyone, writes nothing, and shows how many each set of thresholds would ask someone to look at. */
export async function dryRun(asked: Asked, given: ClinicOptions, threads: number, door: Door): Promise<number> {
  const { tell, print } = door;
  const { outcomes } = await runPeople(asked, given, threads, door);
  const own = given.thresholds === undefined ? {} : { own: asked.thresholds };
  for (const [name, thresholds] of Object.entries({ ...own, ...PUBLISHED })) {
    print('');
    print(`${tell.say(`cli.clinic.rules.${name}`)}: ${flaggedText(outcomes, thresholds, door)}`);
    for (const line of tierLines(outcomes, thresholds, door)) print(`  ${line}`);
  }
  print('');
  print(tell.say('cli.clinic.eachRule'));
  for (const line of ruleLines(outcomes, asked.thresholds, door)) print(`  ${line}`);
  print(tell.say('cli.clinic.dry'));
  return exitOf(outcomes);
}

function flaggedText(outcomes: readonly Outcome[], thresholds: Thresholds, { tell }: Door): string {
  const flagged = rank(outcomes, thresholds).filter(({ tier }) => FLAGGED.includes(tier)).length;
  return tell.say('cli.clinic.flagged', { n: flagged, of: outcomes.length });
}

function tierLines(outcomes: readonly Outcome[], thresholds: Thresholds, { words }: Door): string[] {
  const say = listSpeaker(words);
  const counts = countTiers(rank(outcomes, thresholds));
  const most = String(outcomes.length).length;
  return TIERS.map((tier) => `${String(counts[tier]).padStart(most)}  ${tierName(say, tier)}`);
}

/** How many people each threshold alone would put on the list. */
function ruleLines(outcomes: readonly Outcome[], thresholds: Thresholds, { words }: Door): string[] {
  const say = listSpeaker(words);
  const lines = rank(outcomes, thresholds);
  const passing = (rule: string): number =>
    lines.filter(({ tier, reasons }) => {
      const key = REASON[rule];
      return key === undefined ? tier === rule : reasons.some((one) => one.key.startsWith(`clinic.reasons.${key}`));
    }).length;
  const most = String(outcomes.length).length;
  const rules = rulesOf(thresholds).map(({ key, params }): [string, number] => [
    say.say(key, params),
    passing(key.split('.').at(-1)!),
  ]);
  return rules.map(([text, n]) => `${String(n).padStart(most)}  ${text}`);
}

/** The reason, or the beginning of the reasons, that each rule gives; the others are groups of their own. */
const REASON: Record<string, string> = {
  veryLowEvents: 'veryLowEvents',
  veryLowGoals: 'veryLowShare',
  veryLowShare: 'veryLowShare',
  lowGoals: 'lowShare',
  lowShare: 'lowShare',
  nightLows: 'nightLows',
  veryHighGoals: 'veryHighShare',
  veryHighShare: 'veryHighShare',
  veryHighLong: 'veryHighLong',
  worse: 'worse.',
  fewDays: 'notEnough',
  thinDays: 'notEnough',
};
