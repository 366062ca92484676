import { statSync } from 'node:fs';
import { join } from 'node:path';
import { setTimeout } from 'node:timers/promises';
import { doneAfter, look, type Marks, since, type Watched } from '../../clinic/arriving.ts';
import { MANIFEST } from '../../clinic/listing.ts';
import type { Person } from '../../model/clinic.ts';
import { SETTINGS } from '../../papers/inputNames.ts';
import type { Door } from '../door.ts';
import { EXIT, reasonOf, WrongUse } from '../exits.ts';
import { wrongUse } from '../tell.ts';
import { type Asked, ask, type ClinicOptions } from './asked.ts';
import type { Lock } from './lock.ts';
import type { Ran } from './run.ts';
import { walk } from './walk.ts';

/**
 * Milliseconds between two looks at least, and so many times as long as a look takes: a large folder on a slow share is not
 * looked at all the time. After what may pass by itself (a full disk, a file another program holds) the next try.
 */
const LOOK_EVERY = 2_000;
const SHARE_OF_TIME = 20;
const RETRY = 60_000;
const MAY_PASS = /\.(cannotOpen|vanished|unsaved|closed)$/;

export interface Keeping {
  folder: string;
  out: string;
  /** Milliseconds for which a file must not have changed. */
  settle: number;
  lock: Lock;
  stopped(): boolean;
  /** One run over the folder. */
  run(asked: Asked, door: Door): Promise<{ ran: Ran; exit: number }>;
}

/**
 * Looks at the folder again and again, and runs over it when something in it is new, changed or gone and has come to rest. The
 * looks are our own: what a system tells of changes does not come from network shares. Nobody is told anything; the worklist
 * says when it was made. Ends when asked to.
 */
export async function keepReady(keeping: Keeping, given: ClinicOptions, door: Door): Promise<number> {
  const { tell, print, complain } = door;
  const { folder, settle } = keeping;
  let watched: Watched = new Map();
  let done: Marks | null = null;
  let retryAt = Number.POSITIVE_INFINITY;
  let said = '';
  const trouble = (text: string): void => {
    if (text !== said) complain(text);
    said = text;
  };
  print(tell.say('cli.clinic.keeping', { folder }));
  while (!keeping.stopped()) {
    const begun = performance.now();
    let took = 0;
    if (!keeping.lock.holds()) {
      complain(tell.say('cli.clinic.lockLost', { path: keeping.out }));
      return EXIT.partly;
    }
    try {
      watched = look(watched, marksOf(folder, keeping.out), begun);
      took = performance.now() - begun;
      const { moving, settled } = since(done ?? new Map(), watched, begun, settle);
      // What says of everyone is read when it has come to rest.
      const whole = !moving.has(MANIFEST) && !moving.has(SETTINGS);
      if (whole && (settled.size > 0 || begun >= retryAt)) {
        const asked = await ask(folder, given, { ...door, today: door.day() });
        const arriving = new Set(asked.people.filter((person) => touches(person, moving)));
        if (done !== null) print(tell.say('cli.clinic.again', { n: touched(asked, settled) }));
        const { ran } = await keeping.run({ ...asked, arriving }, { ...door, today: door.day() });
        const again =
          ran.stopped !== null || ran.outcomes.some(({ refusals }) => refusals.some(({ key }) => MAY_PASS.test(key)));
        retryAt = again ? performance.now() + RETRY : Number.POSITIVE_INFINITY;
        done = doneAfter(done ?? new Map(), watched, moving);
        said = '';
      }
    } catch (error) {
      // A settings file half way through being saved, a share that is away: the next look may find it right.
      trouble(error instanceof WrongUse ? wrongUse(tell, error) : reasonOf(error));
    }
    const rest = Math.max(Math.min(LOOK_EVERY, settle), took * SHARE_OF_TIME);
    await pause(Math.min(rest, RETRY), keeping.stopped);
  }
  return EXIT.done;
}

const touched = ({ people }: Asked, paths: ReadonlySet<string>): number =>
  people.filter((person) => touches(person, paths)).length;

const touches = ({ files, settings }: Person, paths: ReadonlySet<string>): boolean =>
  [...files, ...(settings ? [settings] : [])].some((path) => paths.has(path));

const STEP = 100;

async function pause(milliseconds: number, stopped: () => boolean): Promise<void> {
  const end = performance.now() + milliseconds;
  while (performance.now() < end && !stopped()) await setTimeout(Math.min(STEP, milliseconds));
}

/** Size and time of change of every file that a run would read; what cannot be looked at has a mark too. */
function marksOf(folder: string, out: string): Marks {
  const seen = walk(folder, out);
  const marks = new Map<string, string>();
  const own = seen.manifest ? [MANIFEST] : [];
  for (const path of [...seen.exports, ...seen.unknown, ...seen.settings, ...own]) {
    try {
      const { size, mtimeMs } = statSync(join(folder, path));
      marks.set(path, `${size} ${mtimeMs}`);
    } catch (error) {
      marks.set(path, reasonOf(error));
    }
  }
  for (const { path, reason } of seen.closed) marks.set(path, reason);
  for (const path of seen.folders) marks.set(`${path}/`, '');
  return marks;
}
