import { stretchFrom } from './evidence.ts';
import { absent, type Finding, holds, quiet } from './finding.ts';
import { count, dates } from './quantities.ts';
import { oddLike } from './trustExamples.ts';

/** Readings that stand still for an hour or jump: they look unlike glucose, and stay in every count. */
export const oddStretches: Finding = {
  id: 'odd-stretches',
  source: 'ours',
  look({ oddStretches }) {
    if (!oddStretches.ok) return quiet(oddStretches.why);
    const { flat, jumps } = oddStretches.value;
    if (flat.length + jumps.length === 0) return absent;
    const days = [...flat, ...jumps].map(({ date }) => date);
    return holds(
      { flat: count(flat.length), jumps: count(jumps.length), days: count(new Set(days).size), dates: dates(days) },
      [...flat, ...jumps].map((one) => stretchFrom(one, one.minutes)),
    );
  },
  examples: [
    ['one flat stretch', { oddStretches: oddLike(1, 0) }, 'holds'],
    ['one jump', { oddStretches: oddLike(0, 1) }, 'holds'],
    ['neither', { oddStretches: oddLike(0, 0) }, 'absent'],
    ['no readings', { oddStretches: { ok: false, why: 'no-readings' } }, 'untold'],
  ],
};
