import { measures } from '../measures/index.ts';
import type { Measured } from '../model/measured.ts';
import type { Block } from '../model/report.ts';
import { count, dotted, heading, type PageContext, paragraph, word } from './context.ts';

/** How much each number of this report rests on, or why there is none, and how to know that two reports are the same. */
export function basis({ speaker, analysis }: PageContext): Block[] {
  const bases = Object.values(measures).flatMap(({ id }) => {
    const value: Measured<unknown> = analysis.measures[id];
    // What nobody asked for or noted has no number to explain.
    if (!value.ok && (value.why === 'not-asked' || value.why === 'none-noted')) return [];
    const n = value.ok
      ? speaker.say(`pages.method.n.${value.of}`, { n: count(value.n) })
      : speaker.say(`why.${value.why}`);
    return [
      speaker.say('pages.method.nameAndBasis', { name: word(speaker.say(`measures.${id}.name`)), basis: word(n) }),
    ];
  });
  const origin = { version: word(analysis.version), hash: word(analysis.hash) };
  return [
    heading(2, speaker.say('pages.method.basis')),
    paragraph(dotted(bases)),
    paragraph(speaker.say('pages.method.made', origin), 'small'),
  ];
}
