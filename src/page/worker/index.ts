import { wrongFromTheStart } from '../../clinic/outcome.ts';
import { version } from '../../index.ts';
import { LANGUAGES, type Place, placeOf, type Words } from '../../language/index.ts';
import { ownWords } from '../../papers/own.ts';
import { teller } from '../../papers/teller.ts';
import type { CompiledTemplate } from '../../writers/html/index.ts';
import type { Answer, Given, Job, Wish } from '../messages.ts';
import { look, put, type Shelf } from './files.ts';
import { type Brought, make, show } from './papers.ts';
import { type Current, readPerson } from './reading.ts';
import { tellerOf } from './said.ts';

// The worker: all reading, judging and packages. It is handed bytes and hands back plain data; under the policy of the page it
// has no way out but this.

let brought: Brought | undefined;
let current: Current | undefined;
let shelf: Shelf = { bytes: new Map() };
const english: Promise<Words> = ownWords(placeOf('en', undefined)!);

type Work = { [J in Job]: (given: Given<J>) => Promise<{ value: Answer<J>; give?: ArrayBufferLike[] }> };

const work: Work = {
  async begin({ template, regular, semibold }) {
    const parsed: CompiledTemplate = JSON.parse(template);
    brought = {
      template: parsed,
      fonts: { regular, semibold },
      tell: tellerOf(await english, await english),
    };
    return { value: { version } };
  },
  async take({ files, language }) {
    shelf = { bytes: new Map() };
    put(shelf, files);
    const { tell } = await spoken(language);
    return {
      value: look(shelf, (wrong) => tell.speaker.repeat(wrongFromTheStart({ code: '', stem: '', files: [], wrong }))),
    };
  },
  async read(wish) {
    const { read, current: next } = await readPerson(shelf, wish, await spoken(wish));
    current = next;
    return { value: read };
  },
  async show({ sheet }) {
    return { value: show(sheet, must(current), must(brought)) };
  },
  async make(wanting) {
    const value = await make(wanting, must(current), must(brought));
    return { value, give: value.map(({ bytes }) => bytes.buffer) };
  },
};

async function spoken({ language, region }: Pick<Wish, 'language' | 'region'>) {
  const place: Place = placeOf(language, region) ?? placeOf(language, undefined)!;
  const own = await ownWords(place);
  const forms = await Promise.all(LANGUAGES.map((one) => ownWords(placeOf(one, undefined)!)));
  return { place, own, tell: tellerOf(await english, own), forms: forms.map(teller) };
}

function must<T>(value: T | undefined): T {
  if (value === undefined) throw new Error('nothing has been read yet');
  return value;
}

interface Message<J extends Job = Job> {
  id: number;
  job: J;
  given: Given<J>;
}

/** One job after the other, so that an answer never belongs to an older wish. */
let turn: Promise<void> = Promise.resolve();
self.onmessage = ({ data }: MessageEvent<Message>) => {
  turn = turn.then(() => answer(data));
};

// An error in a promise of a worker reaches nobody, in any engine: everything is caught.
async function answer<J extends Job>({ id, job, given }: Message<J>): Promise<void> {
  try {
    const { value, give = [] } = await work[job](given);
    self.postMessage({ id, value }, { transfer: give as ArrayBuffer[] });
  } catch (error) {
    self.postMessage({ id, error: String(error), stack: error instanceof Error ? String(error.stack) : '' });
  }
}
