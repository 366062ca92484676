import { deflateRawSync, gzipSync } from 'node:zlib';
import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { openWorkbooks } from '../../src/readers/containers/workbook.ts';
import { unzip } from '../../src/readers/containers/zip.ts';
import { readInputs } from '../../src/readers/index.ts';
import { TODAY, tell } from './digest.ts';

const text = 'Time,Glucose (mg/dL)\n2026-01-14 08:00,102\n';
const bytes = new TextEncoder().encode(text);

/** A small archive by the published layout (PKWARE APPNOTE, sections 4.3.7, 4.3.12 and 4.3.16). */
function zip(files: [string, Uint8Array][], change: { size?: number; flags?: number } = {}): Uint8Array {
  const parts: Buffer[] = [];
  const central: Buffer[] = [];
  let at = 0;
  for (const [name, content] of files) {
    const packed = deflateRawSync(content);
    const title = Buffer.from(name);
    const local = Buffer.alloc(30);
    local.writeUInt32LE(0x04034b50, 0);
    local.writeUInt16LE(8, 8);
    local.writeUInt16LE(title.length, 26);
    const entry = Buffer.alloc(46);
    entry.writeUInt32LE(0x02014b50, 0);
    entry.writeUInt16LE(change.flags ?? 0, 8);
    entry.writeUInt16LE(8, 10);
    entry.writeUInt32LE(packed.length, 20);
    entry.writeUInt32LE(change.size ?? content.length, 24);
    entry.writeUInt16LE(title.length, 28);
    entry.writeUInt32LE(at, 42);
    parts.push(local, title, packed);
    central.push(entry, title);
    at += 30 + title.length + packed.length;
  }
  const end = Buffer.alloc(22);
  end.writeUInt32LE(0x06054b50, 0);
  end.writeUInt16LE(files.length, 10);
  end.writeUInt32LE(at, 16);
  return Buffer.concat([...parts, ...central, end]);
}

describe('archives', () => {
  it('reads through gzip', () => {
    expect(tell(gzipSync(bytes), {}, 'a.csv.gz').readings).toEqual(['2026-01-14 08:00 102 mg/dL']);
  });

  it('passes over no archive in silence, however deep it lies', async () => {
    let packed: Uint8Array = bytes;
    for (let depth = 1; depth <= 6; depth++) {
      packed = zip([
        ['next.zip', packed],
        ['beside.csv', bytes],
      ]);
      const opened = await openWorkbooks([{ name: 'all.zip', bytes: packed }]);
      const files = readInputs(opened, { today: TODAY });
      const unread = files.filter(({ issues }) => issues.some(({ code }) => code === 'not-text'));
      expect(files.filter(({ readings }) => readings.count === 1).length + unread.length, `${depth} deep`).toBe(
        files.length,
      );
      expect(unread.length, `${depth} deep`).toBe(depth > 3 ? 1 : 0);
    }
  });

  it.each<[string, Uint8Array, string]>([
    ['damaged', zip([['a.csv', bytes]], { size: 5 }), 'archive-damaged'],
    ['too large', zip([['a.csv', bytes]], { size: 0xf0000000 }), 'archive-too-large'],
    ['locked', zip([['a.csv', bytes]], { flags: 1 }), 'archive-locked'],
    ['a workbook that is none', zip([['[Content_Types].xml', bytes]]), 'workbook'],
    ['empty', zip([['folder/', new Uint8Array(0)]]), 'file-empty'],
  ])('looks into an archive once: %s', async (_, archive, code) => {
    const [first, ...more] = await openWorkbooks([{ name: 'a.zip', bytes: archive }]);
    expect(more).toEqual([]);
    // What was learnt goes along: without its bytes it is told all the same.
    const [file] = readInputs([{ ...first!, bytes: new Uint8Array(0) }], { today: TODAY });
    expect(file!.issues.map((issue) => issue.code)).toEqual([code]);
    expect(await openWorkbooks([first!])).toEqual([first]);
  });

  it('hands on no archive that could be opened a second time', async () => {
    let packed: Uint8Array = bytes;
    for (let depth = 0; depth < 6; depth++) packed = zip([['next.zip', packed]]);
    const opened = await openWorkbooks([{ name: 'all.zip', bytes: packed }]);
    expect(opened.map(({ form }) => form)).toEqual(['too-deep']);
    expect(await openWorkbooks(opened)).toEqual(opened);
  });

  it('reads every file of a zip, and passes over what is hidden', () => {
    const archive = zip([
      ['readings.csv', bytes],
      ['__MACOSX/._readings.csv', bytes],
      ['notes/log.csv', new TextEncoder().encode('Time,Carbs (g)\n2026-01-14 08:10,45\n')],
    ]);
    const files = readInputs([{ name: 'all.zip', bytes: archive }], { today: TODAY });
    expect(files.map((file) => [file.name, file.readings.count, file.notes.length])).toEqual([
      ['all.zip/readings.csv', 1, 0],
      ['all.zip/notes/log.csv', 0, 1],
    ]);
  });

  it.each<[string, Uint8Array, string]>([
    ['a claim too small', zip([['a.csv', bytes]], { size: 5 }), 'archive-damaged'],
    ['a claim too large', zip([['a.csv', bytes]], { size: 0xf0000000 }), 'archive-too-large'],
    ['a password', zip([['a.csv', bytes]], { flags: 1 }), 'archive-locked'],
    ['a workbook nobody opened', zip([['[Content_Types].xml', bytes]]), 'workbook'],
    ['cut short', zip([['a.csv', bytes]]).subarray(0, 50), 'archive-damaged'],
    ['nothing inside', zip([['folder/', new Uint8Array(0)]]).subarray(0), 'file-empty'],
    ['gzip cut short', gzipSync(bytes).subarray(0, 20), 'archive-damaged'],
    ['gzip that bursts', gzipSync(Buffer.alloc(300 * 1024 * 1024)), 'archive-too-large'],
  ])('%s', (_, archive, code) => {
    expect(tell(archive, {}, 'a.zip').file.issues.map((issue) => issue.code)).toEqual([code]);
  });

  it('never throws on a damaged archive', () => {
    const whole = zip([['a.csv', bytes]]);
    fc.assert(
      fc.property(fc.nat(whole.length - 1), fc.nat(255), (place, byte) => {
        const broken = Uint8Array.from(whole);
        broken[place] = byte;
        unzip(broken);
      }),
      { numRuns: 300 },
    );
  });
});

