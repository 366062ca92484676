import type { Refusal } from '../analyse.ts';
import type { Issue } from '../model/issues.ts';
import type { Settings } from '../model/settings.ts';
import { wrongSettings } from '../schemas/givenSettings.ts';
import { isZone } from '../time/zone.ts';
import { checkTopicOrder } from '../topics/order.ts';

/** The refusal of settings that cannot be used, each place with what would fit; null where they can. */
export function refusedSettings(settings: Settings): Refusal | null {
  const misshapen = wrongSettings(settings);
  const issues = misshapen.length > 0 ? misshapen : misused(settings);
  if (issues.length === 0) return null;
  const ledger = { rows: 0, used: 0, duplicate: 0, setAside: 0, notes: 0, ignored: 0 };
  const nothing = { files: [], ledger, outside: { readings: 0, notes: 0 }, setAside: [], losses: [], missing: [] };
  return { ok: false, ...nothing, issues };
}

/** What a shape cannot tell of values that each are of the right kind. */
function misused({ zone, period, compare, topicOrder }: Settings): Issue[] {
  const wrong = (actual: string, expected: string): Issue[] => [
    { code: 'settings-wrong-value', level: 'refusal', actual, expected },
  ];
  const order = topicOrder === undefined ? { order: [] } : checkTopicOrder({ rows: topicOrder });
  return [
    ...(zone === undefined || isZone(zone) ? [] : wrong('zone', 'Europe/Madrid, America/Chicago, UTC …')),
    ...(period && 'days' in period && ('from' in period || 'to' in period) ? wrong('period', 'days | from, to') : []),
    ...(period && isReversed(period) ? wrong('period', 'from ≤ to') : []),
    ...(compare?.with === 'dates' && isReversed(compare) ? wrong('compare', 'from ≤ to') : []),
    ...('problems' in order ? wrong('topicOrder', order.problems.join(', ')) : []),
  ];
}

const isReversed = (days: object): boolean =>
  'from' in days && 'to' in days && typeof days.from === 'string' && typeof days.to === 'string' && days.from > days.to;
