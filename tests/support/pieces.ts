import type { Piece } from '../writers/paper.ts';

/** Pairs of text that stand on one another: more than a hair's breadth in both directions. */
export function collisions(pieces: readonly Piece[]): string[] {
  const found: string[] = [];
  pieces.forEach((a, i) => {
    for (const b of pieces.slice(i + 1)) {
      const across = Math.min(a.x + a.width, b.x + b.width) - Math.max(a.x, b.x);
      if (across > 1 && Math.abs(a.y - b.y) < 0.6 * Math.min(a.size, b.size)) found.push(`"${a.text}" on "${b.text}"`);
    }
  });
  return found;
}
