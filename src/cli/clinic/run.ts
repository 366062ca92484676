import { join } from 'node:path';
import { personMark } from '../../clinic/mixups.ts';
import { because, blank, refused } from '../../clinic/outcome.ts';
import { withheld } from '../../clinic/withheld.ts';
import type { Outcome, Person } from '../../model/clinic.ts';
import type { Door } from '../door.ts';
import type { Asked, ClinicOptions } from './asked.ts';
import { lastOutcome, putInPlace } from './disk.ts';
import type { Log, LogEntry } from './log.ts';
import { type Ended, runAll } from './pool.ts';
import { progress } from './progress.ts';
import type { Task, Turn } from './turn.ts';
import { poolOf } from './turnPool.ts';

/** Without room or leave to write, going on would only fail once for each person. */
const NO_USE_GOING_ON = ['ENOSPC', 'EDQUOT', 'EROFS'];

/** What became of everyone. */
export interface Ran {
  outcomes: Outcome[];
  kept: number;
  /** The system's reason for which the run ended early. */
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
  { version, tell }: Door,
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
    const { throughQueue } = await import('./enqueue.ts');
    await throughQueue(given.queue, tasks, onEnd, stop);
  } else {
    await runAll(tasks, poolOf(threads, given), onEnd, stop);
  }
  bar.end();
  if (interrupted()) stopped ??= 'SIGINT';
  const left = (person: Person): Outcome => {
    if (!waits(person)) return refused(nothing(person), because('notRun'));
    const last = lastOutcome(join(asked.out, person.stem));
    return last?.facts ? last : refused(nothing(person), because('arriving'));
  };
  const all = asked.people.map((person) => outcomes.get(person) ?? left(person));
  return { outcomes: withdrawMixUps(all, () => (given.dryRun ? null : asked.out)), kept, stopped };
}

/**
 * Papers that may show someone else's days are worse than none: they are taken away, and both people told. `outOf`: the
 * results folder of a person, null where nothing is to be written.
 */
export function withdrawMixUps(outcomes: readonly Outcome[], outOf: (outcome: Outcome) => string | null): Outcome[] {
  return withheld(outcomes).map((outcome, i) => {
    if (outcome === outcomes[i]) return outcome;
    const out = outOf(outcomes[i]!);
    if (out !== null) withdraw(out, outcome);
    return outcome;
  });
}

/** Takes away what an earlier run made for someone who now has no papers: it is of other files or of someone else. */
function withdraw(out: string, outcome: Outcome): void {
  const folder = join(out, outcome.stem);
  const last = lastOutcome(folder);
  try {
    // Without a key it is never taken for an answer: once the files are put right, the next run makes the papers.
    if (last) putInPlace(folder, { ...outcome, key: '' }, [], last);
  } catch {
    // On a full disk the old papers stay; the worklist says that they are not of this run.
  }
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
