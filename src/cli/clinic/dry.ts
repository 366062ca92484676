import { listSpeaker } from '../../clinic/lists.ts';
import { rulesOf } from '../../clinic/rules.ts';
import { PUBLISHED } from '../../clinic/thresholds.ts';
import { FLAGGED } from '../../clinic/tiers.ts';
import { rank } from '../../clinic/worklist.ts';
import type { Speaker } from '../../language/index.ts';
import type { Outcome } from '../../model/clinic.ts';
import type { Thresholds } from '../../schemas/thresholds.ts';
import type { Door } from '../door.ts';
import type { Asked, ClinicOptions } from './asked.ts';
import { exitOf } from './exit.ts';
import { runPeople } from './run.ts';
import { tierLines } from './tellLists.ts';

/** Reads everyone, writes nothing, and shows how many each set of thresholds would ask someone to look at. */
export async function dryRun(asked: Asked, given: ClinicOptions, threads: number, door: Door): Promise<number> {
  const { tell, print, words } = door;
  const speaker = listSpeaker(words);
  const { outcomes } = await runPeople(asked, given, threads, door);
  for (const { code, by = 'nothing', files } of asked.people) {
    const rule = tell.say(`cli.clinic.by.${by}`);
    print(tell.say('cli.clinic.person', { code, rule, files: files.length > 0 ? files.join(', ') : 'none' }));
  }
  const own = given.thresholds === undefined ? {} : { own: asked.thresholds };
  const all = { ...own, ...PUBLISHED };
  for (const [name, thresholds] of Object.entries(all) as [keyof typeof PUBLISHED | 'own', Thresholds][]) {
    const lines = rank(outcomes, thresholds);
    const flagged = lines.filter(({ tier }) => FLAGGED.includes(tier)).length;
    print('');
    print(
      `${tell.say(`cli.clinic.rules.${name}`)}: ${tell.say('cli.clinic.flagged', { n: flagged, of: lines.length })}`,
    );
    for (const line of tierLines(lines, speaker)) print(`  ${line}`);
  }
  print('');
  print(tell.say('cli.clinic.eachRule'));
  for (const line of ruleLines(outcomes, asked.thresholds, speaker)) print(`  ${line}`);
  print(tell.say('cli.clinic.dry'));
  return exitOf(outcomes);
}

/** How many people each threshold alone would put on the list. */
function ruleLines(outcomes: readonly Outcome[], thresholds: Thresholds, speaker: Speaker): string[] {
  const lines = rank(outcomes, thresholds);
  const passing = (rule: string): number =>
    lines.filter(({ tier, reasons }) => {
      const key = REASON[rule];
      return key === undefined ? tier === rule : reasons.some((one) => one.key.startsWith(`clinic.reasons.${key}`));
    }).length;
  const most = String(outcomes.length).length;
  return rulesOf(thresholds).map((said) => {
    const n = passing(said.key.split('.').at(-1)!);
    return `${String(n).padStart(most)}  ${speaker.repeat(said)}`;
  });
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
