import type { Property } from './shape.ts';

type Call = (...given: never[]) => unknown;
type Module = Record<string, Call>;

/** A fault of a kind that readers have had, planted into one of their modules. */
export interface PlantedFault {
  name: string;
  module: string;
  /** The exports that go wrong. */
  change(real: Module): Module;
  /** Shapes in which it can show. */
  where: Partial<Record<Property, string>>;
}

/** Runs the real function, then spoils what came of it. */
const after = (real: Module, name: string, spoil: (result: never, ...given: never[]) => unknown): Module => ({
  [name]: (...given) => spoil(real[name]!(...given) as never, ...given),
});

interface Cells {
  mark: Uint8Array;
  value: Float64Array;
  state: Uint8Array;
}
interface Stamp {
  half: number;
  ms: number;
  offset: number;
  date: number;
  open: boolean;
}
interface Column {
  name: string;
  role: string;
}

export const FAULTS: PlantedFault[] = [
  {
    name: 'the column of kinds is ignored',
    module: '../../src/readers/notes/kinds.ts',
    change: (real) => after(real, 'rowKind', (kind) => (kind === undefined ? undefined : 'reading')),
    where: { notes: 'kind-shared', unitAt: 'column' },
  },
  {
    name: 'the half of the day is ignored',
    module: '../../src/readers/times/clockCell.ts',
    change: (real) => ({
      ...after(real, 'readClock', (ok, _b, _f, _t, out: Stamp) => morning(ok, out)),
      ...after(real, 'afterDate', (shape, _b, _f, _t, out: Stamp) => morning(shape, out)),
    }),
    where: { time: 'mdy-half' },
  },
  {
    name: 'the person is ignored',
    module: '../../src/timeline/order.ts',
    change: () => ({ onePerson: () => undefined }),
    where: { person: 'two-column' },
  },
  {
    name: 'the offset is dropped',
    module: '../../src/readers/times/dates.ts',
    change: (real) => after(real, 'readStamp', (shape, _b, _f, _t, out: Stamp) => withoutOffset(shape, out)),
    where: { time: 'iso-offset' },
  },
  {
    name: 'another quantity is taken for a fingerstick',
    module: '../../src/readers/table/header.ts',
    change: (real) =>
      after(real, 'columnOf', (column: Column) =>
        /Target|Heart/.test(column.name) ? { ...column, role: 'fingerstick' } : column,
      ),
    where: { decoy: 'target' },
  },
  {
    name: 'a second column of glucose joins the sensor',
    module: '../../src/readers/glucose/sensorColumns.ts',
    change: (real) =>
      after(real, 'settleGlucose', (found: { is: string }[] | undefined) =>
        found?.map((one) => ({ ...one, is: 'reading' })),
      ),
    where: { second: 'finger' },
  },
  {
    name: 'the mean below the table is read with the time above it',
    module: '../../src/readers/times/wall.ts',
    change: (real) =>
      after(real, 'settleWalls', (walls: { wall: Float64Array; fault: Uint8Array } | undefined) => {
        for (let k = 1; walls && k < walls.wall.length; k++) {
          if (walls.fault[k] === 0) continue;
          walls.wall[k] = walls.wall[k - 1]! + 60_000;
          walls.fault[k] = 0;
        }
        return walls;
      }),
    where: { footer: 'mean' },
  },
  {
    name: 'the decimal comma parts thousands',
    module: '../../src/readers/glucose/decimalMark.ts',
    change: (real) =>
      after(real, 'settleMark', (ok, cells: Cells) => {
        for (let k = 0; k < cells.mark.length; k++) if (cells.mark[k] === 2) cells.value[k]! *= 10;
        return ok;
      }),
    where: { number: 'comma', unit: 'mmol/L', delimiter: ';' },
  },
  {
    name: 'day and month are turned',
    module: '../../src/readers/times/dayOrder.ts',
    change: (real) => ({
      openDay: (code, order) => real.openDay!(code, (order === 'day-first' ? 'month-first' : 'day-first') as never),
    }),
    where: { time: 'dmy-slash' },
  },
  {
    name: 'words for low and high are dropped',
    module: '../../src/readers/table/limits.ts',
    change: () => ({ limitWord: () => 0 }),
    where: { limits: 'words' },
  },
  {
    name: 'the column of remarks is dropped',
    module: '../../src/readers/notes/rowNotes.ts',
    change: (real) => after(real, 'noteColumns', (columns: Column[]) => columns.filter(({ role }) => role !== 'note')),
    where: { notes: 'columns' },
  },
  {
    name: 'insulin and carbohydrate change places',
    module: '../../src/readers/table/header.ts',
    change: (real) =>
      after(real, 'columnOf', (column: Column) => ({
        ...column,
        role: column.role === 'insulin' ? 'carbohydrate' : column.role === 'carbohydrate' ? 'insulin' : column.role,
      })),
    where: { notes: 'columns' },
  },
  {
    name: 'the line of the unit above the table is ignored',
    module: '../../src/readers/evidence/above.ts',
    change: (real) => after(real, 'readAbove', (above: object) => ({ ...above, units: [] })),
    where: { unitAt: 'preamble-wrong' },
  },
  {
    name: 'records that were entered in error are used',
    module: '../../src/readers/fhir/codes.ts',
    change: () => ({ isUsable: () => true }),
    where: { container: 'fhir-bundle', defect: 'clock-reset' },
  },
  {
    name: 'a rate of insulin is a dose',
    module: '../../src/readers/notes/course.ts',
    change: (real) =>
      after(real, 'courseOf', (notes: { kind: string }[]) =>
        notes.map((note) => (note.kind === 'insulin-rate' ? { ...note, kind: 'insulin' } : note)),
      ),
    where: { container: 'fhir-lines', notes: 'columns-zeros' },
  },
  {
    name: 'the hour that comes twice is not looked at',
    module: '../../src/timeline/changeHours.ts',
    change: (real) => Object.fromEntries(Object.keys(real).map((name) => [name, () => undefined])),
    where: { start: 'autumn' },
  },
  {
    name: 'a value set aside is not told',
    module: '../../src/readers/table/faults.ts',
    change: () => ({ tellGlucose: () => undefined }),
    where: { defect: 'sentinel' },
  },
];

function morning<T>(result: T, out: Stamp): T {
  if (out.half === 2 && out.ms >= 43_200_000) out.ms -= 43_200_000;
  return result;
}

function withoutOffset<T>(result: T, out: Stamp): T {
  out.offset = -32_768;
  return result;
}
