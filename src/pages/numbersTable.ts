import type { Measured } from '../model/measured.ts';
import type { MeanGlucose } from '../model/measures.ts';
import type { Block, Cell } from '../model/report.ts';
import { columnsOf, denseTable, type PageContext, word } from './context.ts';

/** A number of which only the way it may lie off is known, when it is a bound at all. */
export const bounded = (speaker: PageContext['speaker'], way: MeanGlucose['bound'], value: string): string =>
  way === null ? value : speaker.say('pages.numbers.bounded', { way: word(way), value: word(value) });

type Name = 'mean' | 'sd' | 'cv' | 'cvAlone' | 'gmi';

/** The few single numbers that consensus papers ask for beside the bands, those with an interval beside it. */
export function numbersTable({ speaker, analysis }: PageContext): Block {
  const { mean, sd, cv, cvRange, gmi } = analysis.measures;
  const rows: Cell[][] = [];
  const line = (id: Name, value: string, interval = '') =>
    rows.push([
      { text: speaker.say(`pages.numbers.${id}`) },
      { text: value, strong: true },
      { text: interval, muted: true },
    ]);
  const glucose = (mgdl: number) => speaker.value({ q: 'glucose', value: mgdl as never }, 'short');
  const percent = (value: number) => speaker.value({ q: 'percent', value });
  const range = (low: number | null, high: number | null, text: (end: number) => string): string =>
    low === null || high === null
      ? ''
      : speaker.say('pages.bandsTable.range', { low: word(text(low)), high: word(text(high)) });
  const measuredLine = <T>(id: Name, found: Measured<T>, text: (value: T) => string, interval = '') =>
    found.ok ? line(id, text(found.value), interval) : line(id, '–', speaker.say(`why.${found.why}`));

  // Readings beyond the sensor's limits make each of these a bound, not a measurement. Which way is known of the mean.
  const way = mean.ok ? mean.value.bound : null;
  const bound = (value: string): string => bounded(speaker, way, value);
  const about = (value: string): string => bounded(speaker, way && 'both', value);
  const { low, high } = mean.ok ? mean.value.mgdl : { low: null, high: null };
  measuredLine('mean', mean, ({ mgdl }) => bound(glucose(mgdl.value)), range(low, high, glucose));
  measuredLine('sd', sd, (value) => about(speaker.value({ q: 'rise', value }, 'short')));
  const spread = cvRange.ok ? cvRange.value : { low: null, high: null };
  measuredLine(
    // Beside the limit only where the set of targets has one.
    analysis.targets.cvLimit === null ? 'cvAlone' : 'cv',
    cv,
    (value) => about(percent(value)),
    range(spread.low, spread.high, (end) => speaker.number(end, 0)),
  );
  if (gmi.ok || gmi.why !== 'not-for-these-targets') measuredLine('gmi', gmi, (value) => bound(percent(value.percent)));
  const title = (name: 'name' | 'value' | 'interval') => speaker.say(`pages.numbers.${name}`);
  return denseTable(
    speaker.say('pages.numbers.caption'),
    columnsOf(title, ['name', 0.28], ['value', 0.43], ['interval', 0.29]),
    rows,
  );
}
