import { type Index, indices } from '../indices/index.ts';
import type { Measured } from '../model/measured.ts';
import type { Block, Cell } from '../model/report.ts';
import { count, heading, type PageContext, type PageMaker, paragraph } from './context.ts';
import { sourceText } from './sourceText.ts';

/** Further published indices, each with its unit, its source and what it rests on. Only when asked for. */
export const indicesAnnex: PageMaker = (context) => {
  const { say, analysis } = context;
  const found = analysis.indices as Record<string, Measured<unknown>> | undefined;
  if (found === undefined) return null;
  const title = say.say('pages.indicesAnnex.title');
  const rows = (Object.values(indices) as Index<unknown>[]).flatMap((index) =>
    rowsOf(index, found[index.id]!, context),
  );
  const table: Block = {
    kind: 'table',
    caption: title,
    captionShown: false,
    dense: true,
    columns: [
      { title: say.say('pages.indicesAnnex.index'), align: 'start', width: 0.23 },
      { title: say.say('pages.indicesAnnex.value'), align: 'end', width: 0.11 },
      { title: say.say('pages.indicesAnnex.unit'), align: 'start', width: 0.13 },
      { title: say.say('pages.indicesAnnex.definition'), align: 'start', width: 0.33 },
      { title: say.say('pages.indicesAnnex.source'), align: 'start', width: 0.2 },
    ],
    rows,
  };
  return {
    id: 'indices',
    title,
    blocks: [
      heading(1, title),
      paragraph(say.say('pages.indicesAnnex.how', { interval: { q: 'minutes', value: analysis.timeline.interval } })),
      table,
    ],
  };
};

/** The index with its first number; further numbers of the same index on lines of their own. */
function rowsOf({ id, unit, source }: Index<unknown>, found: Measured<unknown>, { say }: PageContext): Cell[][] {
  const name = { text: say.say(`indices.${id}.name`), strong: true };
  const about = [{ text: say.say(`indices.${id}.definition`) }, { text: sourceText(say, source), muted: true }];
  if (!found.ok) return [[name, { text: '–' }, { text: say.say(`why.${found.why}`), muted: true }, ...about]];
  const { value, n, of } = found;
  const basis = say.say(`pages.method.n.${of}`, { n: count(n) });
  const rest = [{ text: '' }, { text: '' }];
  if (typeof value === 'number') {
    // A share is told in percent; 1 is the unit of a number without one.
    const isShare = id === 'tightRange';
    const text = isShare ? say.value({ q: 'share', value }) : say.number(value, value < 10 ? 2 : 1);
    return [
      [name, { text, strong: true }, { text: isShare ? '' : unitOf(unit) }, ...about],
      [{ text: basis, muted: true }, { text: '' }, { text: '' }, ...rest],
    ];
  }
  const partUnit = (part: string) =>
    say.has(`indices.${id}.units.${part}`) ? say.say(`indices.${id}.units.${part}`) : unitOf(unit);
  const parts = Object.entries(value as Record<string, unknown>).map(([part, one]): Cell[] => [
    { text: say.has(`indices.${id}.parts.${part}`) ? say.say(`indices.${id}.parts.${part}`) : part, muted: true },
    { text: typeof one === 'number' ? say.number(one, Math.abs(one) < 10 ? 2 : 1) : String(one), strong: true },
    { text: typeof one === 'number' ? partUnit(part) : '' },
    ...rest,
  ]);
  return [[name, { text: '' }, { text: basis, muted: true }, ...about], ...parts];
}

/** On paper a product and a square are written as such; UCUM has a full stop and a figure on the line. */
const unitOf = (unit: string): string => (unit === '1' ? '' : unit.replace('.', '·').replace(')2', ')²'));
