import type { Estimate } from '../model/measured.ts';
import type { TimeInBands } from '../model/measures.ts';
import type { Params } from '../model/quantity.ts';
import type { Block, Cell } from '../model/report.ts';
import type { Band, Goal } from '../model/targets.ts';
import { DAY_MINUTES } from '../time/calendar.ts';
import { denseTable, type PageContext, word } from './context.ts';

/** Time below, in and above range with intervals, against the set's goals: cumulative lines, as the consensus prints goals. */
export function bandsTable(time: TimeInBands, context: PageContext): Block {
  const { say, analysis } = context;
  const lines: { of: Goal['of']; band: Band; estimate: Estimate }[] = [
    { of: 'very-low', band: 'very-low', estimate: time.exclusive['very-low'] },
    { of: 'low', band: 'low', estimate: time.cumulative.low },
    { of: 'in-range', band: 'in-range', estimate: time.exclusive['in-range'] },
    { of: 'high', band: 'high', estimate: time.cumulative.high },
  ];
  const hasVeryHigh = analysis.targets.limits[analysis.timeline.unit].veryHigh !== null;
  if (hasVeryHigh) lines.push({ of: 'very-high', band: 'very-high', estimate: time.exclusive['very-high'] });
  return denseTable(
    say.say('pages.bandsTable.caption'),
    [
      { title: say.say('pages.bandsTable.band'), align: 'start', width: 0.225 },
      { title: say.say('pages.bandsTable.share'), align: 'end', width: 0.122 },
      { title: say.say('pages.bandsTable.interval'), align: 'end', width: 0.228 },
      { title: say.say('pages.bandsTable.perDay'), align: 'end', width: 0.2 },
      { title: say.say('pages.bandsTable.goal'), align: 'end', width: 0.225 },
    ],
    lines.map(({ of, band, estimate }) => row(of, band, estimate, time, context)),
  );
}

function row(
  of: Goal['of'],
  band: Band,
  estimate: Estimate,
  time: TimeInBands,
  { say, analysis }: PageContext,
): Cell[] {
  const goal = time.goals.find((one) => one.of === of);
  const share = goal ? say.against(estimate.value, goal) : say.value({ q: 'share', value: estimate.value });
  return [
    { text: say.say(`pages.bandsTable.lines.${of}`, limitsOf(of, say)), band },
    { text: share, strong: true },
    { text: interval(estimate, say), muted: true },
    { text: say.value({ q: 'minutes', value: estimate.value * DAY_MINUTES }, 'short') },
    {
      text: goal
        ? say.say('pages.bandsTable.verdict', {
            op: word(goal.op === '<' ? 'under' : 'over'),
            goal: { q: 'share', value: goal.share },
            met: word(!time.judged ? 'open' : goal.met ? 'yes' : 'no'),
          })
        : say.say(analysis.targets.goals.length === 0 ? 'pages.bandsTable.noGoals' : 'pages.bandsTable.noGoal'),
    },
  ];
}

/** The limits that bound a band, as bare numbers for its name. */
export function limitsOf(of: Band, say: PageContext['say']): Params {
  const limit = (name: Exclude<Band, 'in-range'>) => word(say.value({ q: 'limit', of: name }, 'short'));
  return of === 'in-range' ? { low: limit('low'), high: limit('high') } : { limit: limit(of) };
}

function interval(estimate: Estimate, say: PageContext['say']): string {
  if (estimate.low === null || estimate.high === null) return '–';
  // The sign stands once, behind the upper bound.
  const bare = (share: number) => say.value({ q: 'share', value: share }).replace(/\s?%$/u, '');
  return say.say('pages.bandsTable.range', {
    low: word(bare(estimate.low)),
    high: { q: 'share', value: estimate.high },
  });
}
