import type { Ended, Listing } from '../folderMessages.ts';
import type { Looked } from './reader.ts';
import type { Screen } from './screen.ts';
import { placed, type Run, type State } from './state.ts';

/** The worklist is made anew so often at most, in milliseconds. */
const EVERY = 250;

/** Has the worklist made by the worker, as people end, and keeps the pace. */
export function openListing(
  state: State,
  screen: Screen,
  looked: () => Promise<Looked>,
  fail: (error: unknown) => void,
) {
  /** Since when people are worked on, and since when one is done. */
  let pace = { done: 0, total: 0, start: 0, first: 0 };
  /** Who ended since the worklist was made last, and by which worker it was. */
  let news: Ended[] = [];
  let lister: Looked | undefined;
  let waiting: ReturnType<typeof setTimeout> | undefined;
  let listing: Promise<void> = Promise.resolve();

  async function list(): Promise<void> {
    const { run } = state;
    if (!run) return;
    try {
      const now = await looked();
      const fresh = now !== lister;
      const ended = fresh ? [...run.ended.values()] : news;
      news = [];
      lister = undefined;
      const listed = await now.worker.ask('list', { ...wanted(run), ended, fresh });
      lister = now;
      if (state.run !== run) return;
      run.listed = listed;
      screen.drawRun();
    } catch (error) {
      fail(error);
    }
  }

  function wanted({ order, places, thresholds, at, ended }: Run): Omit<Listing, 'ended' | 'fresh'> {
    const now = performance.now();
    const { done, total, start, first } = pace;
    return {
      ...{ order, places, over: at !== 'reading' && ended.size > 0, language: placed(state.place) },
      ...(thresholds ? { thresholds: thresholds.text } : {}),
      gone: { done, total, sinceStart: now - start, sinceFirst: now - first },
    };
  }

  /** One after the other, so that nobody is told twice. */
  const listNow = (): Promise<void> => {
    clearTimeout(waiting);
    waiting = undefined;
    listing = listing.then(list);
    return listing;
  };
  const listSoon = (): void => {
    waiting ??= setTimeout(listNow, EVERY);
  };

  function paced(total: number): void {
    const now = performance.now();
    pace = { done: 0, total, start: now, first: now };
  }
  function step(ended: Ended): void {
    news.push(ended);
    pace.done += 1;
    if (pace.done === 1) pace.first = performance.now();
    listSoon();
  }

  return {
    paced,
    step,
    now: listNow,
    pace: (): Readonly<typeof pace> => pace,
    /** Other people, or a run that is no more. */
    forget(): void {
      clearTimeout(waiting);
      waiting = undefined;
      news = [];
      lister = undefined;
    },
  };
}
