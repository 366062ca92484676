import { type Index, indices } from '../indices/index.ts';
import type { Measured } from '../model/measured.ts';
import type { Cell } from '../model/report.ts';
import { MGDL_PER_MMOL } from '../units.ts';
import { columnsOf, count, denseTable, heading, type PageContext, type PageMaker, paragraph } from './context.ts';
import { sourceText } from './sourceText.ts';

/** Further published indices, each with its unit, its source and what it rests on. Only when asked for. */
export const indicesAnnex: PageMaker = (context) => {
  const { speaker, analysis } = context;
  const found = analysis.indices as Record<string, Measured<unknown>> | undefined;
  if (found === undefined) return null;
  const title = speaker.say('pages.indicesAnnex.title');
  const rows = (Object.values(indices) as Index<unknown>[]).flatMap((index) =>
    rowsOf(index, found[index.id]!, context),
  );
  const columns = columnsOf(
    (name: 'index' | 'value' | 'unit' | 'definition' | 'source') => speaker.say(`pages.indicesAnnex.${name}`),
    ['index', 0.23],
    ['value', 0.11],
    ['unit', 0.16, 'words'],
    ['definition', 0.3, 'words'],
    ['source', 0.2, 'words'],
  );
  return {
    id: 'indices',
    title,
    blocks: [
      heading(1, title),
      paragraph(
        speaker.say('pages.indicesAnnex.how', { interval: { q: 'minutes', value: analysis.timeline.interval } }),
      ),
      denseTable(title, columns, rows),
    ],
  };
};

/** What the analysis holds as a part of 1, told in percent. */
const SHARES = new Set(['tightRange', 'grade.hypo', 'grade.eu', 'grade.hyper']);

/** The index with its number, or with the numbers of its parts on lines of their own. */
function rowsOf({ id, unit, source }: Index<unknown>, found: Measured<unknown>, { speaker }: PageContext): Cell[][] {
  const name = { text: speaker.say(`indices.${id}.name`), strong: true };
  const definition = speaker.say(`indices.${id}.definition`);
  const from = { text: sourceText(speaker, source), muted: true };
  if (!found.ok)
    return [[name, { text: '–' }, { text: speaker.say(`why.${found.why}`), muted: true }, { text: definition }, from]];
  const { value, n, of } = found;
  const about = [{ text: `${definition}\n${speaker.say(`pages.method.n.${of}`, { n: count(n) })}` }, from];
  const valueAndUnit = (what: string, one: number, its: string): [string, string] =>
    SHARES.has(what) ? [speaker.value({ q: 'share', value: one }), ''] : inReportUnit(one, its, speaker);
  if (typeof value === 'number') {
    const [text, unitText] = valueAndUnit(id, value, unit);
    return [[name, { text, strong: true }, { text: unitText }, ...about]];
  }
  const parts = Object.entries(value as Record<string, unknown>).map(([part, one]): Cell[] => {
    const itsUnit = speaker.sayIfKnown(`indices.${id}.units.${part}`) ?? unit;
    const [text, unitText] = typeof one === 'number' ? valueAndUnit(`${id}.${part}`, one, itsUnit) : [String(one), ''];
    return [
      { text: speaker.sayIfKnown(`indices.${id}.parts.${part}`) ?? part, muted: true },
      { text, strong: true },
      { text: unitText },
      { text: '' },
      { text: '' },
    ];
  });
  return [[name, { text: '' }, { text: '' }, ...about], ...parts];
}

/** The number and its unit as told: glucose, its areas and its rates in the unit of the report, everything else in its own. */
function inReportUnit(value: number, unit: string, speaker: PageContext['speaker']): [string, string] {
  const isConverted = unit.startsWith('mg/dL') && speaker.unit === 'mmol/L';
  const shown = isConverted ? value / MGDL_PER_MMOL : value;
  return [
    speaker.number(shown, Math.abs(shown) < 10 ? 2 : 1),
    unitOf(isConverted ? unit.replace('mg/dL', speaker.unit) : unit),
  ];
}

/** On paper a number without a unit has none; a product and a square are written as such; UCUM has a full stop and a figure on the line. */
const unitOf = (unit: string): string => (unit === '1' ? '' : unit.replace('.', '·').replace(')2', ')²'));
