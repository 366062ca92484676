import type { FindingId } from '../findings/index.ts';
import type { MgPerDl } from '../model/glucose.ts';
import type { Block, Cell } from '../model/report.ts';
import type { Below } from '../model/words.ts';
import {
  caution,
  columnsOf,
  count,
  denseTable,
  heading,
  type PageContext,
  type PageMaker,
  paragraph,
  tellAll,
  word,
} from './context.ts';
import { fingerstickBlocks } from './fingersticks.ts';
import { lowCells } from './lowCells.ts';
import { bounded } from './numbersTable.ts';

const STATEMENTS: readonly FindingId[] = [
  'pressed-lows',
  'lows-on-first-day',
  'readings-at-limits',
  'odd-stretches',
  'fingersticks-differ',
  'medicines-noted',
  'lows-without-alarm',
  'alarms-at-night',
  'a1c-differs',
];
const DAYS_SHOWN = 14;

/** What in the readings and notes speaks for and against the sensor. Nothing is taken out of any count here. */
export const sensorTrust: PageMaker = (context) => {
  const { speaker } = context;
  const title = speaker.say('pages.sensorTrust.title');
  const statements = tellAll(context, STATEMENTS);
  return {
    id: 'sensor-trust',
    title,
    blocks: [
      heading(1, title),
      paragraph(speaker.say('pages.sensorTrust.how')),
      statements.length > 0
        ? { kind: 'list', items: statements, ordered: false }
        : paragraph(speaker.say('pages.sensorTrust.nothing')),
      caution(context, 'C7'),
      ...fingerstickBlocks(context),
      ...laboratory(context),
      ...pressed(context),
      ...wear(context),
      { kind: 'columns', widths: [0.5, 0.5], columns: [alarms(context), odd(context)] },
      ...medicines(context),
    ],
  };
};

function laboratory({ speaker, analysis }: PageContext): Block[] {
  const { labA1c } = analysis.measures;
  if (!labA1c.ok) return [];
  const { percent, mmolPerMol, eag, mean, gmi } = labA1c.value;
  // As in the table of single numbers: readings beyond the sensor's limits make both a bound.
  const way = analysis.measures.mean.ok ? analysis.measures.mean.value.bound : null;
  return [
    heading(2, speaker.say('pages.sensorTrust.a1c.title')),
    paragraph(
      speaker.say('pages.sensorTrust.a1c.sentence', {
        percent: { q: 'percent', value: percent },
        mmol: word(speaker.number(mmolPerMol, 0)),
        eag: { q: 'glucose', value: eag },
        mean: word(mean === null ? '–' : bounded(speaker, way, speaker.value({ q: 'glucose', value: mean }))),
        known: word(gmi === null ? 'no' : 'yes'),
        gmi: word(gmi === null ? '–' : bounded(speaker, way, speaker.value({ q: 'percent', value: gmi }))),
      }),
    ),
  ];
}

function pressed(context: PageContext): Block[] {
  const { speaker, analysis } = context;
  const { pressedLows } = analysis.measures;
  if (!pressedLows.ok || pressedLows.value.list.length === 0) return [];
  const { list, lows, nightLows, veryLows, pressedVeryLows } = pressedLows.value;
  const at = (key: 'title' | 'when' | 'length' | 'lowest' | 'fall' | 'back') =>
    speaker.say(`pages.sensorTrust.pressed.${key}`);
  return [
    heading(2, at('title')),
    paragraph(
      speaker.say('pages.sensorTrust.pressed.counts', {
        lows: count(lows),
        others: count(lows - list.length),
        nights: count(nightLows),
        otherNights: count(nightLows - list.filter(({ low }) => low.night).length),
        veryLows: count(veryLows),
        otherVeryLows: count(veryLows - pressedVeryLows),
      }),
    ),
    denseTable(
      at('title'),
      columnsOf(at, ['when', 0.36], ['length', 0.16], ['lowest', 0.16], ['fall', 0.16], ['back', 0.16]),
      list.map(({ low, fall, back }): Cell[] => [
        ...lowCells(context, low),
        { text: speaker.value({ q: 'rise', value: fall }, 'short') },
        { text: speaker.value({ q: 'rise', value: back }, 'short') },
      ]),
    ),
    caution(context, 'C8'),
  ];
}

