import { join } from 'node:path';
import { personMark } from '../../clinic/mixups.ts';
import { because, blank, refused } from '../../clinic/outcome.ts';
import { withheld } from '../../clinic/withheld.ts';
import type { Outcome, Person } from '../../model/clinic.ts';
import type { Door } from '../door.ts';
import type { Asked, ClinicOptions } from './asked.ts';
import { lastOutcome } from './disk.ts';
import { clearHeld, giveOutAll, withdraw } from './held.ts';
import type { Log, LogEntry } from './log.ts';
import { type Ended, runAll } from './pool.ts';
import { progress } from './progress.ts';
import type { Task, Turn } from './turn.ts';
import { poolOf } from './turnPool.ts';

/** Without room or leave to write, going on would only fail once for each person. */
const NO_USE_GOING_ON = ['ENOSPC', 'EDQUOT', 'EROFS'];

/** Ended early because it was asked to, and not for a reason of the system's. */
export const ASKED_TO_STOP = 'asked';

/** What became of everyone. */
export interface Ran {
  outcomes: Outcome[];
  kept: number;
  /** The system's reason for which the run ended early, or `ASKED_TO_STOP`. */
  stopped: string | null;
}

const taskOf = (person: Person, { folder, out, options, since, today }: Asked, given: ClinicOptions): Task => ({
  person,
  folder,
  out,
  options,
  since,
  today,
  make: {
    further: given.further === true,
    html: given.html === true,
    numbers: given.numbers === true,
    attach: given.attach === true,
    fhir: given.fhir === true || given.fhirReadings === true,
    fhirReadings: given.fhirReadings === true,
  },
  dry: given.dryRun === true,
});

/** Gives everyone their turn, in worker threads here or through a queue. `interrupted` is asked before each. */
export async function runPeople(
  asked: Asked,
  given: ClinicOptions,
  threads: number,
  { version, tell, print, complain }: Door,
  log: Log = () => {},
  interrupted: () => boolean = () => false,
): Promise<Ran> {
  const bar = progress(asked.people.length - (asked.arriving?.size ?? 0), tell);
  const outcomes = new Map<Person, Outcome>();
  let kept = 0;
  let stopped: string | null = null;
  const nothing = (person: Person) => blank(person, { key: '', printed: asked.today, version });
  const onEnd = (task: Task, ended: Ended<Turn>): void => {
    bar.step();
    if (ended.ok) {
      const { outcome, how, reason } = ended.result;
      outcomes.set(task.person, outcome);
      if (!outcome.facts && outcome.key === '' && !task.dry) withdraw(asked.out, outcome);
      if (how === 'kept') kept++;
      if (how === 'unsaved' && NO_USE_GOING_ON.includes(reason ?? '')) stopped ??= reason!;
      log(entryOf(outcome, how, ended.result.milliseconds));
    } else {
      const outcome = refused(nothing(task.person), because(ended.why, { actual: ended.detail }));
      outcomes.set(task.person, outcome);
      if (!task.dry) withdraw(asked.out, outcome);
      log(entryOf(outcome, 'stopped'));
    }
  };
  const waits = (person: Person): boolean => asked.arriving?.has(person) ?? false;
  const tasks = asked.people.filter((person) => !waits(person)).map((person) => taskOf(person, asked, given));
  const stop = (): boolean => stopped !== null || interrupted();
  if (given.queue !== undefined) {
    const { reach } = await import('./queue.ts');
    const queue = { queue: await reach(given.queue), seconds: given.queueWait };
    print(tell.say('cli.clinic.queueing', queue));
    const { throughQueue } = await import('./enqueue.ts');
    if (!(await throughQueue({ url: given.queue, wait: given.queueWait }, tasks, onEnd, stop))) {
      stopped ??= 'ETIMEDOUT';
      complain(tell.say('cli.clinic.queueGone', queue));
    }
  } else {
    await runAll(tasks, poolOf(threads, given), onEnd, stop);
  }
  bar.end();
  if (interrupted()) stopped ??= ASKED_TO_STOP;
  const left = (person: Person): Outcome => {
    if (!waits(person)) return refused(nothing(person), because('notRun'));
    const last = lastOutcome(join(asked.out, person.stem));
    return last?.facts ? last : refused(nothing(person), because('arriving'));
  };
  const all = asked.people.map((person) => outcomes.get(person) ?? left(person));
  if (given.dryRun) return { outcomes: withheld(all), kept, stopped };
  const everyone = asked.people.every((person) => outcomes.has(person) || waits(person));
  const looked = !everyone ? 'some' : asked.shard ? 'part' : 'all';
  const checked = giveOutAll(all, () => asked.out, looked);
  if (looked === 'all') clearHeld(asked.out, true);
  return { outcomes: checked.outcomes, kept, stopped: stopped ?? checked.unsaved };
}

function entryOf(outcome: Outcome, how: Turn['how'] | 'stopped', ms?: number): LogEntry {
  const { facts, refusals, fhirLeft } = outcome;
  return {
    event: 'person',
    person: personMark(outcome.code),
    how,
    read: facts !== null,
    ...(refusals[0] ? { why: refusals[0].key } : {}),
    key: outcome.key,
    inputs: outcome.inputHashes,
    outputs: outcome.outputs.map(({ sha256 }) => sha256),
    ...(facts ? { rows: facts.rows, readings: facts.readings } : {}),
    ...(fhirLeft ? { fhirLeft } : {}),
    ...(ms === undefined ? {} : { ms }),
  };
}
