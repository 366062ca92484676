import type { FindingId } from '../findings/index.ts';
import type { NoteLog } from '../model/occasions.ts';
import type { Block } from '../model/report.ts';
import { AROUND_BEFORE, AROUND_LOG, AROUND_MEALS, AROUND_MOVEMENT, notesWorthWriting } from '../topics/index.ts';
import { medication, rises } from './alsoNoted.ts';
import { foods, laidOver, overTheClock, sessionPairs, sessions, tooFewSessions } from './aroundPictures.ts';
import { comparisonsBlocks } from './comparisons.ts';
import {
  count,
  dotted,
  evidenceDays,
  findingText,
  heading,
  held,
  nameOf,
  type PageContext,
  type PageMaker,
  paragraph,
  word,
} from './context.ts';

/** The log's own kinds; what sensors and meters note tells nothing of how it is kept. */
const TOLD_KINDS = ['meal', 'insulin', 'exercise', 'medication'];

/** What notes tell beside glucose: counts and hints first, then every occasion, then what was compared and how it came out. */
export const aroundNotes: PageMaker = (context) => {
  const { speaker, analysis } = context;
  const { noteLog, meals, exercise } = analysis.measures;
  if (!noteLog.ok || !meals.ok || !exercise.ok) return null;
  if (meals.value.length + exercise.value.length + noteLog.value.medication.length === 0) return null;
  return {
    id: 'around-notes',
    title: speaker.say('pages.aroundNotes.title'),
    blocks: [
      heading(1, speaker.say('pages.aroundNotes.title')),
      log(context, noteLog.value),
      ...inOrder(context, [
        { ids: AROUND_BEFORE, pictures: [] },
        { ids: AROUND_MOVEMENT, pictures: [...sessionPairs(context), ...tooFewSessions(context)] },
        { ids: AROUND_MEALS, pictures: [] },
      ]),
      ...coach(context),
      ...sessions(context),
      ...laidOver(context, meals.value),
      ...foods(context, meals.value),
      ...rises(context),
      ...medication(context),
      ...overTheClock(context),
      ...comparisonsBlocks(context),
    ],
  };
};

function log(context: PageContext, { days, noted, byKind }: NoteLog): Block {
  const { speaker } = context;
  const kinds = byKind
    .filter(({ kind }) => TOLD_KINDS.includes(kind))
    .map((one) =>
      speaker.say('pages.aroundNotes.kind', {
        name: word(speaker.say(`notes.${one.kind}.name`)),
        days: count(one.days),
      }),
    );
  const text = speaker.say('pages.aroundNotes.log', {
    days: count(days),
    noted: count(noted),
    kinds: word(kinds.join(', ')),
  });
  // On how many days notes stand is said above: of few notes only what follows from them is left to say.
  const faults = AROUND_LOG.flatMap((id) => findingText(context, id, id === 'few-notes' ? 'why' : 'what') ?? []);
  return paragraph([text, ...faults, speaker.say('cautions.C12')].join(' '));
}

interface Part {
  ids: readonly FindingId[];
  pictures: Block[];
}

/** Movement before meals, as lows come before highs; a part of which something can be told before one of which nothing can. */
function inOrder(context: PageContext, parts: Part[]): Block[] {
  const statedParts = parts.map(({ ids, pictures }) => ({ said: statements(context, ids), pictures }));
  const first = statedParts.findIndex(({ said }) => said.length > 0);
  if (first < 0) {
    const nothing = paragraph(context.speaker.say('pages.aroundNotes.nothing'));
    return [nothing, ...statedParts.flatMap(({ pictures }) => pictures)];
  }
  const ordered = [statedParts[first]!, ...statedParts.filter((_, i) => i !== first)];
  return ordered.flatMap(({ said, pictures }) => [...said, ...pictures]);
}

/** What holds, each with its days and what could be asked. */
function statements(context: PageContext, ids: readonly FindingId[]): Block[] {
  const { speaker } = context;
  return ids.flatMap((id): Block[] => {
    const look = held(context, id);
    const what = findingText(context, id, 'what');
    if (look === null || what === null) return [];
    const ask = findingText(context, id, 'ask');
    const days = evidenceDays(context, look.where);
    const more = [
      days === '' ? '' : speaker.say('pages.standsOut.seen', { days: word(days) }),
      ask === null ? '' : speaker.say('pages.standsOut.ask', { ask: word(ask) }),
    ];
    return [
      {
        kind: 'together',
        blocks: [
          heading(3, nameOf(context, id, 'name', look)),
          paragraph(what),
          paragraph(dotted(more.filter((one) => one !== '')), 'small'),
        ],
      },
    ];
  });
}

function coach(context: PageContext): Block[] {
  const { speaker, analysis } = context;
  const topic = analysis.topics.find((one) => held(context, one.id));
  const wishes = notesWorthWriting(analysis.measures, analysis.topics);
  if (!topic || wishes.length === 0) return [];
  const name = nameOf(context, topic.id, 'topic', held(context, topic.id)!);
  // No note helps with readings that are missing.
  const title =
    topic.rule === 'data-before-highs'
      ? speaker.say('pages.aroundNotes.coachAlone')
      : speaker.say('pages.aroundNotes.coach', { topic: word(name) });
  return [
    {
      kind: 'together',
      blocks: [
        heading(2, title),
        { kind: 'list', ordered: false, items: wishes.map((wish) => speaker.say(`coach.${wish}.clinic`)) },
      ],
    },
  ];
}
