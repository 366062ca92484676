import { writeFileSync } from 'node:fs';
import { join } from 'node:path';
import { pathToFileURL } from 'node:url';
import { expect, test } from 'vitest';
import { intake } from '../../src/analyse.ts';
import { settle } from '../../src/cli/settings.ts';
import * as source from '../../src/index.ts';
import type { Input } from '../../src/model/input.ts';
import { printableJson } from '../../src/papers/teller.ts';
import { shapeOf } from '../shapes/cover.ts';
import { normal } from '../shapes/normal.ts';
import { LANGUAGES } from '../shapes/words.ts';
import { write } from '../shapes/write.ts';
import { home, run, scratch } from './run.ts';

/**
 * A pattern that the packer, or the way in which the program is loaded, spoils is met only by a file that needs it: whole shapes of files
 * in each language are read by what was built and by its source. Others in every run; the same again by `SHAPES_SEED=7`.
 */
const SEED = Number(process.env.SHAPES_SEED ?? Date.now() % 1_000_000);
const COUNT = 36;
const shapes = Array.from({ length: COUNT }, (_, n) =>
  write(normal({ ...shapeOf(SEED, n), language: LANGUAGES[n % LANGUAGES.length]! })),
);
/** As the command takes it from the clock; tests of programs run under UTC. */
const TODAY = new Date().toISOString().slice(0, 10);

test(`shapes of seed ${SEED}: the built command tells each file as its source does, all in one process`, async () => {
  const inputs: Input[] = shapes.flatMap((written, n) =>
    written.inputs.map(({ name, bytes }) => ({ name: `${String(n).padStart(3, '0')}-${name}`, bytes })),
  );
  const folder = scratch();
  for (const { name, bytes } of inputs) writeFileSync(join(folder, name), bytes);
  const { out, err } = run(folder, ['read', '.', '--json']);
  expect(err).toBe('');
  const wanted = await settle({}, undefined, TODAY);
  if ('issues' in wanted) throw new Error(JSON.stringify(wanted.issues));
  const { ok, files, ledger, outside, issues, setAside } = intake(
    await source.openWorkbooks(inputs.sort((a, b) => (a.name < b.name ? -1 : 1))),
    wanted.settings,
  );
  const said = JSON.parse(printableJson(JSON.stringify({ ok, files, ledger, outside, issues, setAside })));
  const built = JSON.parse(out);
  expect(built.files.length).toBeGreaterThanOrEqual(shapes.length);
  // One file after another: what differs first is what is shown.
  for (const [i, file] of built.files.entries()) expect(file).toEqual(said.files[i]);
  expect(built).toEqual(said);
}, 60_000);

test(`shapes of seed ${SEED}: the built library gives every reading and note that its source gives`, async () => {
  const built = (await import(pathToFileURL(join(home, 'dist/index.mjs')).href)) as typeof source;
  for (const { inputs, shape } of shapes) {
    const analysisOf = async (library: typeof source) =>
      JSON.stringify(
        library.analyse(await library.openWorkbooks(inputs.map((input) => ({ ...input }))), {
          targets: 'adult',
          today: TODAY,
          person: {},
        }),
      );
    const [ours, theirs] = [await analysisOf(source), await analysisOf(built)];
    if (ours !== theirs) expect(JSON.parse(theirs), JSON.stringify(shape)).toEqual(JSON.parse(ours));
  }
}, 120_000);
