import { afterEach, beforeEach, expect, test, vi } from 'vitest';
import { progress } from '../../src/cli/clinic/progress.ts';
import { words } from '../../src/cli/home.ts';
import { teller } from '../../src/papers/teller.ts';

beforeEach(() => void vi.useFakeTimers({ toFake: ['performance'] }));
afterEach(() => void vi.useRealTimers());

/** What is written while `done` of `total` are done, one every `each` milliseconds after a start that takes `start`. */
function written(terminal: boolean, total: number, done: number, each: number, start: number, columns = 80): string[] {
  const lines: string[] = [];
  const stream = {
    isTTY: terminal,
    columns,
    write: (text: string) => lines.push(text.replaceAll('\u00a0', ' ')),
  } as never;
  const bar = progress(total, teller(words('en')), stream);
  vi.advanceTimersByTime(start);
  for (let i = 0; i < done; i++) {
    if (i > 0) vi.advanceTimersByTime(each);
    bar.step();
  }
  bar.end();
  return lines;
}

test('on a terminal a moving line with rate and time left, cleared at the end', () => {
  const lines = written(true, 1000, 101, 50, 3_000);
  // 100 people in five seconds, as the start of the workers is no measure of their pace: 899 are left.
  expect(lines.at(-2)).toContain('101 of 1,000 · 20 a second · 0:45 left');
  expect(lines.at(-2)!.startsWith('\r\x1b[2K██░')).toBe(true);
  expect(lines.at(-1)).toBe('\r\x1b[2K');
  expect(lines.length, 'not redrawn for each of them').toBeLessThan(60);
});

test('a narrow terminal cuts the line, so that it never breaks into two', () => {
  for (const line of written(true, 100_000, 500, 50, 0, 40)) {
    expect(line.replace('\r\x1b[2K', '').length).toBeLessThan(40);
  }
});

test('elsewhere a plain line now and then, without a sign that moves anything', () => {
  const lines = written(false, 20_000, 200, 100, 0);
  expect(lines.length).toBe(3);
  for (const sign of ['\x1b', '\r', '█']) expect(lines.join('')).not.toContain(sign);
  // 19,850 at ten a second.
  expect(lines.at(-1)).toMatch(/^\d+ of 20,000 · 10 a second · 33:0\d left\n$/);
});
