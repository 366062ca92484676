import type { Column, Making, Row } from './columns.ts';

const ADA = { first: 'Ada', last: 'Fjord', record: '88417', email: 'ada.fjord@example.org', user: 'ada-f' };
const BO = { first: 'Bo', last: 'Berg', record: '90233', email: 'bo.berg@example.org', user: 'bo-b' };

/** Lines above the table that name somebody. */
export function personLines({ shape, words }: Making, other = false): string[][] {
  const { names } = words;
  const who = other ? BO : ADA;
  if (shape.person === 'above' || shape.person === 'two-files') return [[`${names.person}: ${who.first} ${who.last}`]];
  if (shape.person === 'record-above') return [[`${names.record}: ${who.record}`]];
  if (shape.person === 'id-above' || shape.person === 'two-ids') return [[`ID: ${other ? 13 : 12}`]];
  if (shape.person === 'birth-above') return [[`${names.birth}: 14.03.1988`]];
  return [];
}

/** Columns that name somebody; where there are two, the second owns the later half of the rows. */
export function personColumns({ shape, words, truth }: Making): Column[] {
  const { names } = words;
  const middle = truth.readings[Math.floor(truth.readings.length / 2)]!.wall;
  const two = shape.person.startsWith('two-');
  const of =
    (key: keyof typeof ADA): Column['cell'] =>
    ({ wall }: Row) =>
      (two && wall > middle ? BO : ADA)[key];
  const column = (name: string, cell: Column['cell'], role = 'person'): Column => ({ name, role, cell });
  switch (shape.person) {
    case 'column':
    case 'two-column':
      return [column(names.person!, (row, k) => `${of('first')(row, k)} ${of('last')(row, k)}`)];
    case 'first-and-last':
      return [column(names.firstName!, of('first')), column(names.lastName!, of('last'))];
    case 'two-last-names':
      return [column(names.firstName!, () => 'Ada'), column(names.lastName!, of('last'))];
    case 'record':
    case 'two-records':
      return [column(names.record!, of('record'))];
    case 'email':
    case 'two-emails':
      return [column(names.email!, of('email'))];
    case 'user':
      return [column(names.user!, of('user'))];
    case 'two-unclear': {
      // By turns, and one of them far higher (write.ts).
      const second = new Set(truth.readings.filter((_, k) => k % 2 === 1).map(({ wall }) => wall));
      return [column('W9', ({ wall }) => (second.has(wall) ? 'A' : 'B'))];
    }
    default:
      return [];
  }
}
