import { readdirSync, rmSync } from 'node:fs';
import { join } from 'node:path';
import { asOutcome } from '../../clinic/recorded.ts';
import type { Shard } from '../../clinic/shards.ts';
import type { Outcome } from '../../model/clinic.ts';
import { MOST_BYTES } from '../../papers/inputNames.ts';
import { isLocalDate } from '../../time/calendar.ts';
import { opened, WrongUse } from '../exits.ts';
import { readPlainFile } from '../plainFile.ts';
import { saveAll } from '../save.ts';
import { sayable } from './sayable.ts';

/** What one run, or one part of a divided run, found: enough to make the worklist of the whole. */
export interface Part {
  schema: 1;
  index: number;
  of: number;
  printed: string;
  version: string;
  outcomes: Outcome[];
  passedOver: string[];
}

const NAME = /^run-(\d+)-of-(\d+)\.json$/;
const nameOf = ({ index, of }: Shard): string => `run-${index}-of-${of}.json`;

/** Keeps a part, and takes away those of a folder divided differently: they would tell people twice. */
export function savePart(out: string, part: Part): void {
  saveAll(out, [{ name: nameOf(part), bytes: `${JSON.stringify(part)}\n` }]);
  for (const name of readdirSync(out)) {
    const of = NAME.exec(name)?.[2];
    if (of !== undefined && Number(of) !== part.of) rmSync(join(out, name), { force: true });
  }
}

/** A part, and the results folder it was read from. */
export interface FoundPart extends Part {
  folder: string;
}

/** All parts in some results folders, whole: throws WrongUse when one is missing, as its people would be. */
export function partsIn(folders: readonly string[]): FoundPart[] {
  const parts = new Map<string, FoundPart>();
  for (const folder of folders) {
    for (const name of opened(folder, () => readdirSync(folder)).filter((one) => NAME.test(one))) {
      const part = read(join(folder, name));
      parts.set(`${part.index}/${part.of}`, { ...part, folder });
    }
  }
  const all = [...parts.values()].sort((a, b) => a.index - b.index);
  const of = all[0]?.of;
  if (of === undefined) throw new WrongUse('noParts', { path: folders.join(', ') });
  if (all.some((part) => part.of !== of)) throw new WrongUse('partsDiffer', { path: folders.join(', ') });
  const missing = Array.from({ length: of }, (_, i) => i + 1).filter((index) => !parts.has(`${index}/${of}`));
  if (missing.length > 0) throw new WrongUse('partsMissing', { parts: missing.map((i) => `${i}/${of}`).join(', ') });
  return all;
}

function read(path: string): Part {
  const text = opened(path, () => readPlainFile(path, MOST_BYTES)).toString('utf8');
  try {
    const content: unknown = JSON.parse(text);
    if (isPart(content)) return content;
  } catch {
    // No JSON: no part of ours.
  }
  throw new WrongUse('wrongRun', { path });
}

/** A divided folder has as many parts as machines; more is no number of ours. */
const MOST_PARTS = 10_000;

function isPart(content: unknown): content is Part {
  if (typeof content !== 'object' || content === null) return false;
  const { schema, index, of, printed, version, outcomes, passedOver } = content as Record<keyof Part, unknown>;
  const whole = (n: unknown): n is number => Number.isInteger(n) && (n as number) >= 1 && (n as number) <= MOST_PARTS;
  return (
    schema === 1 &&
    whole(index) &&
    whole(of) &&
    index <= of &&
    typeof printed === 'string' &&
    isLocalDate(printed) &&
    typeof version === 'string' &&
    Array.isArray(outcomes) &&
    outcomes.every((outcome) => asOutcome(outcome, sayable) !== null) &&
    Array.isArray(passedOver) &&
    passedOver.every((name) => typeof name === 'string')
  );
}
