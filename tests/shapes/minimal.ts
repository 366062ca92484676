import { mkdirSync, writeFileSync } from 'node:fs';
import { join } from 'node:path';
import { judge, type Verdict } from './judge.ts';
import { normal } from './normal.ts';
import { NAMES, plainest, type Shape } from './shape.ts';
import { type Written, write } from './write.ts';

/** What the class of a failure is: how it failed, and what first. */
export const kindOf = ({ is, asked, differences }: Verdict): string =>
  is === 'dead-end' ? `dead end: ${asked.at(-1)}` : `${is}: ${differences[0]?.what ?? ''}`;

/** The plainest shape that still fails in the same way. */
export async function minimal(shape: Shape, kind: string): Promise<Shape> {
  let best = shape;
  const plain = plainest(shape.seed);
  for (let round = 0; round < 2; round++)
    for (const name of NAMES) {
      if (best[name] === plain[name]) continue;
      const tried = normal({ ...best, [name]: plain[name] });
      if (NAMES.every((one) => tried[one] === best[one])) continue;
      if (distance(tried) >= distance(best)) continue;
      if (kindOf(await judge(write(tried))) === kind) best = tried;
    }
  return best;
}

const distance = (shape: Shape): number => NAMES.filter((name) => shape[name] !== plainest(0)[name]).length;

/** What sets a shape apart from the plainest, in words. */
export const tellShape = (shape: Shape): string => {
  const plain = plainest(0);
  const own = NAMES.filter((name) => shape[name] !== plain[name]).map(
    (name) => `${name}=${JSON.stringify(shape[name])}`,
  );
  return own.length === 0 ? 'the plainest shape' : own.join(' ');
};

/** Writes the files of a failure with what was expected and what was read. */
export function keep(folder: string, written: Written, verdict: Verdict): void {
  mkdirSync(folder, { recursive: true });
  for (const { name, bytes } of written.inputs) writeFileSync(join(folder, name), bytes);
  const lines = [
    tellShape(written.shape),
    `seed ${written.shape.seed}`,
    kindOf(verdict),
    `asked: ${verdict.asked.join(', ') || 'nothing'}; open: ${written.open.join('; ') || 'no'}`,
    `${written.readings.length} readings and ${written.notes.length} notes were written`,
    `${verdict.differences.length} differences:`,
    ...verdict.differences.slice(0, 20).map(({ what, said, detail }) => `  ${what}${said ? ' (told)' : ''}: ${detail}`),
  ];
  writeFileSync(join(folder, 'READ-ME.txt'), `${lines.join('\n')}\n`);
  writeFileSync(join(folder, 'shape.json'), `${JSON.stringify(written.shape, null, 1)}\n`);
}
