import { changesChart } from '../../charts/changes.ts';
import type { Block } from '../../model/report.ts';
import { heading, type PageContext, paragraph, tellAll } from '../context.ts';
import { isShare, nameOfChange } from '../thenAndNow.ts';
import { CHANGES } from './otherFindings.ts';

/** The five shares then and now, each with its interval; nothing where no earlier period was asked for. */
export function sinceLastTime(context: PageContext): Block[] {
  const { speaker, analysis, chart } = context;
  const { thenAndNow } = analysis.measures;
  if (!thenAndNow.ok) return [];
  const shares = thenAndNow.value.changes.filter(({ of }) => isShare(of));
  const lines = tellAll(context, CHANGES);
  const blocks: Block[] = [
    heading(2, speaker.say('pages.thenAndNow.title')),
    ...(lines.length > 0 ? [paragraph(lines.join(' '))] : []),
  ];
  if (shares.some(({ low }) => low !== null))
    blocks.push({ kind: 'chart', drawing: changesChart(shares, (change) => nameOfChange(change, context), chart) });
  return blocks;
}
