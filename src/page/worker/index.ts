import { openZip } from '../../bytes/pack.ts';
import { nearer } from '../../clinic/nearest.ts';
import { wrongFromTheStart } from '../../clinic/outcome.ts';
import { stopwatch } from '../../clinic/pace.ts';
import { version } from '../../index.ts';
import { LANGUAGES, type Place, placeOf, type Words } from '../../language/index.ts';
import { once } from '../../once.ts';
import { foundText } from '../../pages/worklistTexts.ts';
import { ownWords } from '../../papers/own.ts';
import { type Teller, teller } from '../../papers/teller.ts';
import type { CompiledTemplate } from '../../writers/html/index.ts';
import { type BroughtFace, broughtFaces, openBroughtFace } from '../../writers/pdf/index.ts';
import type { Answer, Given, Job, Wish } from '../messages.ts';
import { bakedSettings, takeBaked } from './clinicOwn.ts';
import { daysOf } from './days.ts';
import { emptyShelf, put, type Shelf, settingsAt } from './files.ts';
import { type Folder, frame, list, lists } from './list.ts';
import { type Brought, make, show, showDay } from './papers.ts';
import { type Current, readPerson, withTyped } from './reading.ts';
import { tellerOf } from './said.ts';
import { papersOf, takeTurn } from './turn.ts';
import { look, type Voice } from './who.ts';

// The worker: all reading, judging and packages. It is handed bytes and hands back plain data; under the policy of the page it
// has no way out but this.

let brought: Brought | undefined;
let current: Current | undefined;
let shelf: Shelf = emptyShelf();
let folder: Folder | undefined;
let listed: Pick<Wish, 'language' | 'region'> | undefined;
let archive: ReturnType<typeof openZip> | undefined;
/** Asked for late: a clinic's copy brings words of its own. */
const inEnglish = once((): Promise<Words> => ownWords(placeOf('en', undefined)!));

type Work = { [J in Job]: (given: Given<J>) => Promise<{ value: Answer<J>; give?: ArrayBufferLike[] }> };

const work: Work = {
  async begin({ template, regular, semibold, clinic }) {
    takeBaked(clinic);
    const parsed: CompiledTemplate = JSON.parse(template);
    brought = {
      template: parsed,
      fonts: { regular, semibold },
      tell: tellerOf(await inEnglish(), await inEnglish()),
    };
    return { value: { version } };
  },
  async faces({ faces }) {
    const opened: BroughtFace[] = [];
    for (const [i, bytes] of faces.entries())
      try {
        opened.push(openBroughtFace(bytes));
      } catch {
        return { value: { wrong: i } };
      }
    must(brought).fonts = { ...must(brought).fonts, more: broughtFaces(opened) };
    return { value: { wrong: null } };
  },
  async look({ files, taken, today, language }) {
    shelf = emptyShelf();
    put(shelf, files);
    put(shelf, taken);
    const { found, unread } = look(shelf, files, today, voiceOf((await spoken(language)).tell));
    const usual = settingsAt(shelf, found.people[0]?.usual, true);
    folder = {
      ...{
        people: found.people.map(({ person }) => person!),
        ended: new Map(),
        passedOver: unread,
        today: found.today,
      },
      everyone: nearer(bakedSettings(), 'settings' in usual ? usual.settings : {}),
    };
    return { value: found };
  },
  async take({ files }) {
    shelf.bytes.clear();
    put(shelf, files);
    return { value: null };
  },
  async read(wish) {
    const { read, current: next } = await readPerson(shelf, wish, await spoken(wish));
    current = next;
    return { value: read };
  },
  async days() {
    return { value: daysOf(must(current)) };
  },
  async show(showing) {
    return { value: show(showing, withTyped(must(current), showing.typed), must(brought)) };
  },
  async day({ date, sheet }) {
    return { value: showDay(date, sheet, must(current), must(brought)) };
  },
  async make(wanting) {
    const value = await make(wanting, withTyped(must(current), wanting.typed), must(brought));
    return { value, give: value.map(({ bytes }) => bytes.buffer) };
  },
  async turn(turn) {
    return { value: (await takeTurn(turn, await spoken(turn.wish))).outcome };
  },
  async papers(turn) {
    const value = await papersOf(turn, await spoken(turn.wish), must(brought));
    return { value, give: value.files.map(({ bytes }) => bytes.buffer) };
  },
  async list(asked) {
    listed = asked.language;
    return { value: list(must(folder), asked, await inEnglish(), await spoken(asked.language)) };
  },
  async lists() {
    const value = await lists(must(folder), await inEnglish(), await spoken(must(listed)), must(brought));
    return { value, give: value.map(({ bytes }) => bytes.buffer) };
  },
  async frame({ form }) {
    return { value: await frame(must(folder), form, await inEnglish(), await spoken(must(listed)), must(brought)) };
  },
  async pack({ files, last }) {
    archive ??= openZip();
    for (const { name, bytes } of files) archive.add(name, bytes);
    const value = last ? archive.end() : archive.ready();
    if (last) archive = undefined;
    return { value, give: [value.buffer] };
  },
};

const voiceOf = (tell: Teller): Voice => ({
  wrong: (wrong) => tell.speaker.repeat(wrongFromTheStart({ code: '', stem: '', files: [], wrong })),
  toldBy: (people, manifest) =>
    [
      tell.say('clinic.folder.found', { people: people.length, manifest: manifest ? 'yes' : 'no' }),
      foundText(
        tell.speaker,
        people.map(({ by }) => by),
      ),
    ].join(' '),
  earlier: (files, people) => tell.say('clinic.folder.earlier', { files, people }),
  refused: (of, actual) => tell.say(`clinic.folder.refused.${of}`, { actual }),
  heavy: ({ megabytes, seconds, memory }) =>
    tell.say('clinic.folder.heavy', { megabytes, time: stopwatch(seconds), memory }),
});

async function spoken({ language, region }: Pick<Wish, 'language' | 'region'>) {
  const place: Place = placeOf(language, region) ?? placeOf(language, undefined)!;
  const own = await ownWords(place);
  const forms = await Promise.all(LANGUAGES.map((one) => ownWords(placeOf(one, undefined)!)));
  return { place, own, tell: tellerOf(await inEnglish(), own), forms: forms.map(teller) };
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
