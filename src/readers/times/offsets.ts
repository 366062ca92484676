import { bytesOf } from '../../bytes/text.ts';
import { NO_OFFSET } from '../../time/offset.ts';
import type { Reading } from '../reading.ts';
import type { Column } from '../table/header.ts';
import { cellText } from '../table/records.ts';
import type { Table } from '../table/tables.ts';
import { readClock } from './clockCell.ts';
import { newStamp } from './stamp.ts';
import { TIME_FAULT, type Walls } from './wall.ts';

/** Fills offsets from a column of their own: `+02:00`, or a zone's name, which is kept as the file's zone. */
export function applyOffsets(reading: Reading, table: Table, columns: Column[], offset: Int16Array): void {
  const column = columns.find((candidate) => candidate.role === 'offset');
  if (!column) return;
  const known = new Map<string, number>();
  for (let k = 0; k < offset.length; k++) {
    if (offset[k] !== NO_OFFSET) continue;
    const text = cellText(reading.records, table.from + k, column.index);
    if (text === '') continue;
    let minutes = known.get(text);
    if (minutes === undefined) {
      minutes = offsetOf(text);
      if (known.size < 500) known.set(text, minutes);
      if (minutes === NO_OFFSET && /^[A-Z][A-Za-z]+\/[A-Za-z_/+-]+$/.test(text) && !reading.zones.has(text))
        reading.zones.set(text, reading.records.line[table.from + k]!);
    }
    offset[k] = minutes;
  }
}

function offsetOf(text: string): number {
  const stamp = newStamp();
  const bytes = bytesOf(`00:00${text.replace(/^(?:utc|gmt)\s*/i, '')}`);
  return /^(?:utc|gmt)?\s*[+-]\d|^(?:z|utc|gmt)$/i.test(text) && readClock(bytes, 0, bytes.length, stamp)
    ? stamp.offset === NO_OFFSET
      ? 0
      : stamp.offset
    : NO_OFFSET;
}

/** Rows with and rows without an offset cannot stand on one line unless the user names the zone. A date alone needs none. */
export function offsetsAgree(reading: Reading, walls: Walls, lineOf: (k: number) => number): boolean {
  if (reading.settings.zone) return true;
  if (setFewAside(walls)) return true;
  const { wall, offset, dateOnly } = walls;
  let withOffset = -1;
  let without = -1;
  for (let k = 0; k < wall.length; k++) {
    if (Number.isNaN(wall[k]) || dateOnly[k] === 1) continue;
    if (offset[k] === NO_OFFSET) {
      if (without < 0) without = k;
    } else if (withOffset < 0) withOffset = k;
    if (without >= 0 && withOffset >= 0) {
      reading.book.add('offsets-mixed', 'refusal', lineOf(Math.max(without, withOffset)), {
        actual: { is: 'line', line: lineOf(withOffset) },
        expected: { is: 'line', line: lineOf(without) },
        question: { of: 'zone' },
      });
      return false;
    }
  }
  return true;
}

/** So small a share of rows of the other kind is set aside, each told with its line (ours). */
const FEW = 0.05;

/** Times of the rarer kind, with or without an offset, where they are few: what the wearer's clock showed is not known of them. */
function setFewAside({ wall, offset, fault, dateOnly }: Walls): boolean {
  let timed = 0;
  let bare = 0;
  for (let k = 0; k < wall.length; k++) {
    if (Number.isNaN(wall[k]) || dateOnly[k] === 1) continue;
    timed++;
    if (offset[k] === NO_OFFSET) bare++;
  }
  const fewer = Math.min(bare, timed - bare);
  if (fewer === 0 || fewer > timed * FEW) return false;
  const odd = (k: number): boolean => (offset[k] === NO_OFFSET) === (fewer === bare);
  for (let k = 0; k < wall.length; k++) {
    if (Number.isNaN(wall[k]) || dateOnly[k] === 1 || !odd(k)) continue;
    fault[k] = TIME_FAULT.unreadable;
    wall[k] = Number.NaN;
  }
  return true;
}
