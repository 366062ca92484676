import type { Block } from '../model/report.ts';
import { heading, type PageContext, type PageMaker, paragraph, space } from './context.ts';
import { interpretationSentences } from './interpretationSentences.ts';
import { agreedTyped, signed, typedLines } from './visit/written.ts';

/** Draft text for the clinician to edit and sign: never a finished judgement. */
export const interpretation: PageMaker = (context) => {
  const { speaker, analysis } = context;
  const { coverage } = analysis.measures;
  const typed = writtenText(context);
  const blocks: Block[] = [
    ...typed,
    heading(1, speaker.say('pages.interpretation.title')),
    paragraph(speaker.say('pages.interpretation.draft'), 'small'),
    ...interpretationSentences(context).map((sentence) => paragraph(sentence)),
    space(4),
    ...(context.written?.interpretation === undefined
      ? [{ kind: 'writeIn' as const, label: speaker.say('pages.interpretation.own'), lines: 6 }, space(6)]
      : []),
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

/** What was typed in, before and apart from the draft: its words are not changed by ours, nor ours by them. */
function writtenText(context: PageContext): Block[] {
  const { speaker, written } = context;
  const signature = signed(context);
  if (signature.length === 0) return [];
  const agreed = agreedTyped(context).map(({ label, text }): Block => ({ kind: 'writeIn', label, lines: 0, text }));
  const long = (['interpretation', 'remarks'] as const).flatMap((of): Block[] => {
    const lines = typedLines(written?.[of] ?? '');
    return lines.length === 0
      ? []
      : [heading(2, speaker.say(`pages.written.${of}`)), ...lines.map((line) => paragraph(line))];
  });
  const title = agreed.length > 0 ? [heading(2, speaker.say('pages.agreed.title')), ...agreed] : [];
  return [heading(1, speaker.say('pages.written.title')), ...signature, ...title, ...long];
}
