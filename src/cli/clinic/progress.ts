import { paceOf, stopwatch } from '../../clinic/pace.ts';
import type { Teller } from '../../papers/teller.ts';

export interface Progress {
  /** One more person is done. */
  step(): void;
  /** Clears the moving line, so that other lines can be written. */
  end(): void;
}

const WIDTH = 24;
/** A moving line is redrawn, and a plain one written, this often at most. Milliseconds. */
const REDRAW = 100;
const LINE_EVERY = 5_000;

/**
 * How far a run has come, on the standard error: a moving line with rate and time left on a terminal, a plain line now
 * and then anywhere else.
 */
export function progress(total: number, tell: Teller, stream: NodeJS.WriteStream = process.stderr): Progress {
  const start = performance.now();
  let first = start;
  const every = stream.isTTY ? REDRAW : LINE_EVERY;
  let done = 0;
  let last = start;
  let drawn = false;
  const text = (now: number): string => {
    const { rate, left } = paceOf({ done, total, sinceStart: now - start, sinceFirst: now - first });
    return tell.say('cli.clinic.progress', {
      done,
      total,
      rate: rate >= 10 ? String(Math.round(rate)) : rate.toFixed(1),
      left: stopwatch(left),
    });
  };
  const draw = (now: number): void => {
    last = now;
    if (!stream.isTTY) return void stream.write(`${text(now)}\n`);
    const filled = Math.round((WIDTH * done) / total);
    const bar = '█'.repeat(filled) + '░'.repeat(WIDTH - filled);
    const line = `${bar} ${text(now)}`.slice(0, Math.max(20, (stream.columns ?? 80) - 1));
    stream.write(`\r\x1b[2K${line}`);
    drawn = true;
  };
  return {
    step() {
      done++;
      const now = performance.now();
      if (done === 1) first = now;
      if (now - last >= every || (stream.isTTY && done === total)) draw(now);
    },
    end() {
      if (drawn) stream.write('\r\x1b[2K');
      drawn = false;
    },
  };
}
