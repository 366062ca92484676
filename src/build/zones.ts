import { createRequire } from 'node:module';

const require = createRequire(import.meta.url);

/** What a row of moment-timezone's table holds once unpacked: until when each offset (minutes west) holds, the last for ever. */
interface Unpacked {
  name: string;
  untils: number[];
  offsets: number[];
}

const FIRST = Date.UTC(1990, 0, 1);
const LAST = Date.UTC(2050, 0, 1);
/** Area/Place, and UTC: names that say nothing of a place are no zones here (`time/zone.ts`). */
const NAME = /^(?!Etc\/)[A-Z]\w+(\/[A-Z][\w+-]+)+$|^UTC$/;

/**
 * Zone rules that travel with the program, as JSON: from the packed IANA table of moment-timezone, cut to the years that
 * readings come from. Zones whose clocks ran alike in these years share a row: their names, then their offsets (minutes
 * east), then three characters a change: which offset comes, and after which of `waits` (minutes, two digits base 36).
 */
export function zoneRules(): string {
  const packed = require('moment-timezone/data/packed/latest.json') as {
    version: string;
    zones: string[];
    links: string[];
  };
  const moment = require('moment-timezone/moment-timezone-utils') as {
    tz: { unpack(row: string): Unpacked };
  };
  const names = new Map(packed.zones.map((row) => [row.split('|')[0]!, [row.split('|')[0]!]]));
  for (const link of packed.links) {
    const [to, name] = link.split('|') as [string, string];
    (names.get(to) ?? names.get(name))!.push(names.has(to) ? name : to);
  }
  const waits: number[] = [];
  const rows = new Map<string, string[]>();
  for (const row of packed.zones) {
    const zone = moment.tz.unpack(row);
    const wanted = names.get(zone.name)!.filter((name) => NAME.test(name));
    if (wanted.length === 0) continue;
    const rule = ruleOf(zone, waits);
    rows.set(rule, [...(rows.get(rule) ?? []), ...wanted]);
  }
  const zones = [...rows].map(([rule, group]) => `${[...new Set(group)].sort().join(' ')}|${rule}`).sort();
  return `${JSON.stringify({ iana: packed.version, from: FIRST, until: LAST, waits, zones }, null, 1)}\n`;
}

function ruleOf({ untils, offsets }: Unpacked, waits: number[]): string {
  const known: number[] = [];
  let changes = '';
  let at = FIRST;
  let held: number | undefined;
  for (let i = 0; i < offsets.length; i++) {
    const start = i === 0 ? Number.NEGATIVE_INFINITY : untils[i - 1]!;
    const end = untils[i] ?? Number.POSITIVE_INFINITY;
    const offset = -offsets[i]!;
    if (end <= FIRST || start >= LAST || offset === held) continue;
    const index = placeIn(known, offset);
    if (held !== undefined) {
      changes +=
        index.toString(36) +
        placeIn(waits, (start - at) / 60_000)
          .toString(36)
          .padStart(2, '0');
      at = start;
    }
    held = offset;
  }
  return `${known.join(' ')}|${changes}`;
}

function placeIn(list: number[], value: number): number {
  const index = list.indexOf(value);
  return index >= 0 ? index : list.push(value) - 1;
}
