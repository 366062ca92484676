import { randomUUID } from 'node:crypto';
import { availableParallelism } from 'node:os';
import { contentOf } from '../../clinic/lists.ts';
import { countTiers, rank } from '../../clinic/worklist.ts';
import type { Door } from '../door.ts';
import { EXIT, reasonOf, WrongUse } from '../exits.ts';
import { fonts, threadFile } from '../home.ts';
import { reasonText, wrongUse } from '../tell.ts';
import { openPages } from '../webPage.ts';
import { type Asked, ask, type ClinicOptions } from './asked.ts';
import { dryRun } from './dry.ts';
import { exitOf } from './exit.ts';
import { formerIn } from './former.ts';
import { keepReady } from './keepReady.ts';
import { type Lock, lock } from './lock.ts';
import { type Log, openLog } from './log.ts';
import { savePart } from './parts.ts';
import { connectionOf } from './queue.ts';
import { ASKED_TO_STOP, type Ran, runPeople } from './run.ts';
import { placesOf, withSettings } from './runSettings.ts';
import { saveLists } from './save.ts';
import { tellFhir } from './tellFhir.ts';
import { tellLists } from './tellLists.ts';
import { writeManifest } from './writeManifest.ts';

/** Seconds for which a file must not have changed before it is read: a copy over a slow network pauses. */
const SETTLE = 15;
/** So many people a thread are worth its start. */
const WORTH_A_THREAD = 4;

/** Makes the papers of everyone in a folder, and the worklist. Gives the exit code. */
export async function clinic(named: string | undefined, options: ClinicOptions, door: Door): Promise<number> {
  const { tell, print, complain } = door;
  const { folder, given } = await withSettings(named, options, door);
  const asked = given.keepReady && !given.dryRun ? null : await ask(folder, given, door);
  if (asked) {
    print(tell.say('cli.clinic.found', { people: asked.everyone, manifest: asked.manifest ? 'yes' : 'no' }));
    if (asked.shard) print(tell.say('cli.clinic.part', { n: asked.people.length, part: given.shard! }));
    if (given.writeManifest) return writeManifest(asked, door);
    if (given.dryRun) return dryRun(asked, given, threadsFor(asked, given), door);
  }
  if (given.queue !== undefined) connectionOf(given.queue);
  // Better to know now than when everyone has been worked on: the worklist is such a page too, and has its fonts.
  threadFile();
  fonts();
  await openPages(door);
  const { out, shard } = asked ?? placesOf(folder, given);
  let held: Lock;
  try {
    held = lock(out, shard);
  } catch (error) {
    if (!(error instanceof WrongUse)) throw error;
    complain(wrongUse(tell, error));
    return EXIT.partly;
  }
  const stopping = onInterrupt(() => complain(tell.say('cli.clinic.stopping')));
  try {
    const log = openLog(out, () => new Date().toISOString());
    const run = (now: Asked, at: Door) => runOnce(now, given, at, log, stopping.asked);
    if (asked) return (await run(asked, door)).exit;
    const settle = (given.settle ?? SETTLE) * 1000;
    return await keepReady({ folder, out, settle, lock: held, stopped: stopping.asked, run }, given, door);
  } finally {
    stopping.off();
    held.release();
  }
}

const threadsFor = ({ people }: Asked, given: ClinicOptions): number =>
  Math.max(1, Math.min(given.threads ?? availableParallelism(), Math.ceil(people.length / WORTH_A_THREAD)));

async function runOnce(
  asked: Asked,
  given: ClinicOptions,
  door: Door,
  log: Log,
  stopped: () => boolean,
): Promise<{ ran: Ran; exit: number }> {
  const threads = threadsFor(asked, given);
  log({
    event: 'start',
    run: randomUUID(),
    version: door.version,
    node: process.version,
    people: asked.people.length,
    threads,
    ...(given.shard === undefined ? {} : { shard: given.shard }),
  });
  const ran = await runPeople(asked, given, threads, door, log, stopped);
  return { ran, exit: await finish(asked, ran, door, log) };
}

async function finish(asked: Asked, ran: Ran, door: Door, log: Log): Promise<number> {
  const { tell, print, complain } = door;
  const { outcomes, kept, stopped } = ran;
  const lines = rank(outcomes, asked.thresholds);
  // Only where everyone is known is it known who is not of this run.
  const former = asked.shard ? [] : formerIn(asked.out, new Set(outcomes.map(({ stem }) => stem)));
  let unsaved = false;
  try {
    const part = { index: 1, of: 1, ...asked.shard, printed: asked.today, version: door.version };
    savePart(asked.out, { schema: 1, ...part, outcomes, passedOver: asked.passedOver });
    if (!asked.shard) {
      const content = contentOf(
        lines,
        asked.thresholds,
        asked.passedOver,
        true,
        asked.byVisit ? 'visit' : 'pressing',
        asked.places,
      );
      const names = await saveLists(
        asked.out,
        { ...content, former },
        { ...part, time: asked.time, ...asked.look },
        door,
      );
      print(tell.say('cli.clinic.written', { folder: asked.out, names: names.join(', ') }));
    }
  } catch (error) {
    unsaved = true;
    complain(
      tell.say('cli.clinic.listsUnsaved', { path: asked.out, reason: { sentence: reasonText(tell, reasonOf(error)) } }),
    );
  }
  if (asked.shard) print(tell.say('cli.clinic.partHeld', { path: asked.out }));
  if (kept > 0) print(tell.say('cli.clinic.kept', { n: kept }));
  tellFhir(door, outcomes);
  tellLists(door, lines, asked.passedOver, former);
  if (stopped !== null) {
    const reason = stopped === ASKED_TO_STOP ? tell.say('cli.clinic.askedToStop') : reasonText(tell, stopped);
    complain(tell.say('cli.clinic.stopped', { reason: { sentence: reason }, path: asked.out }));
  }
  const exit = stopped !== null || unsaved ? EXIT.partly : exitOf(outcomes);
  log({ event: 'end', counts: countTiers(lines), exit });
  return exit;
}

/** Asked to stop once, a run ends what it has begun and says who is left; asked twice, it ends at once. */
function onInterrupt(said: () => void): { asked: () => boolean; off: () => void } {
  let asked = false;
  const off = (): void => {
    for (const signal of ['SIGINT', 'SIGTERM'] as const) process.off(signal, stop);
  };
  const stop = (): void => {
    asked = true;
    off();
    said();
  };
  for (const signal of ['SIGINT', 'SIGTERM'] as const) process.on(signal, stop);
  return { asked: () => asked, off };
}
