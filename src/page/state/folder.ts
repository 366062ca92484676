import type { Agreed } from '../../model/visits.ts';
import type { Ended, Turn } from '../folderMessages.ts';
import type { Answer, Framed, SavedFile, Someone } from '../messages.ts';
import { saveAll } from '../save/save.ts';
import { openTarget, type Target } from '../save/targets.ts';
import { say } from '../say.ts';
import { type Lanes, openLanes, type Turned } from './lanes.ts';
import { openListing } from './listing.ts';
import { buffersOf, bytesOf, Unopened } from './lying.ts';
import { begin, type Looked } from './reader.ts';
import { newRun } from './run.ts';
import type { Screen } from './screen.ts';
import { placed, type Run, type State } from './state.ts';
import type { Worker } from './worker.ts';

interface Kit {
  looked(): Promise<Looked>;
  fail(error: unknown): void;
}

/**
 * A folder of people: everyone is read by workers of their own, the worklist grows, and papers are made when they are saved. Of a person
 * nothing is kept but the line on the worklist.
 */
export function openFolder(state: State, screen: Screen, { looked, fail }: Kit) {
  let lanes: Lanes | undefined;
  let beginning = false;
  /** Who was answered for while others were worked on: read again when that has ended. */
  const answered = new Set<string>();
  const { paced, step, now: listNow, forget, pace } = openListing(state, screen, looked, fail);

  const everyone = (): Someone[] => state.found?.people ?? [];

  /** A person's turn, with the bytes of their files. */
  async function turnOf(person: Someone): Promise<Turn> {
    const { found } = state;
    const { asked, layout } = state.answers.get(person.stem) ?? { asked: {}, layout: {} };
    const words = state.kept.get(person.stem);
    const typed = words ? { typed: words } : {};
    const laid = Object.keys(layout).length > 0 ? { layout } : {};
    const { since } = state;
    const wish = {
      ...{ person, ofMany: true, since, asked, ...laid },
      today: found?.today ?? '',
      ...placed(state.place),
    };
    try {
      return { wish, ...typed, files: await bytesOf(state.picked, person.needs, found?.most) };
    } catch (error) {
      if (!(error instanceof Unopened)) throw error;
      return {
        wish,
        files: [],
        unopened: { file: error.file.slice(error.file.indexOf('/') + 1), actual: error.reason },
      };
    }
  }

  /** Everyone who has not ended yet. */
  async function go(): Promise<void> {
    if (beginning) return;
    beginning = true;
    const run = state.run ?? (await newRun(state));
    beginning = false;
    state.run = run;
    const left = everyone().filter(({ stem }) => !run.ended.has(stem));
    Object.assign(run, { at: 'reading', stopped: false });
    state.step = 'folder';
    paced(left.length);
    screen.draw();
    const note = (person: Someone, turned: Turned<Ended['outcome']>): void => {
      const ended = { stem: person.stem, ...('value' in turned ? { outcome: turned.value! } : { died: turned.died }) };
      run.ended.set(person.stem, ended);
      step(ended);
    };
    const ask = async (worker: Worker, person: Someone) => {
      const turn = await turnOf(person);
      return worker.ask('turn', turn, buffersOf(turn.files));
    };
    lanes = openLanes(left, begin, ask, note);
    await lanes.whole;
    if (state.run !== run) return;
    run.at = 'no';
    run.stopped = run.ended.size < everyone().length;
    if (!run.stopped && readAgain(run)) return go();
    await listNow();
    drawHere();
  }

  /** Whether somebody is to be read again with what was answered meanwhile. */
  function readAgain({ ended }: Run): boolean {
    const some = [...answered].filter((stem) => ended.delete(stem)).length > 0;
    answered.clear();
    return some;
  }

  /** Whoever looks at a person meanwhile is left in peace. */
  function drawHere(): void {
    if (state.step === 'folder') screen.draw();
  }

  /** Everyone's papers, in the order of the folder, whoever is done first; then the worklist. */
  async function writeTo(target: Target, run: Run): Promise<void> {
    const withPapers = new Set(run.listed?.rows.flatMap(({ stem, papers }) => (papers ? [stem] : [])));
    const people = everyone().filter(({ stem }) => withPapers.has(stem));
    const ready = new Map<Someone, SavedFile[]>();
    const words = new Map<string, Agreed>();
    let next = 0;
    let writing = Promise.resolve();
    paced(people.length);
    drawHere();
    const ended = (person: Someone, turned: Turned<Answer<'papers'>>): void => {
      const { stem } = person;
      ready.set(person, 'value' in turned ? turned.value.files : []);
      if ('value' in turned && turned.value.lacking.length > 0) run.lacking.set(person.code, turned.value.lacking);
      if (ready.get(person)!.length === 0) words.delete(stem);
      const now: Ended = { stem, ...('value' in turned ? { outcome: turned.value.outcome } : { died: turned.died }) };
      run.ended.set(stem, now);
      for (let one = people[next]; one && ready.has(one); one = people[++next]) {
        const files = ready.get(one)!;
        const folder = one.stem;
        ready.delete(one);
        writing = writing.then(() => target.add(files.map((file) => ({ ...file, name: `${folder}/${file.name}` }))));
      }
      writing.catch(() => lanes?.stop());
      step(now);
    };
    const ask = async (worker: Worker, person: Someone) => {
      const turn = await turnOf(person);
      if (turn.typed) words.set(person.stem, turn.typed);
      return worker.ask('papers', { ...turn, extras: run.extras }, buffersOf(turn.files));
    };
    lanes = openLanes(people, begin, ask, ended);
    await lanes.whole;
    await writing;
    if (pace().done < people.length) return;
    // Whoever failed only now stands on the worklist as well.
    await listNow();
    const { worker } = await looked();
    await target.add(await worker.ask('lists', {}));
    await target.end();
    for (const [stem, typed] of words) state.saved.set(stem, typed);
  }

  async function save(into: 'zip' | 'folder'): Promise<void> {
    const { run, found } = state;
    if (run?.at !== 'no') return;
    const target = await openTarget(into, `${found?.stem ?? 'people'}-papers.zip`);
    if (!target) return;
    if (typeof target === 'string') {
      run.saved = target;
      return screen.draw();
    }
    Object.assign(run, { at: 'saving', saved: '', lacking: new Map() });
    try {
      await writeTo(target, run);
      run.saved = pace().done < pace().total ? say('folder.savingEnded') : target.saved;
    } catch (error) {
      run.saved = target.failed(error instanceof Error ? error.message : String(error));
    } finally {
      target.close();
      run.at = 'no';
    }
    if (state.run !== run) return;
    if (readAgain(run)) return go();
    drawHere();
  }

  function end(): void {
    lanes?.stop();
    answered.clear();
    forget();
  }

  return {
    go: (): void => void go(),
    end,
    /** Whoever has been begun is left as well: what they would have given is made in no time. */
    stop: (): void => lanes?.stop(),
    save: (into: 'zip' | 'folder'): void => void save(into),
    /** One of what is made once for all. */
    async saveList(name: string): Promise<void> {
      try {
        const { worker } = await looked();
        await listNow();
        const files = await worker.ask('lists', {});
        await saveAll(files.filter((file) => file.name === name));
      } catch (error) {
        fail(error);
      }
    },
    listAgain: (): void => void listNow(),
    /** Reads one person again, with what was answered. */
    again({ stem }: Someone): void {
      if (!state.run) return;
      answered.add(stem);
      // Known to the worker by an older turn until this one has ended.
      if (state.run.at === 'no' && readAgain(state.run)) void go();
    },
    order(order: Run['order']): void {
      if (!state.run) return;
      state.run.order = order;
      void listNow();
    },
    places(places: number | null): void {
      if (!state.run) return;
      state.run.places = places;
      void listNow();
    },
    /** The worklist in a frame. */
    async frame(form: 'screen' | 'paper'): Promise<Framed | undefined> {
      try {
        const { worker } = await looked();
        await listNow();
        return await worker.ask('frame', { form });
      } catch (error) {
        fail(error);
        return undefined;
      }
    },
    thresholds(file: Run['thresholds']): void {
      if (!state.run) return;
      state.run.thresholds = file;
      void listNow().then(screen.draw);
    },
  };
}
