import type { ModalBin } from '../model/measures.ts';

type Curve = 'p5' | 'p25' | 'p50' | 'p75' | 'p95';

/**
 * Each percentile curve smoothed round the clock with weights 1-2-1, midnight included. An empty bin stays empty
 * and lends nothing to its neighbours, so a curve never runs over a hole. Order is put right afterwards.
 */
export function smoothed(raw: readonly ModalBin[]): ModalBin[] {
  return raw.map((bin, b) => {
    const before = raw[(b + raw.length - 1) % raw.length]!;
    const after = raw[(b + 1) % raw.length]!;
    const curve = (name: Curve) => blend(before[name], bin[name], after[name]);
    return ordered({
      ...bin,
      p5: curve('p5'),
      p25: curve('p25'),
      p50: curve('p50'),
      p75: curve('p75'),
      p95: curve('p95'),
    });
  });
}

function blend(before: number | null, here: number | null, after: number | null): number | null {
  if (here === null) return null;
  let sum = 2 * here;
  let weight = 2;
  for (const neighbour of [before, after]) {
    if (neighbour === null) continue;
    sum += neighbour;
    weight++;
  }
  return sum / weight;
}

/** Curves that lean on different neighbours may cross by a hair: pushed apart from the median outwards. */
function ordered(bin: ModalBin): ModalBin {
  const { p50 } = bin;
  if (p50 === null) return bin;
  const p25 = atMost(bin.p25, p50);
  const p75 = atLeast(bin.p75, p50);
  return { ...bin, p25, p75, p5: atMost(bin.p5, p25 ?? p50), p95: atLeast(bin.p95, p75 ?? p50) };
}

function atMost(value: number | null, limit: number): number | null {
  return value === null ? null : Math.min(value, limit);
}

function atLeast(value: number | null, limit: number): number | null {
  return value === null ? null : Math.max(value, limit);
}
