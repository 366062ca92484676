import type { Block } from '../model/report.ts';
import { heading, type PageMaker, paragraph, space } from './context.ts';
import { interpretationSentences } from './interpretationSentences.ts';

/** Draft text for the clinician to edit and sign: never a finished judgement. */
export const interpretation: PageMaker = (context) => {
  const { speaker, analysis } = context;
  const { coverage } = analysis.measures;
  const blocks: Block[] = [
    heading(1, speaker.say('pages.interpretation.title')),
    paragraph(speaker.say('pages.interpretation.draft'), 'small'),
    ...interpretationSentences(context).map((sentence) => paragraph(sentence)),
    space(4),
    { kind: 'writeIn', label: speaker.say('pages.interpretation.own'), lines: 6 },
    space(6),
    {
      kind: 'columns',
      widths: [0.5, 0.5],
      columns: [
        [
          { kind: 'writeIn', label: speaker.say('pages.interpretation.name'), lines: 1 },
          { kind: 'writeIn', label: speaker.say('pages.interpretation.role'), lines: 1 },
        ],
        [
          { kind: 'writeIn', label: speaker.say('pages.interpretation.signature'), lines: 1 },
          { kind: 'writeIn', label: speaker.say('pages.interpretation.date'), lines: 1 },
        ],
      ],
    },
  ];
  if (coverage.ok)
    blocks.push(
      paragraph(
        speaker.say('pages.interpretation.hours', {
          hours: { q: 'minutes', value: coverage.value.hours * 60 },
          reached: { q: 'word', value: coverage.value.reached72h ? 'yes' : 'no' },
        }),
        'small',
      ),
    );
  return { id: 'interpretation', title: speaker.say('pages.interpretation.title'), blocks };
};
