/** A probability, and the least that this comparison could have given at its size. */
export interface Looked {
  p: number;
  least: number;
}

/**
 * Which of many comparisons stand out when all of them are looked at: Benjamini & Hochberg 1995 (J R Stat Soc B
 * 57:289-300) at `level`. Those too small ever to reach the level, whatever they show, are left out of the count (an
 * idea of Tarone 1990, Biometrics 46:515-522): sizes decide that, never outcomes. When nothing is there, the chance
 * that any stands out is at most `level`.
 */
export function standOut(looked: readonly Looked[], level: number): boolean[] {
  const able = looked.filter(({ least }) => least <= level);
  const ordered = able.map(({ p }) => p).sort((a, b) => a - b);
  let limit = -1;
  ordered.forEach((p, i) => {
    if (p <= ((i + 1) * level) / ordered.length) limit = p;
  });
  return looked.map(({ p }) => p <= limit);
}
