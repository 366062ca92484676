import { stretchFrom } from './evidence/places.ts';
import { count, dates } from './evidence/quantities.ts';
import { absent, type Finding, holds, quiet } from './finding.ts';

/** Readings that stand still for an hour or jump: they look unlike glucose, and stay in every count. */
export const oddStretches: Finding<'odd-stretches'> = {
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
};
