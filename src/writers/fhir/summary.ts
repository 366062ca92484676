import type { TimeInBands } from '../../model/measures.ts';
import { MGDL_PER_MMOL } from '../../units.ts';
import { loinc, quantity, type UnitCode } from './codes.ts';
import { type Entry, uuid } from './entries.ts';
import { type About, observation } from './observation.ts';

/**
 * The summary with its members, or none: the guide asks for six members at least, so where GMI or CV is withheld (too few
 * data, or not meant for this target set) there is no summary rather than half of one.
 */
export function summaryEntries(about: About): Entry[] {
  const { measures } = about.analysis;
  const { mean, timeInBands, gmi, cv, coverage } = measures;
  if (!mean.ok || !timeInBands.ok || !gmi.ok || !cv.ok || !coverage.ok) return [];
  const { mgdl } = mean.value;
  const single = (profile: string, code: string, display: string | undefined, value: number, unit: UnitCode): Entry =>
    ofPeriod(about, profile, loinc(code, display), { valueQuantity: quantity(value, unit) });
  const members = [
    single(
      'cgm-summary-mean-glucose-mass-per-volume',
      '97507-8',
      'Average glucose [Mass/volume] in Interstitial fluid during Reporting Period',
      mgdl.value,
      'mg/dL',
    ),
    single(
      'cgm-summary-mean-glucose-moles-per-volume',
      '105273-7',
      'Glucose [Moles/volume] in Reporting Period mean Interstitial fluid by calculation',
      mgdl.value / MGDL_PER_MMOL,
      'mmol/L',
    ),
    timesInRanges(about, timeInBands.value),
    single('cgm-summary-gmi', '97506-0', undefined, gmi.value.percent, '%'),
    single('cgm-summary-coefficient-of-variation', '104638-2', undefined, cv.value, '%'),
    single('cgm-summary-days-of-wear', '104636-6', undefined, coverage.value.daysWithReadings, 'd'),
    single(
      'cgm-summary-sensor-active-percentage',
      '104637-4',
      'Percentage of time continuous glucose monitor device worn Reporting Period Calculated',
      coverage.value.share * 100,
      '%',
    ),
  ];
  const panel = ofPeriod(
    about,
    'cgm-summary',
    loinc('107931-8', 'Continuous glucose monitoring summary panel - Reporting Period'),
    { hasMember: members.map(({ fullUrl }) => ({ reference: fullUrl })) },
  );
  return [panel, ...members];
}

/** Bands as the guide means them: `low` and `high` are the bands beside the target, without the outer ones. */
const BANDS = [
  ['104642-4', 'Time below range, very low in Reporting Period Interstitial fluid by calculation', 'very-low'],
  ['104641-6', 'Time below range, low in Reporting Period Interstitial fluid by calculation', 'low'],
  ['97510-2', 'Glucose measurements in range out of Total glucose measurements during reporting period', 'in-range'],
  ['104640-8', 'Time above range, high in Reporting Period Interstitial fluid by calculation', 'high'],
  ['104639-0', 'Time above range, very high in Reporting Period Interstitial fluid by calculation', 'very-high'],
] as const;

function timesInRanges(about: About, { exclusive }: TimeInBands): Entry {
  const { targets, timeline } = about.analysis;
  const limits = targets.limits[timeline.unit];
  // The guide publishes no limits, and target sets differ in theirs: without them the shares would mislead.
  const outer = limits.veryHigh === null ? '' : ` | > ${limits.veryHigh}`;
  const cuts = `< ${limits.veryLow} | < ${limits.low} | ${limits.low}-${limits.high} | > ${limits.high}${outer}`;
  const component = BANDS.map(([code, display, band]) => ({
    code: loinc(code, display),
    valueQuantity: quantity(exclusive[band].value * 100, '%'),
  }));
  return ofPeriod(
    about,
    'cgm-summary-times-in-ranges',
    loinc('106793-3', 'Continuous glucose monitoring time in ranges panel'),
    { method: { text: `${targets.id}: ${cuts} ${timeline.unit} (${targets.source})` }, component },
  );
}

function ofPeriod(about: About, profile: string, code: unknown, content: Record<string, unknown>): Entry {
  const { from, to } = about.analysis.timeline;
  const effectivePeriod = { start: from, end: to };
  return observation(about, {
    id: uuid(about.seed, profile),
    profile,
    code,
    content: { effectivePeriod, ...content },
  });
}
