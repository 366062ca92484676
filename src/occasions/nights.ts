import type { NightAfter } from '../model/occasions.ts';
import { LOW } from '../targets/bands.ts';
import { NIGHT_END, SEEN_SHARE } from '../targets/consensus.ts';
import { mgPerDl } from '../units.ts';
import type { Signal } from './signal.ts';

/** The night at the start of each day, low by the rule of page 1: any reading below the low limit. */
export function nightsOf({ timeline, bands, heights }: Signal): NightAfter[] {
  const { readings } = timeline;
  return timeline.days.map((day) => {
    let minutes = 0;
    let lowMinutes = 0;
    let lowest = -1;
    for (let i = day.from; i < day.to; i++) {
      // No break: a clock that went back over midnight shows the evening again before the rest of the night.
      if (readings.minute[i]! >= NIGHT_END) continue;
      minutes += readings.weight[i]!;
      if (bands[i]! <= LOW) lowMinutes += readings.weight[i]!;
      if (lowest < 0 || heights[i]! < heights[lowest]!) lowest = i;
    }
    return {
      date: day.date,
      low: lowMinutes > 0 ? true : minutes >= SEEN_SHARE * NIGHT_END ? false : null,
      lowest: lowest < 0 ? null : mgPerDl(heights[lowest]!),
      lowestMinute: lowest < 0 ? null : readings.minute[lowest]!,
      lowMinutes,
    };
  });
}
