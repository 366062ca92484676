import { kept, keptBytes } from '../kept.ts';
import type { Someone } from '../messages.ts';
import { today } from './day.ts';
import { buffersOf, bytesOf, saysWho } from './lying.ts';
import { placed, type State } from './state.ts';
import { startWorker, type Worker } from './worker.ts';

/** A worker that knows what lies there: another one each time that it is told. */
export interface Looked {
  worker: Worker;
}

let faceBytes: { regular: Uint8Array<ArrayBuffer>; semibold: Uint8Array<ArrayBuffer> } | undefined;

/** Files of faces that somebody brought, for scripts that the page's own two do not have. */
let added: Uint8Array[] = [];

/** Hands faces to a worker, and to each that begins later; whether they can be used. Those before hold on where not. */
export async function addFaces(worker: Worker, files: readonly Uint8Array[]): Promise<{ wrong: number | null }> {
  const all = [...added, ...files];
  const { wrong } = await worker.ask('faces', { faces: all });
  if (wrong === null) added = all;
  return { wrong: wrong === null ? null : wrong - added.length };
}

/** Hands a new worker what it makes papers with. */
export async function begin(worker: Worker): Promise<unknown> {
  faceBytes ??= { regular: keptBytes('face-regular'), semibold: keptBytes('face-semibold') };
  const begun = worker.ask('begin', { template: kept('template'), clinic: kept('clinic'), ...faceBytes });
  if (added.length > 0) void worker.ask('faces', { faces: added }).catch(() => {});
  return begun;
}

/** The one worker that looks at what was brought and reads who is opened. Ended, the next one is told all of it again. */
export function openReader(state: State, fail: (error: unknown) => void) {
  let worker: Worker | undefined;
  let known: { by: Worker; looked: Promise<Looked> } | undefined;
  const faces: FontFace[] = [];

  function begun(): Worker {
    if (worker) return worker;
    worker = startWorker();
    void begin(worker).catch(fail);
    if (faces.length === 0 && faceBytes) {
      faces.push(face(faceBytes.regular, '400'), face(faceBytes.semibold, '600'));
      for (const one of faces) document.fonts.add(one);
    }
    return worker;
  }

  async function look(by: Worker): Promise<Looked> {
    const files = state.picked.map(({ path, file }) => ({ path, size: file.size }));
    const taken = await bytesOf(state.picked, files.map(({ path }) => path).filter(saysWho));
    // What somebody said of files beside each other goes on.
    const many = state.found?.whose === 'many';
    const found = await by.ask('look', { files, taken, today: today(), language: placed(state.place) });
    state.found = many && found.whose === 'ask' ? { ...found, whose: 'many' } : found;
    return { worker: by };
  }

  /** The worker that knows what lies there. Of the files only those that say who is who are read for it. */
  function looked(): Promise<Looked> {
    const now = begun();
    if (known?.by !== now) known = { by: now, looked: look(now) };
    return known.looked;
  }

  return {
    faces,
    begun,
    looked,
    /** Hands a person's files to the worker, which keeps their bytes. */
    async hand(person: Someone): Promise<void> {
      const { worker: to } = await looked();
      const files = await bytesOf(state.picked, person.needs, state.found?.most);
      await to.ask('take', { files }, buffersOf(files));
    },
    /** Something else lies there, or is to be said otherwise. */
    forget(): void {
      known = undefined;
    },
    end(): void {
      worker?.stop();
      worker = undefined;
    },
  };
}

const face = (bytes: Uint8Array<ArrayBuffer>, weight: string): FontFace =>
  new FontFace('IBM Plex Sans', bytes.slice(), { weight });
