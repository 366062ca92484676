import type { Sheet, Someone } from '../messages.ts';
import { say } from '../say.ts';
import { today } from './day.ts';
import { openDays } from './days.ts';
import type { Picked } from './dropped.ts';
import { invented } from './example.ts';
import { bringFaces } from './faces.ts';
import { openFolder } from './folder.ts';
import { openLooking } from './looking.ts';
import { faultOf } from './lying.ts';
import { openReader } from './reader.ts';
import { openSaving } from './saving.ts';
import type { Screen } from './screen.ts';
import { openShowing } from './showing.ts';
import { type Answered, answered, beginning, beginPerson, keepAnswers, placed, type State, type Way } from './state.ts';
import { openVisit } from './visit.ts';
import { Stopped } from './worker.ts';

/** All that can be done, each with what then holds shown. `firstSheet` says which paper a way begins with. */
export type Desk = ReturnType<typeof openDesk>;

export function openDesk(state: State, screen: Screen, firstSheet: (way: Way) => Sheet) {
  let asks = 0;
  const { begun, looked, hand, forget, end, faces } = openReader(state, (error) => fail(error));
  const folder = openFolder(state, screen, { looked, fail });
  const looking = openLooking(state, screen, { looked, forget, fail, listAgain: folder.listAgain });
  const days = openDays(state, screen, { begun, faces, fail });
  const show = openShowing(state, screen, { begun, faces, fail });
  const visit = openVisit(state, {
    read: () => void read(false),
    show: () => void show(state.sheet),
    drawVisit: () => screen.drawVisit(),
    drawKept: () => screen.drawKept(),
  });

  /** Files are read again from where they lie: nothing that was chosen or answered is lost. */
  function fail(error: unknown): void {
    if (error instanceof Stopped) return;
    end();
    state.fault = faultOf(error);
    state.step = 'failed';
    screen.draw();
  }

  const reset = (): void => {
    asks += 1;
    folder.end();
    forget();
    Object.assign(state, { ...beginning(state.place), way: state.way });
  };

  /** Whether the page begins anew. */
  function again(): boolean {
    if (!visit.mayGo()) return false;
    reset();
    screen.draw();
    return true;
  }

  async function take(files: readonly Picked[], more: boolean): Promise<void> {
    if (!more && !visit.mayGo()) return;
    if (!more) reset();
    folder.end();
    forget();
    Object.assign(state, { run: null, found: null });
    state.picked = [...state.picked, ...files];
    state.step = 'reading';
    screen.draw();
    try {
      await looked();
    } catch (error) {
      return fail(error);
    }
    if (state.found?.whose === 'one') return open(state.found.together, false);
    state.step = 'who';
    screen.draw();
  }

  async function open(person: Someone, ofMany: boolean, code?: string): Promise<void> {
    beginPerson(state, person, ofMany, firstSheet(state.way));
    visit.opened();
    if (code !== undefined) state.asked.code = code;
    if (state.invented) state.asked = { code: say('example.code'), clinic: say('example.clinic') };
    state.step = 'reading';
    screen.draw();
    try {
      await hand(person);
    } catch (error) {
      return fail(error);
    }
    await read(true);
  }

  function toAll(): void {
    asks += 1;
    Object.assign(state, { person: null, read: null, step: state.run ? 'folder' : 'who' });
    screen.draw();
  }

  /** Reads with what holds now. Unless it is the first time, the old view stays until the new one is there. */
  async function read(first: boolean): Promise<void> {
    const { person, ofMany, since, asked, layout } = state;
    if (!person) return;
    asks += 1;
    const mine = asks;
    if (first) {
      state.step = 'reading';
      screen.draw();
    }
    screen.busy(true);
    try {
      const laid = Object.keys(layout).length > 0 ? { layout } : {};
      const wish = { person, ofMany, since, asked, ...laid, ...placed(state.place), today: today() };
      const got = await begun().ask('read', wish);
      if (mine !== asks) return;
      const stays = state.step === 'papers' && got.ok;
      state.read = got;
      visit.brought();
      state.step = got.ok ? 'papers' : 'asking';
      if (stays) screen.drawAround();
      else screen.draw();
      if (got.ok) await show(state.sheet);
      if (got.ok && (first || state.days.length === 0)) void days.count();
    } catch (error) {
      if (mine === asks) fail(error);
    } finally {
      if (mine === asks) screen.busy(false);
    }
  }

  return {
    take,
    open,
    showDay: (date: string): void => void days.show(date),
    folder,
    looking,
    show,
    addFaces: (files: readonly Picked[]): void =>
      void bringFaces(state, files, begun, screen, () => show(state.sheet)).catch(fail),
    /** Starts the worker, so that the first files find it ready. */
    warm: (): void => void begun(),
    read: (first: boolean): void => void read(first),
    /** The days from one to another. */
    period(from: string, to: string): void {
      delete state.asked.days;
      Object.assign(state.asked, { from, to });
      void read(false);
    },
    answer(answers: readonly Answered[]): void {
      for (const one of answers) answered(state, one);
      void read(state.step !== 'papers');
    },
    forget(): void {
      Object.assign(state, { asked: {}, layout: {} });
      void read(true);
    },
    async example(): Promise<void> {
      if (!visit.mayGo()) return;
      reset();
      Object.assign(state, { invented: true, picked: invented(), step: 'reading' });
      screen.draw();
      try {
        await looked();
      } catch (error) {
        return fail(error);
      }
      if (state.found) await open(state.found.together, false);
    },
    again,
    /** Files beside each other that are each a person's own. */
    apart(): void {
      if (state.found) state.found = { ...state.found, whose: 'many' };
      screen.draw();
    },
    /** To all people; what was answered for this one holds in the worklist and when it is opened again. */
    back(): void {
      const person = keepAnswers(state);
      if (person) folder.again(person);
      toAll();
    },
    /** A new worker reads on with what was chosen. */
    async retry(): Promise<void> {
      state.step = 'reading';
      screen.draw();
      try {
        await (state.person ? hand(state.person) : looked());
      } catch (error) {
        return fail(error);
      }
      if (state.person) return read(true);
      state.step = state.run ? 'folder' : 'who';
      screen.draw();
    },
    stop(): void {
      if (state.ofMany && state.person) toAll();
      else if (!again()) return;
      end();
    },
    ...openSaving(state, screen, { begun, saving: visit.saving, fail }),
    visit,
  };
}
