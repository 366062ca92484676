import { kept, keptBytes } from '../kept.ts';
import type { Framed, Sheet, Someone, Wanting } from '../messages.ts';
import { answerFiles } from '../save/answers.ts';
import { saveAll } from '../save/save.ts';
import { say } from '../say.ts';
import { today } from './day.ts';
import type { Picked } from './dropped.ts';
import { type Answered, answered, beginning, placed, type State, type Way } from './state.ts';
import { Stopped, startWorker, type Worker } from './worker.ts';

/** What shows the state; the desk never touches an element. */
export interface Screen {
  /** Everything, for a new step. */
  draw(): void;
  /** What stands around the paper; the controls stay as they are, and the focus with them. */
  drawAround(): void;
  busy(on: boolean): void;
  paper(sheet: Sheet, paper: Framed, faces: readonly FontFace[]): Promise<void>;
}

/** All that can be done, each with what then holds shown. `firstSheet` says which paper a way begins with. */
export type Desk = ReturnType<typeof openDesk>;

export function openDesk(state: State, screen: Screen, firstSheet: (way: Way) => Sheet) {
  let worker: Worker | undefined;
  let asks = 0;
  const faces: FontFace[] = [];

  function begun(): Worker {
    if (worker) return worker;
    const [regular, semibold] = [keptBytes('face-regular'), keptBytes('face-semibold')];
    if (faces.length === 0) {
      faces.push(face(regular, '400'), face(semibold, '600'));
      for (const one of faces) document.fonts.add(one);
    }
    worker = startWorker();
    void worker.ask('begin', { template: kept('template'), regular, semibold }).catch(fail);
    return worker;
  }

  function end(): void {
    worker?.stop();
    worker = undefined;
  }

  /** Files are read again from where they lie: nothing that was chosen or answered is lost. */
  function fail(error: unknown): void {
    if (error instanceof Stopped) return;
    end();
    state.fault = error instanceof Error ? error.message : String(error);
    state.step = 'failed';
    screen.draw();
  }

  const reset = (): void => {
    asks += 1;
    Object.assign(state, { ...beginning(state.place), way: state.way });
  };

  /** Hands the files to a worker, which keeps their bytes. */
  async function hand(): Promise<void> {
    // Read here: opened from disk, one engine cannot read a file that was handed to a worker.
    const taken = await Promise.all(
      state.picked.map(async ({ path, file }) => ({ path, bytes: new Uint8Array(await file.arrayBuffer()) })),
    );
    const buffers = taken.map(({ bytes }) => bytes.buffer);
    state.found = await begun().ask('take', { files: taken, language: placed(state.place) }, buffers);
  }

  async function take(files: readonly Picked[], more: boolean): Promise<void> {
    const before = more ? state.picked : [];
    if (!more) reset();
    state.picked = [...before, ...files];
    state.step = 'reading';
    screen.draw();
    try {
      await hand();
    } catch (error) {
      return fail(error);
    }
    if (state.found?.whose === 'one') return open(state.found.together, false);
    state.step = 'who';
    screen.draw();
  }

  async function open(person: Someone, ofMany: boolean): Promise<void> {
    Object.assign(state, { person, ofMany, asked: {}, layout: {}, sheet: firstSheet(state.way) });
    if (state.invented) state.asked = { code: say('example.code'), clinic: say('example.clinic') };
    await read(true);
  }

  /** Reads with what holds now. Unless it is the first time, the old view stays until the new one is there. */
  async function read(first: boolean): Promise<void> {
    const { person, ofMany, asked, layout } = state;
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
      const got = await begun().ask('read', { person, ofMany, asked, ...laid, ...placed(state.place), today: today() });
      if (mine !== asks) return;
      const stays = state.step === 'papers' && got.ok;
      state.read = got;
      state.step = got.ok ? 'papers' : 'asking';
      if (stays) screen.drawAround();
      else screen.draw();
      if (got.ok) await show(state.sheet);
    } catch (error) {
      if (mine === asks) fail(error);
    } finally {
      if (mine === asks) screen.busy(false);
    }
  }

  async function show(sheet: Sheet): Promise<void> {
    state.sheet = sheet;
    const mine = asks;
    try {
      const paper = await begun().ask('show', { sheet });
      if (mine === asks && state.sheet === sheet) await screen.paper(sheet, paper, faces);
    } catch (error) {
      fail(error);
    }
  }

  return {
    take,
    open,
    show,
    /** Starts the worker, so that the first files find it ready. */
    warm: (): void => void begun(),
    read: (first: boolean): void => void read(first),
    answer(answers: readonly Answered[]): void {
      for (const one of answers) answered(state, one);
      void read(state.step !== 'papers');
    },
    forget(): void {
      Object.assign(state, { asked: {}, layout: {} });
      void read(true);
    },
    async example(): Promise<void> {
      reset();
      const folder = say('example.folder');
      const picked = ['readings', 'logbook'].map((name) => ({
        path: `${folder}/${name}.csv.gz`,
        file: new File([keptBytes(`example-${name}`)], `${name}.csv.gz`),
      }));
      Object.assign(state, { invented: true, picked, step: 'reading' });
      screen.draw();
      try {
        await hand();
      } catch (error) {
        return fail(error);
      }
      if (state.found) await open(state.found.together, false);
    },
    again(): void {
      reset();
      screen.draw();
    },
    /** Files beside each other that are each a person's own. */
    apart(): void {
      if (state.found) state.found = { ...state.found, whose: 'many' };
      screen.draw();
    },
    back(): void {
      state.step = 'who';
      screen.draw();
    },
    /** A new worker reads on with what was chosen. */
    async retry(): Promise<void> {
      state.step = 'reading';
      screen.draw();
      try {
        await hand();
      } catch (error) {
        return fail(error);
      }
      if (state.person) return read(true);
      state.step = 'who';
      screen.draw();
    },
    stop(): void {
      end();
      reset();
      screen.draw();
    },
    async save(what: Wanting['what'], zip: boolean): Promise<void> {
      try {
        await saveAll(await begun().ask('make', { what, zip, fhirReadings: false }));
      } catch (error) {
        fail(error);
      }
    },
    saveAnswers: (): void => void saveAll(answerFiles(state)),
  };
}

const face = (bytes: Uint8Array<ArrayBuffer>, weight: string): FontFace =>
  new FontFace('IBM Plex Sans', bytes.slice(), { weight });
