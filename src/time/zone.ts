import { MINUTE_MS } from './calendar.ts';
import type { LocalClock } from './clock.ts';
import rules from './zones.json' with { type: 'json' };

/*
 * Zone rules travel with the program: what an engine knows of zones is as old as the engine, and two engines put the
 * same reading an hour apart without a word. `zones.json` is written by `npm run docs` (build/zones.ts).
 */

/** A zone's offsets in minutes, the first and each that follows, and from when each of those that follow holds. */
interface Rules {
  offsets: number[];
  changes: number[];
}

let rowOf: Map<string, string> | undefined;
const unpacked = new Map<string, Rules>();

function rowsByName(): Map<string, string> {
  if (!rowOf) {
    rowOf = new Map();
    for (const row of rules.zones) {
      for (const name of row.slice(0, row.indexOf('|')).split(' ')) rowOf.set(name, row);
    }
  }
  return rowOf;
}

/**
 * Whether the name is an IANA zone of the form Area/Place, or UTC. Abbreviations (EST, IST: several places claim them)
 * and fixed offsets (Etc/GMT+3, whose sign is reversed) say nothing of the wearer's clock and are not zones here.
 */
export function isZone(name: string): boolean {
  return rowsByName().has(name);
}

/** Every zone there are rules for, by name. */
export const zoneNames = (): string[] => [...rowsByName().keys()].sort();

/**
 * The clock of a zone, right from `from` to `to` (instants); outside, the nearest offset is carried on, as it is beyond the
 * years of the rules. @throws RangeError for an unknown zone.
 */
export function zoneClock(name: string, from: number, to: number): LocalClock {
  const { offsets, changes } = rulesOf(name);
  const clock: LocalClock = { from: [Number.NEGATIVE_INFINITY], offset: [offsets[0]! * MINUTE_MS] };
  for (let i = 0; i < changes.length && changes[i]! <= to; i++) {
    const offset = offsets[i + 1]! * MINUTE_MS;
    if (changes[i]! <= from) clock.offset[0] = offset;
    else {
      clock.from.push(changes[i]!);
      clock.offset.push(offset);
    }
  }
  return clock;
}

function rulesOf(name: string): Rules {
  const known = unpacked.get(name);
  if (known) return known;
  const row = rowsByName().get(name);
  if (row === undefined) throw new RangeError(`Unknown zone: ${name}`);
  const [, list, packed] = row.split('|') as [string, string, string];
  const each = list.split(' ').map(Number);
  const found: Rules = { offsets: [each[0]!], changes: [] };
  let at = rules.from;
  for (let i = 0; i < packed.length; i += 3) {
    at += rules.waits[Number.parseInt(packed.slice(i + 1, i + 3), 36)]! * MINUTE_MS;
    found.changes.push(at);
    found.offsets.push(each[Number.parseInt(packed[i]!, 36)]!);
  }
  unpacked.set(name, found);
  return found;
}
