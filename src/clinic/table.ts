import type { Facts, Outcome, WorklistLine } from '../model/clinic.ts';
import { targetSets } from '../targets/index.ts';
import { MGDL_PER_MMOL } from '../units.ts';
import { csvText } from '../writers/csv.ts';

type Cell = string | number | null;
interface Column {
  name: string;
  of(facts: Facts, outcome: Outcome): Cell;
}

const column = (name: string, of: Column['of']): Column => ({ name, of });
const percent = (share: number | null | undefined): Cell => (share == null ? null : share * 100);
const mmol = (mgdl: number | null | undefined): Cell => (mgdl == null ? null : mgdl / MGDL_PER_MMOL);
/** The published cut-offs that parted this person's readings, in the unit of most of them. */
const limitsOf = ({ targets, unit }: Facts) => targetSets[targets].limits[unit];

/** Columns of measures.csv after code, group and folder; what each means stands in docs/clinic.md. */
export const MEASURE_COLUMNS: readonly Column[] = [
  column('visit_date', (_, { visit }) => visit),
  column('targets', ({ targets }) => targets),
  column('native_unit', ({ unit }) => unit),
  column('first_day', ({ from }) => from),
  column('last_day', ({ to }) => to),
  column('days_in_period', ({ days }) => days),
  column('days_with_readings', ({ coverage }) => coverage.days),
  column('interval_min', ({ interval }) => interval),
  column('readings', ({ readings }) => readings),
  column('rows_read', ({ rows }) => rows),
  column('rows_set_aside', ({ setAside }) => setAside),
  column('readings_h', ({ coverage }) => coverage.hours),
  column('period_h', ({ coverage }) => coverage.ofHours),
  column('covered_percent', ({ coverage }) => percent(coverage.share)),
  column('night_covered_percent', ({ coverage }) => percent(coverage.nightShare)),
  column('mean_mg_per_dl', ({ mean }) => mean?.mgdl ?? null),
  column('mean_lower95_mg_per_dl', ({ mean }) => mean?.low ?? null),
  column('mean_upper95_mg_per_dl', ({ mean }) => mean?.high ?? null),
  column('mean_mmol_per_l', ({ mean }) => mmol(mean?.mgdl)),
  column('sd_mg_per_dl', ({ sd }) => sd),
  column('sd_mmol_per_l', ({ sd }) => mmol(sd)),
  column('cv_percent', ({ cv }) => cv),
  column('gmi_percent', ({ gmi }) => gmi),
  column('lab_a1c_percent', (_, { a1c }) => a1c),
  column('very_low_below', (facts) => limitsOf(facts).veryLow),
  column('low_below', (facts) => limitsOf(facts).low),
  column('high_above', (facts) => limitsOf(facts).high),
  column('very_high_above', (facts) => limitsOf(facts).veryHigh),
  column('very_low_percent', ({ shares }) => percent(shares?.veryLow)),
  column('low_percent', ({ shares }) => percent(shares?.low)),
  column('in_range_percent', ({ shares }) => percent(shares?.inRange)),
  column('high_percent', ({ shares }) => percent(shares?.high)),
  column('very_high_percent', ({ shares }) => percent(shares?.veryHigh)),
  column('below_range_percent', ({ below }) => percent(below)),
  column('above_range_percent', ({ above }) => percent(above)),
  column('low_events', ({ lows }) => lows?.count ?? null),
  column('very_low_events', ({ lows }) => lows?.level2 ?? null),
  column('night_low_events', ({ lows }) => lows?.night ?? null),
  column('high_events', ({ highs }) => highs?.count ?? null),
  column('very_high_events', ({ highs }) => highs?.level2 ?? null),
  column('analysis_hash', ({ hash }) => hash),
];

/** One row a person, also those who could not be read; unrounded, empty where a number is withheld. */
export function measuresCsv(lines: readonly WorklistLine[]): string {
  return csvText([
    ['code', 'group', 'folder', ...MEASURE_COLUMNS.map(({ name }) => name)],
    ...lines.map(({ outcome, tier }) => [
      outcome.code,
      tier,
      outcome.stem,
      ...MEASURE_COLUMNS.map(({ of }) => (outcome.facts ? (of(outcome.facts, outcome) ?? '') : '')),
    ]),
  ]);
}
