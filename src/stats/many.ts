/** A probability, and the least that this comparison could have given at its size. */
export interface Looked {
  p: number;
  least: number;
}

/**
 * Which of many comparisons stand out when all of them are looked at: Benjamini & Hochberg 1995 (J R Stat Soc B
 * 57:289-300) at `level`, leaving out of the count those too small ever to reach it (Gilbert 2005, J R Stat Soc C
 * 54:143-158, after Tarone 1990). When nothing is there, the chance that any stands out is at most `level`.
 */
export function standOut(looked: readonly Looked[], level: number): boolean[] {
  // The count K is the smallest for which no more than K comparisons can reach level / K.
  let count = 1;
  while (looked.filter(({ least }) => least <= level / count).length > count) count++;
  const able = looked.filter(({ least }) => least <= level / count);
  const ordered = able.map(({ p }) => p).sort((a, b) => a - b);
  let limit = -1;
  ordered.forEach((p, i) => {
    if (p <= ((i + 1) * level) / ordered.length) limit = p;
  });
  return looked.map((one) => able.includes(one) && one.p <= limit);
}
