import type { Estimate } from '../model/measured.ts';
import type { TimeInBands } from '../model/measures.ts';
import type { Block, Cell } from '../model/report.ts';
import type { Band, Goal } from '../model/targets.ts';
import type { ParamsOf } from '../model/words.ts';
import { DAY_MINUTES } from '../time/calendar.ts';
import { columnsOf, denseTable, type PageContext, word } from './context.ts';

/** Time below, in and above range with intervals, against the set's goals: cumulative lines, as the consensus prints goals. */
export function bandsTable(time: TimeInBands, context: PageContext): Block {
  const { speaker, analysis } = context;
  const lines: { of: Goal['of']; band: Band; estimate: Estimate }[] = [
    { of: 'very-low', band: 'very-low', estimate: time.exclusive['very-low'] },
    { of: 'low', band: 'low', estimate: time.cumulative.low },
    { of: 'in-range', band: 'in-range', estimate: time.exclusive['in-range'] },
    { of: 'high', band: 'high', estimate: time.cumulative.high },
  ];
  const hasVeryHigh = analysis.targets.limits[analysis.timeline.unit].veryHigh !== null;
  if (hasVeryHigh) lines.push({ of: 'very-high', band: 'very-high', estimate: time.exclusive['very-high'] });
  return denseTable(
    speaker.say('pages.bandsTable.caption'),
    columnsOf(
      (name: 'band' | 'share' | 'interval' | 'perDay' | 'goal') => speaker.say(`pages.bandsTable.${name}`),
      ['band', 0.225],
      ['share', 0.122],
      ['interval', 0.228],
      ['perDay', 0.2],
      ['goal', 0.225],
    ),
    lines.map(({ of, band, estimate }) => row(of, band, estimate, time, context)),
  );
}

function row(
  of: Goal['of'],
  band: Band,
  estimate: Estimate,
  time: TimeInBands,
  { speaker, analysis }: PageContext,
): Cell[] {
  // Hours that hold no night are no day of 24.
  const { coverage } = analysis.measures;
  const aDay = coverage.ok && coverage.value.wholeDay;
  const goal = time.goals.find((one) => one.of === of);
  const share = goal ? speaker.against(estimate.value, goal) : speaker.value({ q: 'share', value: estimate.value });
  return [
    { text: speaker.say(`pages.bandsTable.lines.${of}`, limitsOf(of, speaker)), band },
    { text: share, strong: true },
    { text: interval(estimate, speaker), muted: true },
    { text: aDay ? speaker.value({ q: 'minutes', value: estimate.value * DAY_MINUTES }, 'short') : '–' },
    {
      text: goal
        ? speaker.say('pages.bandsTable.verdict', {
            op: word(goal.op === '<' ? 'under' : 'over'),
            goal: { q: 'share', value: goal.share },
            met: word(!time.judged ? 'open' : goal.met ? 'yes' : 'no'),
          })
        : speaker.say(analysis.targets.goals.length === 0 ? 'pages.bandsTable.noGoals' : 'pages.bandsTable.noGoal'),
    },
  ];
}

/** The limits that bound a band, as bare numbers for its name. */
export function limitsOf(of: Band, speaker: PageContext['speaker']): ParamsOf<`pages.bandsTable.lines.${Band}`> {
  const limit = (name: Exclude<Band, 'in-range'>) => word(speaker.value({ q: 'limit', of: name }, 'short'));
  return { low: limit('low'), high: limit('high'), limit: limit(of === 'in-range' ? 'low' : of) };
}

function interval(estimate: Estimate, speaker: PageContext['speaker']): string {
  if (estimate.low === null || estimate.high === null) return '–';
  // The sign stands once, behind the upper bound.
  const bare = (share: number) => speaker.value({ q: 'share', value: share }).replace(/\s?%$/u, '');
  return speaker.say('pages.bandsTable.range', {
    low: word(bare(estimate.low)),
    high: { q: 'share', value: estimate.high },
  });
}