describe('several files of one person', () => {
  const clear = 'Time;Glucose (mg/dL)\n14/03/2026 08:00;102\n15/03/2026 08:00;103\n';
  const unclear = 'Time;Carbs (g)\n04/03/2026 08:00;45\n04/03/2026 12:00;50\n';
  const input = (name: string, content: string) => ({ name, bytes: new TextEncoder().encode(content) });

  it('settle an unclear date order by those that could tell', () => {
    const [, notes] = readInputs([input('a.csv', clear), input('b.csv', unclear)], { today: TODAY });
    // Nothing but the other file tells, so that is said.
    expect(notes!.issues.map(({ level, code }) => `${level} ${code}`)).toEqual(['warning date-order-borrowed']);
    expect(new Date(notes!.notes[0]!.wall).toISOString()).toBe('2026-03-04T08:00:00.000Z');
    expect(notes!.choices.find(({ id }) => id === 'date-order')).toMatchObject({
      value: 'day-first',
      by: 'file',
      evidence: { is: 'named', name: 'a.csv' },
    });
  });

  it('settle a unit that nothing proves by those that name one', () => {
    const open = 'Time,Glucose\n2026-01-14 08:00,22\n2026-01-14 08:05,23\n';
    const named = 'Time,Glucose (mmol/L)\n2026-01-15 08:00,5.6\n';
    const [file] = readInputs([input('a.csv', open), input('b.csv', named)], { today: TODAY });
    expect(file!.choices.find(({ id }) => id === 'unit')).toMatchObject({
      value: 'mmol/L',
      by: 'file',
      evidence: { is: 'named', name: 'b.csv' },
    });
    expect(file!.issues).toEqual([]);
    const other = 'Time,Glucose (mg/dL)\n2026-01-16 08:00,102\n';
    const files = readInputs([input('a.csv', open), input('b.csv', named), input('c.csv', other)], { today: TODAY });
    expect(files[0]!.issues.map(({ code }) => code)).toEqual(['unit-unclear']);
    // A unit that the numbers cannot be in settles nothing.
    const large = 'Time,Glucose\n2026-01-14 08:00,22\n2026-01-14 08:05,400.5\n';
    const [refused] = readInputs([input('a.csv', large), input('b.csv', named)], { today: TODAY });
    expect(refused!.issues.map(({ level }) => level)).toContain('refusal');
  });

  it('say of which file the zone is', () => {
    const zoned = 'Zone: Europe/Helsinki\nTime,Glucose (mg/dL)\n2026-01-15 08:00,102\n';
    const bare = 'Time,Carbs (g)\n2026-01-15 08:00,45\n';
    const files = readInputs([input('a.csv', zoned), input('b.csv', bare)], { today: TODAY });
    expect(files.map(({ choices }) => choices.find(({ id }) => id === 'zone')?.evidence)).toEqual([
      undefined,
      { is: 'named', name: 'a.csv' },
    ]);
  });

  it('settle nothing when they disagree', () => {
    const other = 'Time;Carbs (g)\n03/14/2026 08:00;45\n';
    const files = readInputs([input('a.csv', clear), input('b.csv', unclear), input('c.csv', other)], { today: TODAY });
    expect(files[1]!.issues.map(({ code }) => code)).toEqual(['date-order-unclear']);
  });
});
