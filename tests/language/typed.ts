import { WrongUse } from '../../src/cli/exits.ts';
import { because } from '../../src/clinic/outcome.ts';
import { type Finding, holds } from '../../src/findings/finding.ts';
import type { Speaker } from '../../src/language/index.ts';
import type { Why } from '../../src/model/measured.ts';
import type { Quantity } from '../../src/model/quantity.ts';
import type { Directed } from '../../src/model/thenAndNow.ts';
import type { FindingParams } from '../../src/model/words.ts';
import type { Teller } from '../../src/papers/teller.ts';

type Names = 'title' | 'ttile';

/** Never run: `tsc` is the test. Should a wrong key or parameter compile, its comment is an error that is not there. */
export const typed = (speaker: Speaker, tell: Teller, one: Quantity, name: Names, of: Directed, why: Why) => [
  // A key, its parameters, keys put together from ids: these compile.
  speaker.say('pages.fingersticks.title'),
  speaker.say('units.percent', { value: one }),
  speaker.say('pages.fingersticks.rows.bias'),
  speaker.say('units.glucose', { value: one, unit: one }),
  speaker.say(`why.${why}`),
  speaker.say(`clinic.change.of.${of}`),
  tell.say('cli.told.written', { folder: 'reports' }),
  // @ts-expect-error a misspelt key
  speaker.say('pages.fingerstick.title'),
  // @ts-expect-error a branch, not a message
  speaker.say('pages.fingersticks'),
  // @ts-expect-error a parameter is missing
  speaker.say('units.percent'),
  // @ts-expect-error the same, of two
  speaker.say('charts.noteDensity.kind', { name: one }),
  // @ts-expect-error a parameter that the message does not have
  speaker.say('units.percent', { value: one, level: one }),
  // @ts-expect-error a message that asks for nothing
  speaker.say('pages.fingersticks.title', { value: one }),
  // @ts-expect-error a number is no quantity
  speaker.say('units.percent', { value: 0.5 }),
  // @ts-expect-error one of the ids has no words
  speaker.say(`pages.fingersticks.${name}`),
  // @ts-expect-error any text could follow
  speaker.say(`why.${why as string}`),
  // @ts-expect-error a word of the command without its folder
  tell.say('cli.told.written'),
  // @ts-expect-error a help text that is not there
  tell.plain('cli.help.untit'),
  // @ts-expect-error a misspelt mistake
  new WrongUse('wrongDaet', { option: '--from', value: '2' }),
  // @ts-expect-error a mistake without what it tells
  new WrongUse('wrongDate', { option: '--from' }),
  // @ts-expect-error a reason without what it tells
  because('cannotOpen', { file: 'a.csv' }),
];

const look: Finding<'brief-lows'>['look'] = () => holds({} as FindingParams<'brief-lows'>, []);
/** A finding has words, and gives what they ask for. */
export const examples = [
  { id: 'brief-lows', source: 'ours', look } satisfies Finding<'brief-lows'>,
  // @ts-expect-error a finding without words
  {} as Finding<'briefer-lows'>,
  // @ts-expect-error what the words ask for is missing
  { id: 'brief-lows', source: 'ours', look: () => holds({}, []) } satisfies Finding<'brief-lows'>,
];
