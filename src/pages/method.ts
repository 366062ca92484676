import { measures } from '../measures/index.ts';
import type { Measured } from '../model/measured.ts';
import type { Block, Cell } from '../model/report.ts';
import { count, heading, type PageContext, type PageMaker, paragraph, word } from './context.ts';
import { curveTable } from './curveTable.ts';
import { sourceText } from './sourceText.ts';

/** Definition, source and count behind each number, the rules that are ours, and what this report is not. */
export const method: PageMaker = (context) => {
  const { speaker, analysis } = context;
  return {
    id: 'method',
    title: speaker.say('pages.method.title'),
    blocks: [
      heading(1, speaker.say('pages.method.title')),
      paragraph(speaker.say('cautions.clinicMethod')),
      ...(speaker.reviewed ? [] : [paragraph(speaker.say('pages.method.unreviewed'), 'strong')]),
      paragraph(
        speaker.say('pages.method.targets', {
          name: word(speaker.say(`targets.${analysis.targets.id}.name`)),
          source: word(sourceText(speaker, analysis.targets.source)),
        }),
      ),
      measuresTable(context),
      ...curveTable(context, ['p75', 'p50', 'p25']),
      heading(2, speaker.say('pages.method.rules')),
      {
        kind: 'list',
        ordered: false,
        items: (['interval', 'axis', 'gaps', 'night', 'units', 'duplicates', 'limits', 'notes'] as const).map((rule) =>
          speaker.say(`pages.method.rule.${rule}`, {
            gap: { q: 'minutes', value: analysis.timeline.gapMinutes },
            unit: word(analysis.timeline.unit),
          }),
        ),
      },
      paragraph(
        speaker.say('pages.method.made', { version: word(analysis.version), hash: word(analysis.hash) }),
        'small',
      ),
    ],
  };
};

function measuresTable({ speaker, analysis }: PageContext): Block {
  // What nobody asked for or noted has no number to explain.
  const shown = Object.values(measures).filter(({ id }) => {
    const value: Measured<unknown> = analysis.measures[id];
    return value.ok || (value.why !== 'not-asked' && value.why !== 'none-noted');
  });
  const rows = shown.map((unit): Cell[] => {
    const value: Measured<unknown> = analysis.measures[unit.id];
    const n = value.ok
      ? speaker.say(`pages.method.n.${value.of}`, { n: count(value.n) })
      : speaker.say(`why.${value.why}`);
    const name = speaker.say(`measures.${unit.id}.name`);
    return [
      { text: speaker.say('pages.method.nameAndBasis', { name: word(name), basis: word(n) }), strong: true },
      {
        text: speaker.say('pages.method.definitionAndSource', {
          definition: word(speaker.say(`measures.${unit.id}.definition`)),
          source: word(sourceText(speaker, unit.source)),
        }),
      },
    ];
  });
  return {
    kind: 'table',
    caption: speaker.say('pages.method.tableCaption'),
    captionShown: false,
    dense: true,
    columns: [
      { title: speaker.say('pages.method.measure'), align: 'start', width: 0.24 },
      { title: speaker.say('pages.method.definition'), align: 'start', width: 0.76 },
    ],
    rows,
  };
}
