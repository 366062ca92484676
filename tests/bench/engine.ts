import { readFileSync } from 'node:fs';
import type { Browser } from 'playwright-core';
import { below } from './processes.ts';

// What a browser's processes take: processor, and tasks of the page's own thread.

export const isPage = (pid: number): boolean => {
  try {
    return readFileSync(`/proc/${pid}/cmdline`, 'utf8').includes('--type=renderer');
  } catch {
    return false;
  }
};

interface Traced {
  name: string;
  ph: string;
  pid: number;
  tid: number;
  dur?: number;
  tdur?: number;
  args?: { name?: string };
}

/** Longest tasks of a page's own thread, by the clock and of processor alone, in milliseconds: on a busy machine the two differ much. */
export async function tracer(browser: Browser): Promise<() => Promise<{ clock: number; cpu: number }>> {
  const session = await browser.newBrowserCDPSession();
  const events: Traced[] = [];
  session.on('Tracing.dataCollected', ({ value }) => {
    for (const one of value as unknown as Traced[])
      if (one.name === 'thread_name' || (one.dur ?? 0) > 20_000) events.push(one);
  });
  await session.send('Tracing.start', {
    transferMode: 'ReportEvents',
    traceConfig: { includedCategories: ['toplevel'] },
  });
  return async () => {
    const whole = new Promise((done) => session.once('Tracing.tracingComplete', done));
    await session.send('Tracing.end');
    await whole;
    const own = new Set(
      events
        .filter(({ name, args }) => name === 'thread_name' && args?.name === 'CrRendererMain')
        .map(({ pid, tid }) => `${pid}/${tid}`),
    );
    const tasks = events.filter(({ name, pid, tid }) => /RunTask/.test(name) && own.has(`${pid}/${tid}`));
    const most = (of: 'dur' | 'tdur'): number => Math.round(Math.max(0, ...tasks.map((one) => one[of] ?? 0)) / 1000);
    return { clock: most('dur'), cpu: most('tdur') };
  };
}

/** Milliseconds of processor that the pages' processes below one took so far, all their threads together. */
export const cpuOfPages = (pid: number): number =>
  below(pid)
    .filter(isPage)
    .reduce((sum, one) => {
      const stat = readFileSync(`/proc/${one}/stat`, 'utf8');
      const fields = stat.slice(stat.lastIndexOf(')') + 2).split(' ');
      // User and system time, in hundredths of a second (Linux, proc(5)).
      return sum + 10 * (Number(fields[11]) + Number(fields[12]));
    }, 0);
