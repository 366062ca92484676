import type { PageMaker } from './context.ts';
import { heading, paragraph, space } from './context.ts';

/** To fill in by hand during the visit; at least a third of the sheet stays empty. */
export const agreed: PageMaker = ({ speaker }) => ({
  id: 'agreed',
  title: speaker.say('pages.agreed.title'),
  blocks: [
    heading(1, speaker.say('pages.agreed.title')),
    paragraph(speaker.say('pages.agreed.how'), 'small'),
    { kind: 'writeIn', label: speaker.say('pages.agreed.matters'), lines: 2 },
    { kind: 'writeIn', label: speaker.say('pages.agreed.goals'), lines: 2 },
    { kind: 'writeIn', label: speaker.say('pages.agreed.step'), lines: 3 },
    { kind: 'writeIn', label: speaker.say('pages.agreed.inTheWay'), lines: 2 },
    paragraph(speaker.say('pages.agreed.sure')),
    { kind: 'boxes', items: Array.from({ length: 11 }, (_, index) => String(index)), inline: true },
    space(4),
    {
      kind: 'columns',
      widths: [0.5, 0.5],
      columns: [
        [{ kind: 'writeIn', label: speaker.say('pages.agreed.helper'), lines: 1 }],
        [{ kind: 'writeIn', label: speaker.say('pages.agreed.next'), lines: 1 }],
      ],
    },
  ],
});
