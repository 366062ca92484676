import type { Speaker } from '../language/index.ts';
import { measures } from '../measures/index.ts';
import type { Block, Cell, Page } from '../model/report.ts';
import { targetSets } from '../targets/index.ts';
import { columnsOf, denseTable, heading, paragraph, word } from './context.ts';
import { sourceText } from './sourceText.ts';

const RULES = ['interval', 'axis', 'gaps', 'night', 'units', 'duplicates', 'limits', 'notes', 'signs'] as const;

/** Definition and source of each number, the rules that are ours, and what the reports are not: the same for everyone. */
export function methodPage(speaker: Speaker): Page {
  const title = speaker.say('pages.method.title');
  const targets = Object.values(targetSets).map(({ id, source }) =>
    speaker.say('pages.method.targets', {
      name: word(speaker.say(`targets.${id}.name`)),
      source: word(sourceText(speaker, source)),
    }),
  );
  return {
    id: 'method',
    title,
    blocks: [
      heading(1, title),
      paragraph(speaker.say('cautions.clinicMethod')),
      ...(speaker.reviewed ? [] : [paragraph(speaker.say('pages.method.unreviewed'), 'strong')]),
      paragraph(speaker.say('pages.method.goals')),
      { kind: 'list', ordered: false, items: targets },
      measuresTable(speaker),
      heading(2, speaker.say('pages.method.rules')),
      { kind: 'list', ordered: false, items: RULES.map((rule) => speaker.say(`pages.method.rule.${rule}`)) },
    ],
  };
}

function measuresTable(speaker: Speaker): Block {
  const rows = Object.values(measures).map(({ id, source }): Cell[] => [
    { text: speaker.say(`measures.${id}.name`), strong: true },
    {
      text: speaker.say('pages.method.definitionAndSource', {
        definition: word(speaker.say(`measures.${id}.definition`)),
        source: word(sourceText(speaker, source)),
      }),
    },
  ]);
  const title = (name: 'measure' | 'definition') => speaker.say(`pages.method.${name}`);
  return denseTable(
    speaker.say('pages.method.tableCaption'),
    columnsOf(title, ['measure', 0.24], ['definition', 0.76, 'words']),
    rows,
  );
}
