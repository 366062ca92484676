/**
 * Widths near those wished for, such that no column is narrower than the widest thing in it that cannot be broken:
 * what some lack, others give in proportion to what they have to spare. Where all together have too little, as far as
 * it goes. The sum stays the same.
 */
export function fairWidths(wished: readonly number[], needs: readonly number[]): number[] {
  const short = wished.map((width, i) => Math.max(0, needs[i]! - width));
  const spare = wished.map((width, i) => Math.max(0, width - needs[i]!));
  const [lacking, sparing] = [short, spare].map((list) => list.reduce((sum, value) => sum + value, 0)) as [
    number,
    number,
  ];
  const moved = Math.min(lacking, sparing);
  if (moved === 0) return [...wished];
  return wished.map((width, i) => width + (short[i]! * moved) / lacking - (spare[i]! * moved) / sparing);
}