function wear(context: PageContext): Block[] {
  const { speaker, analysis } = context;
  const { sensors } = analysis.measures;
  if (!sensors.ok) return [];
  const { worn, byDay } = sensors.value;
  const at = (key: Exclude<Below<'pages.sensorTrust.wear'>, 'sentence'>) =>
    speaker.say(`pages.sensorTrust.wear.${key}`);
  const pauses = worn.flatMap(({ pauseMinutes }) => (pauseMinutes === null ? [] : [pauseMinutes]));
  const blocks: Block[] = [
    heading(2, at('title')),
    paragraph(
      speaker.say('pages.sensorTrust.wear.sentence', {
        sensors: count(worn.length),
        begun: count(pauses.length),
        pause: { q: 'minutes', value: pauses.reduce((sum, each) => sum + each, 0) },
      }),
    ),
  ];
  if (byDay.length === 0) return blocks;
  blocks.push(
    denseTable(
      at('title'),
      columnsOf(at, ['day', 0.2], ['sensors', 0.14], ['share', 0.2], ['mean', 0.16], ['inRange', 0.15], ['low', 0.15]),
      byDay.slice(0, DAYS_SHOWN).map(({ day, sensors: n, share, mean, inRange, low }): Cell[] => {
        // Of a day of wear without readings nothing is known, lows least of all.
        const part = (value: number) => (share > 0 ? speaker.value({ q: 'share', value }) : '–');
        return [
          { text: speaker.number(day, 0), strong: day === 1 },
          { text: speaker.number(n, 0) },
          { text: speaker.value({ q: 'share', value: share }) },
          { text: mean === null ? '–' : speaker.value({ q: 'glucose', value: mean as MgPerDl }, 'short') },
          { text: part(inRange) },
          { text: part(low) },
        ];
      }),
    ),
  );
  blocks.push(caution(context, 'C10'));
  return blocks;
}

function alarms({ speaker, analysis }: PageContext): Block[] {
  const { alarms } = analysis.measures;
  const title = heading(2, speaker.say('pages.sensorTrust.alarms.title'));
  if (!alarms.ok) return [title, paragraph(speaker.say('pages.sensorTrust.alarms.none'))];
  const { noted, days, nights, lowsWith, lows, withoutLow } = alarms.value;
  return [
    title,
    paragraph(
      speaker.say('pages.sensorTrust.alarms.sentence', {
        noted: count(noted),
        days: count(days),
        nights: count(nights.length),
        most: count(Math.max(0, ...nights.map((night) => night.alarms))),
        lowsWith: count(lowsWith),
        lows: count(lows),
        withoutLow: count(withoutLow),
      }),
    ),
  ];
}

function odd({ speaker, analysis }: PageContext): Block[] {
  const { oddStretches } = analysis.measures;
  const blocks: Block[] = [heading(2, speaker.say('pages.sensorTrust.odd.title'))];
  if (oddStretches.ok) {
    const { flat, jumps, belowLimit, aboveLimit } = oddStretches.value;
    blocks.push(
      paragraph(
        speaker.say('pages.sensorTrust.odd.sentence', {
          flat: count(flat.length),
          jumps: count(jumps.length),
          below: count(belowLimit),
          above: count(aboveLimit),
        }),
      ),
    );
  }
  return blocks;
}

function medicines(context: PageContext): Block[] {
  const { medicinesNoted } = context.analysis.measures;
  const noted = medicinesNoted.ok ? medicinesNoted.value.list : [];
  if (noted.length > 0) return [caution(context, 'C9', true)];
  return [paragraph(context.speaker.say('pages.sensorTrust.medicines.none'), 'small')];
}
