import type { Block } from '../../model/report.ts';
import {
  caution,
  count,
  heading,
  held,
  missingParams,
  onTheirWord,
  type PageContext,
  type PageMaker,
  paragraph,
  tellAll,
  word,
} from '../context.ts';
import { hours, nights, usual } from './days.ts';
import { lows } from './lows.ts';
import { isLarge } from './sides.ts';

/** So many files are told one by one. */
const FEW_FILES = 2;

/** The first side: what it rests on, any very low glucose, what went well, then how the days and the lows went. */
export const patientFront: PageMaker = (context) => {
  const title = context.speaker.say('pages.patientFront.title');
  return {
    id: 'patient-front',
    title,
    blocks: [
      heading(1, title),
      ...data(context),
      ...well(context),
      ...hours(context),
      ...(isLarge(context) ? [] : [...nights(context), ...lows(context), ...usual(context)]),
      caution(context, 'C2', true),
      paragraph(context.speaker.say('cautions.C1'), 'small'),
    ],
  };
};

/** Of large print: what the first side has no room for. */
export const patientLows: PageMaker = (context) => {
  if (!isLarge(context)) return null;
  const title = context.speaker.say('pages.patientFront.second');
  return {
    id: 'patient-lows',
    title,
    blocks: [...nights(context), ...lows(context), ...usual(context)],
  };
};

function data(context: PageContext): Block[] {
  const { speaker, analysis } = context;
  const { coverage } = analysis.measures;
  const { from, to, days } = analysis.timeline;
  const sentences = [
    speaker.say('pages.patientFront.period', {
      days: { q: 'count', value: days.length },
      from: word(speaker.value({ q: 'date', value: from }, 'long')),
      to: word(speaker.value({ q: 'date', value: to }, 'full')),
    }),
  ];
  // What is lacking is told with the hours that there are.
  const lacking = held(context, 'not-enough-data')?.variant ?? 'days';
  if (coverage.ok && lacking === 'days')
    sentences.push(
      speaker.say('pages.patientFront.hours', { hours: { q: 'minutes', value: coverage.value.hours * 60 } }),
    );
  sentences.push(speaker.say('pages.patientFront.unit'));
  sentences.push(...notUsed(context));
  sentences.push(...onTheirWord(context));
  // A very low glucose stands in the first block, whatever went well.
  sentences.push(...tellAll(context, ['very-low', 'standing-still', 'not-enough-data']));
  return [paragraph(sentences.join(' '))];
}

/** What of the files is missing from all that follows: file by file where there are few. */
function notUsed({ speaker, analysis: { losses, missing } }: PageContext): string[] {
  const sum = (of: 'lost' | 'of'): number => losses.reduce((all, loss) => all + loss[of], 0);
  const few = losses.length <= FEW_FILES;
  return [
    ...(few ? losses : []).map(({ file, lost, of }) =>
      speaker.say('pages.patientFront.lost', { file: word(file), lost: count(lost), of: count(of) }),
    ),
    ...(few
      ? []
      : [
          speaker.say('pages.patientFront.lostMany', {
            lost: count(sum('lost')),
            of: count(sum('of')),
            files: count(losses.length),
          }),
        ]),
    ...(missing.length === 0 ? [] : [speaker.say('pages.patientFront.missing', missingParams(missing))]),
  ];
}

function well(context: PageContext): Block[] {
  const lines = tellAll(context, ['best-window', 'best-days', 'no-lows-seen']).slice(0, 2);
  if (lines.length === 0) return [];
  const title = heading(2, context.speaker.say('pages.patientFront.well'));
  const forms = [lines, lines.slice(0, 1)].map((some) => () => [title, paragraph(some.join(' '))]);
  return [{ kind: 'fit', gives: 2, forms: lines.length > 1 ? forms : forms.slice(0, 1) }];
}
