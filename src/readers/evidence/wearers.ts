import type { PersonMark } from '../../model/input.ts';
import type { Reading } from '../reading.ts';
import type { Column } from '../table/header.ts';
import { cellText } from '../table/records.ts';
import type { Table } from '../table/tables.ts';
import { TIME_FAULT } from '../times/wall.ts';
import { markKey, markOf } from './persons.ts';

/** Different marks kept; a file of more people is refused for two of them. */
const MOST = 1000;

/** Collects who the rows with a time are about. First and last name in columns of their own are one name. */
export function addWearers({ records, marks }: Reading, table: Table, columns: Column[], fault: Uint8Array): void {
  const people = columns.filter(({ role }) => role === 'person');
  const names = people.filter(({ mark }) => (mark ?? 'name') === 'name');
  const known = new Set(marks.map(markKey));
  const groups = [names, ...people.filter((column) => !names.includes(column)).map((column) => [column])];
  for (const group of groups.filter(({ length }) => length > 0)) {
    let last = '';
    for (let k = 0; k < fault.length && known.size < MOST; k++) {
      if (fault[k] !== TIME_FAULT.none) continue;
      const text = group
        .map(({ index }) => cellText(records, table.from + k, index))
        .filter((part) => part !== '')
        .join(' ');
      if (text === last || text === '') continue;
      last = text;
      addMark(marks, known, markOf(group[0]!.mark ?? 'name', text));
    }
  }
}

export function addMark(marks: PersonMark[], known: Set<string>, mark: PersonMark | undefined): void {
  if (!mark || known.has(markKey(mark))) return;
  known.add(markKey(mark));
  marks.push(mark);
}
