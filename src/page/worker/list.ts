import { listFiles } from '../../clinic/listFiles.ts';
import { contentOf, listSpeaker, worklistReport } from '../../clinic/lists.ts';
import { because, blank, refused } from '../../clinic/outcome.ts';
import { paceOf, stopwatch } from '../../clinic/pace.ts';
import { USUAL, withUsual } from '../../clinic/thresholds.ts';
import { withheld } from '../../clinic/withheld.ts';
import { countTiers, rank } from '../../clinic/worklist.ts';
import { version } from '../../index.ts';
import { layered, type Place, type Words } from '../../language/index.ts';
import type { Outcome, Person, WorklistLine } from '../../model/clinic.ts';
import type { WorklistContent } from '../../pages/worklist.ts';
import { lineText, nextTexts } from '../../pages/worklistLine.ts';
import { hoursText, tierName, topicText, visitText, whyText, withPoints } from '../../pages/worklistTexts.ts';
import { ownWords } from '../../papers/own.ts';
import type { Teller } from '../../papers/teller.ts';
import type { FolderSettings } from '../../schemas/settings.ts';
import { parseThresholds, type Thresholds } from '../../schemas/thresholds.ts';
import { writeHtml } from '../../writers/html/index.ts';
import type { Ended, Listed, Listing, Row } from '../folderMessages.ts';
import type { Framed, SavedFile } from '../messages.ts';
import { type Brought, framed, savedFile } from './papers.ts';
import { withoutOptions } from './said.ts';

/** Everyone of a folder, and how their turns ended so far. */
export interface Folder {
  people: readonly Person[];
  ended: Map<string, Outcome>;
  passedOver: string[];
  /** Of the settings at the top. */
  everyone: FolderSettings;
  today: string;
  /** As it was asked for last. */
  content?: WorklistContent;
}

interface Said {
  place: Place;
  own: Words;
  tell: Teller;
}

/** The worklist of those who have ended so far. */
export function list(folder: Folder, asked: Listing, english: Words, { own, tell }: Said): Listed {
  if (asked.fresh) folder.ended.clear();
  for (const one of asked.ended) note(folder, one);
  const { rules, wrong } = thresholdsIn(asked.thresholds);
  const outcomes = folder.people.flatMap((person) => {
    const ended = folder.ended.get(person.stem);
    if (ended) return [ended];
    return asked.over ? [refused(blankFor(folder, person), because('notRun'))] : [];
  });
  const seen = withheld(outcomes);
  const withdrawn = new Set(seen.filter((outcome, i) => outcome !== outcomes[i]).map(({ stem }) => stem));
  const lines = rank(seen, rules);
  // While people still come nobody knows who stands below the line.
  const places = asked.over ? asked.places : null;
  const content = contentOf(lines, rules, folder.passedOver, true, asked.order, places);
  folder.content = content;
  const speaker = listSpeaker(layered(english, own));
  const counts = countTiers(lines);
  const { rate, left } = paceOf(asked.gone);
  const count = (value: number) => ({ q: 'count' as const, value });
  return {
    rows: content.lines.map((line): Row => {
      const { outcome, tier } = line;
      const { code, stem, facts } = outcome;
      return {
        ...{ code, stem, group: tierName(speaker, tier), papers: facts !== null },
        topic: topicText(speaker, line),
        // A sentence that names an option of the command is no business of a page: whoever is opened is asked.
        why: facts ? withPoints(speaker, line, whyText(speaker, line)) : withoutOptions(whyText(speaker, line)),
        hours: hoursText(speaker, line),
        visit: visitText(speaker, line),
        opens: !withdrawn.has(stem) && opens(folder, line),
      };
    }),
    about: speaker.say('pages.worklist.about'),
    lead: speaker.say('pages.worklist.lead', { people: count(lines.length), flagged: count(content.flagged) }),
    progress: tell.say('clinic.folder.progress', {
      ...{ done: asked.gone.done, total: asked.gone.total, left: stopwatch(left) },
      rate: speaker.number(rate, rate >= 10 ? 0 : 1),
    }),
    gone: asked.gone,
    line: content.line && {
      first: content.line.first,
      text: lineText(content.line, speaker),
      next: nextTexts(content.line, speaker),
    },
    groups: content.tiers
      .filter((tier) => counts[tier] > 0)
      .map((tier) => [tierName(speaker, tier), String(counts[tier])]),
    passedOver: folder.passedOver,
    wrong: wrong === '' ? '' : tell.say('clinic.folder.wrongRules', { problem: wrong }),
    visits: folder.people.some(({ row }) => row?.visit !== undefined),
  };
}

const blankFor = ({ today }: Folder, person: Person): Outcome => blank(person, { key: '', printed: today, version });

function note(folder: Folder, { stem, outcome, died }: Ended): void {
  const person = folder.people.find((one) => one.stem === stem);
  if (!person) return;
  const ended = outcome ?? refused(blankFor(folder, person), because(died!.why, { actual: died!.detail }));
  folder.ended.set(stem, ended);
}

/** Nothing of what was wrong from the start is settled by an answer. */
const opens = ({ people }: Folder, { outcome }: WorklistLine): boolean =>
  people.some(({ stem, wrong }) => stem === outcome.stem && wrong === undefined);

function thresholdsIn(text: string | undefined): { rules: Thresholds; wrong: string } {
  if (text === undefined) return { rules: USUAL, wrong: '' };
  try {
    const checked = parseThresholds(JSON.parse(text));
    if (checked.ok) return { rules: withUsual(checked.thresholds), wrong: '' };
    return { rules: USUAL, wrong: checked.problems.join('; ') };
  } catch {
    return { rules: USUAL, wrong: '{ }' };
  }
}

const listedIn = ({ content }: Folder): WorklistContent => {
  if (!content) throw new Error('nobody has been listed yet');
  return content;
};

const printingOf = ({ everyone, today }: Folder, { place }: Said) => ({
  ...{ printed: today, version, clinic: everyone.clinic, grey: everyone.grey ?? false },
  paper: everyone.paper ?? place.paper,
});

/** The worklist in a frame of the page. It leads nowhere there: papers lie beside it only once it is saved. */
export async function frame(
  folder: Folder,
  form: 'screen' | 'paper',
  english: Words,
  said: Said,
  { template, fonts }: Brought,
): Promise<Framed> {
  const words = layered(english, said.own);
  const printing = printingOf(folder, said);
  const report = worklistReport({ ...listedIn(folder), linked: false }, listSpeaker(words), printing, form);
  return framed(report, template, fonts, { words, grey: printing.grey });
}

/** The worklist as the command writes it, of what was listed last. */
export async function lists(folder: Folder, english: Words, said: Said, brought: Brought): Promise<SavedFile[]> {
  const content = listedIn(folder);
  const { place } = said;
  const printing = printingOf(folder, said);
  const files = await listFiles(content, printing, {
    words: layered(english, said.own),
    paperWords: await ownWords(place),
    fonts: brought.fonts,
    page: (report, options) => writeHtml(report, brought.template, options),
  });
  return files.map(savedFile);
}
