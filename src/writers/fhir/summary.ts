import type { TimeInBands } from '../../model/measures.ts';
import { MGDL_PER_MMOL } from '../../units.ts';
import type { About } from './about.ts';
import { loinc, quantity, type UnitCode } from './codes.ts';
import { type Entry, uuid } from './entries.ts';
import { observation } from './observation.ts';

/** The results of a period, and the panel that holds them where all are there. */
export interface Summary {
  panel: Entry | null;
  members: Entry[];
  /** Names of the results that are not there. */
  withheld: string[];
}

/**
 * The guide's summary asks for six members at least, a value in each: where one is withheld (too few data, or not meant for this target
 * set) the others go out by themselves.
 */
export function summaryOf(about: About): Summary {
  const { mean, timeInBands, gmi, cv, coverage } = about.analysis.measures;
  const single = (profile: string, code: string, display: string | undefined, value: number, unit: UnitCode): Entry =>
    ofPeriod(about, profile, loinc(code, display), { valueQuantity: quantity(value, unit) });
  const results: [name: string, entries: Entry[]][] = [
    [
      'mean-glucose',
      mean.ok
        ? [
            single(
              'cgm-summary-mean-glucose-mass-per-volume',
              '97507-8',
              'Average glucose [Mass/volume] in Interstitial fluid during Reporting Period',
              mean.value.mgdl.value,
              'mg/dL',
            ),
            single(
              'cgm-summary-mean-glucose-moles-per-volume',
              '105273-7',
              'Glucose [Moles/volume] in Reporting Period mean Interstitial fluid by calculation',
              mean.value.mgdl.value / MGDL_PER_MMOL,
              'mmol/L',
            ),
          ]
        : [],
    ],
    ['times-in-ranges', timeInBands.ok ? [timesInRanges(about, timeInBands.value)] : []],
    ['gmi', gmi.ok ? [single('cgm-summary-gmi', '97506-0', undefined, gmi.value.percent, '%')] : []],
    [
      'coefficient-of-variation',
      cv.ok ? [single('cgm-summary-coefficient-of-variation', '104638-2', undefined, cv.value, '%')] : [],
    ],
    [
      'days-of-wear',
      coverage.ok
        ? [single('cgm-summary-days-of-wear', '104636-6', undefined, coverage.value.daysWithReadings, 'd')]
        : [],
    ],
    [
      'sensor-active-percentage',
      coverage.ok
        ? [
            single(
              'cgm-summary-sensor-active-percentage',
              '104637-4',
              'Percentage of time continuous glucose monitor device worn Reporting Period Calculated',
              coverage.value.share * 100,
              '%',
            ),
          ]
        : [],
    ],
  ];
  const members = results.flatMap(([, entries]) => entries);
  const withheld = results.flatMap(([name, entries]) => (entries.length === 0 ? [name] : []));
  if (withheld.length > 0) return { panel: null, members, withheld };
  const panel = ofPeriod(
    about,
    'cgm-summary',
    loinc('107931-8', 'Continuous glucose monitoring summary panel - Reporting Period'),
    { hasMember: members.map(({ fullUrl }) => ({ reference: fullUrl })) },
  );
  return { panel, members, withheld };
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
