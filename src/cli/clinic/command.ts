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
import { lock } from './lock.ts';
import { type Log, openLog } from './log.ts';
import { savePart } from './parts.ts';
import { connectionOf } from './queue.ts';
import { type Ran, runPeople } from './run.ts';
import { saveLists } from './save.ts';
import { tellFhir } from './tellFhir.ts';
import { tellLists } from './tellLists.ts';
import { writeManifest } from './writeManifest.ts';

/** So many people a thread are worth its start. */
const WORTH_A_THREAD = 4;

/** Makes the papers of everyone in a folder, and the worklist. Gives the exit code. */
export async function clinic(folder: string, given: ClinicOptions, door: Door): Promise<number> {
  const { tell, print, complain } = door;
  const asked = await ask(folder, given, door);
  print(tell.say('cli.clinic.found', { people: asked.everyone, manifest: asked.manifest ? 'yes' : 'no' }));
  if (asked.shard) print(tell.say('cli.clinic.part', { n: asked.people.length, part: given.shard! }));
  if (given.writeManifest) return writeManifest(asked, door);
  const threads = Math.max(
    1,
    Math.min(given.threads ?? availableParallelism(), Math.ceil(asked.people.length / WORTH_A_THREAD)),
  );
  if (given.dryRun) return dryRun(asked, given, threads, door);
  if (given.queue !== undefined) connectionOf(given.queue);
  // Better to know now than when everyone has been worked on: the worklist is such a page too, and has its fonts.
  threadFile();
  fonts();
  await openPages(door);
  let release: () => void;
  try {
    release = lock(asked.out, asked.shard);
  } catch (error) {
    if (!(error instanceof WrongUse)) throw error;
    complain(wrongUse(tell, error));
    return EXIT.partly;
  }
  const stopping = onInterrupt(() => complain(tell.say('cli.clinic.stopping')));
  try {
    const log = openLog(asked.out, () => new Date().toISOString());
    log({
      event: 'start',
      run: randomUUID(),
      version: door.version,
      node: process.version,
      people: asked.people.length,
      threads,
      ...(given.shard === undefined ? {} : { shard: given.shard }),
    });
    const ran = await runPeople(asked, given, threads, door, log, stopping.asked);
    return await finish(asked, ran, door, log);
  } finally {
    stopping.off();
    release();
  }
}

async function finish(asked: Asked, ran: Ran, door: Door, log: Log): Promise<number> {
  const { tell, print, complain } = door;
  const { outcomes, kept, stopped } = ran;
  const lines = rank(outcomes, asked.thresholds);
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
      const names = await saveLists(asked.out, content, { ...part, ...asked.look }, door);
      print(tell.say('cli.clinic.written', { folder: asked.out, names: names.join(', ') }));
    }
  } catch (error) {
    unsaved = true;
    complain(
      tell.say('cli.clinic.listsUnsaved', { path: asked.out, reason: { sentence: reasonText(tell, reasonOf(error)) } }),
    );
  }
  if (kept > 0) print(tell.say('cli.clinic.kept', { n: kept }));
  tellFhir(door, outcomes);
  tellLists(door, lines, asked.passedOver);
  if (stopped !== null) complain(tell.say('cli.clinic.stopped', { reason: stopped, path: asked.out }));
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
