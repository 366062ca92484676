import { appendFileSync, existsSync, mkdirSync, readFileSync, writeFileSync } from 'node:fs';
import { join } from 'node:path';
import { expect, test } from 'vitest';
import { writePeople } from '../support/people.ts';
import { clinic, ended, expectWhole, filesIn, papersIn, start, until, worklistOf } from './clinicRun.ts';
import { plainExport, scratch } from './run.ts';

const SMALL = { days: 2, step: 30 };
/** Seconds. Long against the pauses that a laden machine makes in a file that grows. */
const SETTLE = '4';

test('a folder is kept ready: files are read when they have come to rest, killed and begun again it goes on, and the end is the same', async () => {
  const folder = scratch();
  const [at, out] = [join(folder, 'in'), join(folder, 'out')];
  writePeople(at, 2, SMALL);
  writeFileSync(
    join(at, 'settings.json'),
    '{"out":"../out","places":3,"further":true,"clinic":"Harbour Lane","date":"2026-06-01"}',
  );
  const keep = () => start(at, 'clinic', '--keep-ready', '--settle', SETTLE);
  const codes = (): string => {
    try {
      return worklistOf(out)
        .filter(({ Folder }) => Folder !== '')
        .map(({ Code }) => Code)
        .sort()
        .join(' ');
    } catch {
      return '';
    }
  };
  let kept = keep();
  await until(() => codes() === 'P-0001 P-0002', 'the first papers');
  // A second run of either kind is refused.
  expect(clinic(at, 'clinic')).toMatchObject({ exit: 2, err: expect.stringContaining('Another run is at work') });

  // One export comes in pieces, another is there at once: the whole one does not wait for the other.
  const [head = '', ...rows] = plainExport(2, 'mg/dL', (i) => 100 + ((i * 7) % 83))
    .trimEnd()
    .split('\n');
  mkdirSync(join(at, 'P-slow'));
  writeFileSync(join(at, 'P-slow/sensor.csv'), `${head}\n`);
  let growing = true;
  const grows = (async () => {
    for (let i = 0; growing; i++) {
      if (i < 20) appendFileSync(join(at, 'P-slow/sensor.csv'), `${rows[i]}\n`);
      else appendFileSync(join(at, 'P-slow/sensor.csv'), '');
      writeFileSync(join(at, 'P-slow/settings.json'), `{"days":${1 + (i % 300)}}`);
      await new Promise((soon) => setTimeout(soon, 200));
    }
  })();
  mkdirSync(join(at, 'P-new'));
  writeFileSync(join(at, 'P-new/sensor.csv'), plainExport(3));
  await until(() => codes() === 'P-0001 P-0002 P-new', 'the papers of who is whole');
  expect(existsSync(join(out, 'P-slow/P-slow-clinic-report.pdf'))).toBe(false);
  expect(worklistOf(out)[0]).toMatchObject({ Code: 'P-slow', Why: 'files are still arriving' });

  // Killed without a word, and begun again.
  kept.kill('SIGKILL');
  await ended(kept);
  growing = false;
  await grows;
  writeFileSync(join(at, 'P-slow/sensor.csv'), `${[head, ...rows].join('\n')}\n`);
  writeFileSync(join(at, 'P-slow/settings.json'), '{}');
  kept = keep();
  await until(() => codes() === 'P-0001 P-0002 P-new P-slow', 'everyone');
  kept.kill('SIGTERM');
  expect(await ended(kept)).toBe(0);
  expectWhole(out);
  expect([...filesIn(out).keys()].filter((path) => /(^|\/)\./.test(path))).toEqual([]);
  // A run without a pause makes the same bytes, the further pages and visit files too.
  expect(clinic(at, 'clinic', '--out', '../fresh')).toMatchObject({ exit: 0 });
  expect([...papersIn(out)]).toEqual([...papersIn(join(folder, 'fresh'))]);
  const names = [...papersIn(out).keys()].join();
  expect(names).toMatch(/P-slow-further-pages\.pdf/);
  expect(names).toMatch(/P-slow-visit-\d{4}-\d\d-\d\d\.json/);
  const page = readFileSync(join(out, 'worklist.html'), 'utf8').replace(/[\u2066-\u2069]/g, '');
  expect(page).toMatch(/Made on .*; the newest reading in it is of .*Not for urgent decisions\./);
  expect(page).toContain('Harbour Lane');
}, 300_000);

test('without a folder a run needs settings that say where the results go; what they say of the run holds for no one person', () => {
  const folder = scratch();
  writePeople(join(folder, 'in'), 1, SMALL);
  const bare = clinic(join(folder, 'in'), 'clinic');
  expect([bare.exit, bare.err]).toEqual([64, expect.stringContaining('No folder was named')]);
  writeFileSync(join(folder, 'in/P-0001/settings.json'), '{"out":"elsewhere"}');
  writeFileSync(join(folder, 'in/settings.json'), '{"out":"../out","placse":3}');
  expect(clinic(join(folder, 'in'), 'clinic').err).toContain('placse');
  writeFileSync(join(folder, 'in/settings.json'), '{"out":"../out"}');
  clinic(join(folder, 'in'), 'clinic');
  expect(worklistOf(join(folder, 'out'))[0]!.Why).toContain('out');
});
