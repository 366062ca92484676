import { changesChart } from '../../charts/changes.ts';
import type { Block, Form } from '../../model/report.ts';
import type { Change } from '../../model/thenAndNow.ts';
import type { VisitByVisit } from '../../model/visits.ts';
import { heading, type PageContext, paragraph, tellAll, word } from '../context.ts';
import { amountOf, isShare, nameOfChange } from '../thenAndNow.ts';
import { trendSaid } from '../visitByVisit.ts';
import { changesSaid } from './otherFindings.ts';

/**
 * The five shares then and now, each with its interval, and a line through several visits where it rises or falls; nothing where
 * no earlier period was asked for. Where room is short, in words alone.
 */
export function sinceLastTime(context: PageContext): Block[] {
  const { speaker, analysis, chart } = context;
  const { thenAndNow, visitByVisit } = analysis.measures;
  if (!thenAndNow.ok) return [];
  const shares = thenAndNow.value.changes.filter(({ of }) => isShare(of));
  const lines = tellAll(context, changesSaid(context));
  if (visitByVisit.ok && isSure(visitByVisit.value)) lines.push(trendSaid(context, visitByVisit.value.trend));
  const title = heading(2, speaker.say('pages.thenAndNow.title'));
  const words: Block[] = lines.length > 0 ? [title, paragraph(lines.join(' '))] : [];
  if (!shares.some(({ low }) => low !== null)) return words;
  const drawn: Form = () => [
    ...(words.length > 0 ? words : [title]),
    {
      kind: 'chart',
      title: speaker.say('pages.thenAndNow.chart'),
      drawing: changesChart(shares, (change) => nameAndBefore(change, context), chart),
    },
  ];
  return [{ kind: 'fit', gives: 4, forms: [drawn, () => words] }];
}

/** What it was then stands with the name; what it is now is on page 1. */
const nameAndBefore = (change: Change, context: PageContext): string =>
  context.speaker.say('pages.thenAndNow.then', {
    name: word(nameOfChange(change, context)),
    before: word(amountOf(change, change.before, context)),
  });

const isSure = ({ trend }: VisitByVisit): boolean => trend.case === 'line' && trend.verdict === 'more-than-noise';
