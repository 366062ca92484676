import { setImmediate } from 'node:timers/promises';
import { fingerprint } from '../../bytes/hash.ts';
import { because, blank, refused } from '../../clinic/outcome.ts';
import { lacking } from '../../language/index.ts';
import { teller } from '../../papers/teller.ts';
import { forManyPeople, forPractisedWorkers, PRACTISED } from '../engine.ts';
import { version, words } from '../home.ts';
import { ownHash } from '../ownHash.ts';
import { paperTools } from '../paperTools.ts';
import { templateHash } from '../webPage.ts';
import { paperWords } from '../words.ts';
import { type Spoken, type Task, type Turn, type TurnTools, takeTurn } from './turn.ts';

/** What a worker keeps between people: words, faces and the page template are read and parsed once in its life. */
let kept: TurnTools | undefined;
/** People whose turn it was. */
let turns = 0;

function tools(): TurnTools {
  if (kept) return kept;
  forManyPeople();
  ownHash();
  const whole = words('en');
  const spoken = new Map<unknown, Spoken>();
  let template: string | undefined;
  kept = {
    // The command has told what is wrong with the template before anyone was begun.
    ...paperTools({ tell: teller(whole), version, complain: () => {} }),
    wordsFor(place) {
      const words = paperWords(place);
      let known = spoken.get(words);
      if (!known) {
        known = { words, missing: lacking(words, whole), hash: fingerprint(JSON.stringify(words)) };
        spoken.set(words, known);
      }
      return known;
    },
    templateHash: () => (template ??= templateHash()),
  };
  return kept;
}

/** What the pool calls: one person's turn. */
export async function work(task: Task): Promise<Turn> {
  try {
    const turn = await takeTurn(task, tools());
    if (++turns === PRACTISED) forPractisedWorkers();
    // The pool hands on the next task without a turn of the event loop, and only such a turn lets the streams of a
    // finished PDF go: without it every document of the run would stay in memory.
    await setImmediate();
    return turn;
  } catch (error) {
    // A fault of ours with this one person. Only the kind of error is passed on: its message may hold a person's text.
    if (process.env.DAYBANDS_TRACE) console.error(error);
    const { name } = error instanceof Error ? error : { name: 'unknown' };
    const nothing = blank(task.person, { key: '', printed: task.today, version });
    return { outcome: refused(nothing, because('fault', { actual: name })), how: 'made', milliseconds: 0 };
  }
}
