import { fork } from 'node:child_process';
import { rmSync } from 'node:fs';
import { availableParallelism, tmpdir } from 'node:os';
import { join } from 'node:path';
import { coverage, shapeOf } from './cover.ts';
import { judge } from './judge.ts';
import { keep, kindOf, minimal, tellShape } from './minimal.ts';
import { write } from './write.ts';

/**
 * `npm run shapes -- 20000 [seed] [folder]`: so many random shapes of file, each written from a truth, read, and compared.
 * Prints figures, and writes the plainest example of every class of failure into the folder (`shapes` in the machine's own for such files, where none is named).
 */
const [count = 1000, seed = Date.now() % 1_000_000] = process.argv.slice(2, 4).map(Number);
const folder = process.argv[4] ?? join(tmpdir(), 'shapes');
/** Failures of one way that are made plain, by each part of a run. */
const MADE_PLAIN = 12;

interface Tally {
  shapes: number;
  counts: Record<string, number>;
  classes: Record<string, { kind: string; times: number; shape: string; seed: number }>;
}

async function part(which: number, parts: number): Promise<Tally> {
  const counts: Record<string, number> = {};
  const add = (key: string) => (counts[key] = (counts[key] ?? 0) + 1);
  const classes: Tally['classes'] = {};
  const ofKind = new Map<string, number>();
  let shapes = 0;
  for (let n = which; n < count; n += parts) {
    const written = write(shapeOf(seed, n));
    const verdict = await judge(written);
    shapes++;
    const side = written.open.length + written.never.length > 0 ? 'open' : 'closed';
    add(verdict.is === 'equal' ? 'equal' : `${verdict.is} ${side}`);
    for (const reason of [...written.open, ...written.never]) add(`open because: ${reason}`);
    if (verdict.asked.length > 0) add(`asked ${side}: ${verdict.asked[0]}`);
    if (verdict.is === 'refused' && verdict.asked.length > 0) {
      add(`questions about one file in the first run: ${verdict.questions}`);
      add(`rounds until it is read: ${verdict.asked.length}`);
    }
    if (verdict.is === 'equal' || verdict.is === 'refused') continue;
    const kind = kindOf(verdict);
    add(`  ${kind}`);
    const kept = ofKind.get(kind) ?? 0;
    ofKind.set(kind, kept + 1);
    if (kept >= MADE_PLAIN) continue;
    const plain = write(await minimal(written.shape, kind));
    const key = `${kind} | ${tellShape(plain.shape)}`;
    const known = classes[key];
    if (known) known.times++;
    else {
      classes[key] = { kind, times: 1, shape: tellShape(plain.shape), seed: plain.shape.seed };
      keep(join(folder, `${which}-${Object.keys(classes).length}`), plain, await judge(plain));
      classes[key].shape += `  [${which}-${Object.keys(classes).length}]`;
    }
  }
  return { shapes, counts, classes };
}

function report(parts: Tally[], started: number): void {
  const counts: Record<string, number> = {};
  for (const one of parts) for (const [key, n] of Object.entries(one.counts)) counts[key] = (counts[key] ?? 0) + n;
  const held = coverage();
  for (let n = 0; n < count; n++) held.add(shapeOf(seed, n));
  const { held: pairs, of } = held.counts();
  console.log(
    `${count} shapes, seed ${seed}, ${Math.round((Date.now() - started) / 1000)} s; ${pairs} of ${of} pairs held`,
  );
  for (const key of Object.keys(counts).sort()) console.log(`${String(counts[key]).padStart(7)} ${key}`);
  for (const { classes } of parts)
    for (const { kind, times, shape } of Object.values(classes).sort((a, b) => (a.kind < b.kind ? -1 : 1)))
      console.log(`${kind} x${times} | ${shape}`);
}

const mine = process.env.SHAPES_PART;
if (mine !== undefined) {
  process.send!(await part(Number(mine), Number(process.env.SHAPES_PARTS)));
  process.disconnect();
} else {
  const started = Date.now();
  rmSync(folder, { recursive: true, force: true });
  const parts = Math.min(availableParallelism(), 2);
  const running = Array.from({ length: parts }, (_, which) => {
    const args = [String(count), String(seed), folder];
    const child = fork(import.meta.filename, args, {
      env: { ...process.env, SHAPES_PART: `${which}`, SHAPES_PARTS: `${parts}` },
    });
    return new Promise<Tally>((resolve, reject) => {
      child.once('message', (message) => resolve(message as Tally));
      child.once('exit', (code) => code !== 0 && reject(new Error(`part ${which} ended with ${code}`)));
    });
  });
  report(await Promise.all(running), started);
}
