import type { GlucoseUnit } from '../../model/glucose.ts';
import type { ReadFile } from '../../model/input.ts';
import type { Issue } from '../../model/issues.ts';
import { MGDL_PER_MMOL } from '../../units.ts';
import { unitOf } from '../glucose/glucoseCell.ts';
import { type Curve, curveOf } from './curve.ts';
import { type Doubt, doubtOf } from './look.ts';

/**
 * Looks at the readings of a file as a physiologist would, whoever named their unit: a series that no life at home gives is
 * refused with both readings shown, unless a person has looked at it and confirms it in a layout.
 */
export function lookAtSeries(file: ReadFile, confirmed: boolean): void {
  const { readings, name, issues } = file;
  for (const code of [0, 1]) {
    const value = plainOf(readings, code);
    if (!value) continue;
    const curve = curveOf(value, readings.wall);
    const unit = unitOf(code);
    const doubt = doubtOf(curve, unit);
    if (!doubt) continue;
    const place = { file: name, line: doubt.why === 'jumps' ? readings.line[doubt.at]! : 0 };
    if (confirmed) issues.push({ code: 'series-confirmed', level: 'warning', origin: place, actual: middleOf(curve) });
    else issues.push(refusal(doubt, curve, unit, value, place));
  }
}

/** The plain numbers in one unit; undefined where there are none. A file of nothing else is looked at as it is. */
function plainOf({ count, native, unit, limit }: ReadFile['readings'], code: number): Float64Array | undefined {
  let own = 0;
  for (let i = 0; i < count; i++) if (unit[i] === code && limit[i] === 0) own++;
  if (own === 0 || own === count) return own === 0 ? undefined : native;
  return native.map((number, i) => (unit[i] === code && limit[i] === 0 ? number : Number.NaN));
}

function refusal(
  doubt: Doubt,
  curve: Curve,
  unit: GlucoseUnit,
  value: Float64Array,
  origin: Issue['origin'] & object,
): Issue {
  const inUnit = (number: number) => ({ is: 'in-unit', value: round(number), unit }) as const;
  const confirm = { of: 'layout', field: 'series', answer: JSON.stringify({ series: 'confirmed' }) } as const;
  const at = { level: 'refusal', origin } as const;
  if (doubt.why === 'jumps') {
    const [actual, expected] = [inUnit(value[doubt.at]!), inUnit(curve.median)];
    return { code: 'series-jumps', ...at, actual, expected, count: doubt.jumps, question: confirm };
  }
  if (doubt.why === 'rough') {
    const [actual, expected] = [inUnit(curve.change), inUnit(curve.iqr)];
    return { code: 'series-rough', ...at, actual, expected, count: curve.n, question: confirm };
  }
  const other: GlucoseUnit = unit === 'mg/dL' ? 'mmol/L' : 'mg/dL';
  const seen = { ...at, actual: middleOf(curve), count: curve.n };
  if (doubtOf(curve, other)) return { code: 'series-implausible', ...seen, question: confirm };
  const question = { of: 'layout', field: 'unit', answer: JSON.stringify({ unit: other }) } as const;
  return { code: 'series-other-unit', ...seen, question };
}

const round = (value: number): number => Math.round(value * 10) / 10;

const middleOf = ({ low, high, median }: Curve) =>
  ({
    is: 'middle-read',
    low: round(low),
    high: round(high),
    value: round(median),
    mmol: round(median / MGDL_PER_MMOL),
    mgdl: Math.round(median * MGDL_PER_MMOL),
  }) as const;
