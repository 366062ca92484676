import { readdirSync, readFileSync } from 'node:fs';
import { fileURLToPath } from 'node:url';
import { examples } from '../../tests/findings/examples/index.ts';
import { ROWS } from '../../tests/topics/order.ts';
import { findings } from '../findings/index.ts';
import { indices } from '../indices/index.ts';
import { speakerOf } from '../language/index.ts';
import { measures } from '../measures/index.ts';
import { sourceText } from '../pages/sourceText.ts';
import { targetSets } from '../targets/index.ts';
import { USUAL_ORDER } from '../topics/index.ts';
import { guideDocs } from './guideDoc.ts';
import { methodDoc } from './methodDoc.ts';
import { wordParams } from './wordParams.ts';
import { zoneRules } from './zones.ts';

/** Paths of what is generated, pages of docs/, types of the words and rules of zones, each with the text the registries and words give it. */
export function catalogues(): Record<string, string> {
  const words = JSON.parse(readFileSync(new URL('../../templates/words/en.json', import.meta.url), 'utf8')) as Words;
  return {
    'docs/measures.md': page('Measures', MEASURES, [...measuresOf(words), FURTHER, ...indicesOf(words)]),
    'docs/findings.md': page('Findings', FINDINGS, findingsOf(words)),
    'docs/topics.md': page('Topics', TOPICS, [topicsOf(words)]),
    'docs/targets.md': page('Targets', TARGETS, targetsOf(words)),
    'docs/method.md': `${WRITTEN}\n\n${methodDoc(words)}`,
    ...guideDocs(WRITTEN),
    'docs/issues.md': page('Issues', ISSUES, issuesOf(words)),
    'src/model/wordParams.ts': wordParams(leaves(words)),
    'src/time/zones.json': zoneRules(),
  };
}

interface Words {
  [key: string]: string | Words;
}

const MEASURES = 'Every number and table of an analysis, in the order in which the report explains them.';
const FURTHER = `## Further published indices

Only with \`--more-indices\`, on the last pages.`;
const FINDINGS = `Every statement about the data, in order of print: safety first. A finding *holds*, is *absent*, or is
*untold* when the data do not allow it to be told; untold findings are printed with the reason. First stands when it holds.
The examples, with one that just holds and one that just does not where there is an edge, are run by the tests. Words are in message format: what stands in braces is filled in.`;
const TOPICS = `What a visit is about: the first row whose statement holds, one topic a visit, a second only beside a very low
glucose. The rows stand in \`templates/topics.json\`, where a clinic may change, leave out or add those that are not locked; a
file in which the locked rows do not stand at the top is refused. "Furthest" rows hold only where time above range (or too
little time in range), or the spread, lies furthest beyond its published goal, in points of a hundred (ours). "Far" ones hold where highs lie 20 points
beyond a goal in 48 hours with readings or more, also where these are too few to judge it (ours). Lows that come with something noted
are a cluster like those at one time of day. Whoever makes the report may choose another among those that hold (\`--topic\` with the name
before the slash): the report then says so, and what the rule gave. The tests run each example.`;
const TARGETS = `Published target sets. A glucose value is compared in the unit its file was in, with the limits
published for that unit. Shares for low and high include the outer level.`;
const ISSUES = `Everything the program may have to say about its input (the registry: \`model/issues.ts\`), with the files that
say it. Words are in message format: what stands in braces is filled in.`;

const WRITTEN = '<!-- Written by `npm run docs`; change the source instead. -->';

const page = (title: string, about: string, sections: string[]): string =>
  `${WRITTEN}\n\n# ${title}\n\n${about}\n\n${sections.join('\n\n')}\n`;

const text = (words: Words, key: string): string => {
  let at: string | Words | undefined = words;
  for (const step of key.split('.')) at = typeof at === 'object' ? at[step] : undefined;
  return typeof at === 'string' ? at : '';
};

const facts = (rows: [string, string][]): string =>
  rows
    .filter(([, value]) => value !== '')
    .map(([name, value]) => `- ${name}: ${value}`)
    .join('\n');

const pairs = (record: object): string =>
  Object.entries(record)
    .map(([name, value]) => `${name} ${value}`)
    .join(', ');

/** As the papers say it. */
const sourceOf = (words: Words, source: string): string =>
  sourceText(speakerOf(words, { unit: 'mg/dL', voice: 'clinic', targets: targetSets.adult }), source);

const measuresOf = (words: Words): string[] =>
  Object.values(measures).map(({ id, source, needs, definition }) =>
    [
      `## ${text(words, `measures.${id}.name`)}`,
      text(words, `measures.${id}.definition`),
      facts([
        ['id', `\`${id}\``],
        ['needs', pairs(needs)],
        ['figures', pairs(definition)],
        ['source', sourceOf(words, source)],
      ]),
    ].join('\n\n'),
  );

const indicesOf = (words: Words): string[] =>
  Object.values(indices).map(({ id, source, unit, definition }) =>
    [
      `### ${text(words, `indices.${id}.name`)}`,
      text(words, `indices.${id}.definition`),
      facts([
        ['id', `\`${id}\``],
        ['unit', unit],
        ['figures', pairs(definition)],
        ['source', sourceOf(words, source)],
      ]),
    ].join('\n\n'),
  );

const quote = (message: string): string => (message === '' ? '' : `\`\`\`text\n${message}\n\`\`\``);

function leaves(words: string | Words | undefined, path = ''): [string, string][] {
  if (words === undefined) return [];
  if (typeof words === 'string') return [[path, words]];
  return Object.entries(words).flatMap(([name, inner]) => leaves(inner, path === '' ? name : `${path}.${name}`));
}

const findingsOf = (words: Words): string[] =>
  findings.map(({ id, source }) => {
    const section = words.findings as Words | undefined;
    const said = leaves(section?.[id]).map(([path, message]) => `*${path}*\n\n${quote(message)}`);
    const rows = examples[id].map(([name, , expected, set]) => `| ${name} | ${expected} | ${set ?? 'adult'} |`);
    return [
      `## ${id}`,
      conditionsOf(id),
      facts([['source', source]]),
      ...said,
      ['| example | expected | targets |', '|---|---|---|', ...rows].join('\n'),
    ].join('\n\n');
  });

/** When it holds, as written above the finding in its file. */
function conditionsOf(id: string): string {
  const file = id.replace(/-(.)/g, (_, letter: string) => letter.toUpperCase());
  const code = readFileSync(new URL(`../findings/${file}.ts`, import.meta.url), 'utf8');
  const [, about] = /\/\*\*((?:(?!\*\/)[\s\S])*)\*\/\nexport const \w+: Finding</.exec(code) ?? [];
  if (about === undefined) throw new Error(`${file}.ts does not say above it when it holds`);
  return about.replace(/\s*\n?\s*\*\s+/g, ' ').trim();
}

const topicsOf = (words: Words): string =>
  [
    '| | topic | only | rule, as printed | source | example |',
    '|---|---|---|---|---|---|',
    ...USUAL_ORDER.map(({ topic, rule, furthest, locked }, i) => {
      const only = [locked ? 'locked' : '', furthest ? `furthest: ${furthest}` : ''].filter((one) => one !== '');
      const { source, example } = ROWS[i]!;
      return `| ${i + 1} | ${topic} | ${only.join(', ')} | ${text(words, `findings.rules.${rule}`)} | ${source} | ${example} |`;
    }),
  ].join('\n');

const targetsOf = (words: Words): string[] =>
  Object.values(targetSets).map((set) => {
    const limits = Object.entries(set.limits).map(
      ([unit, { veryLow, low, high, veryHigh }]) => `| ${unit} | ${veryLow} | ${low} | ${high} | ${veryHigh ?? '–'} |`,
    );
    const goals = set.goals.map(({ of, op, share }) => `${of} ${op} ${Math.round(share * 1000) / 10} %`).join(', ');
    return [
      `## ${text(words, `targets.${set.id}.name`)}`,
      text(words, `targets.${set.id}.note`),
      ['| unit | very low below | low below | high above | very high above |', '|---|---|---|---|---|', ...limits].join(
        '\n',
      ),
      facts([
        ['id', `\`${set.id}\``],
        ['goals', goals === '' ? 'none published as percentages' : goals],
        ['CV spoken of as stable', set.cvLimit === null ? 'not stated' : `≤ ${set.cvLimit} %`],
        ['GMI', set.gmi ? 'shown' : 'not shown'],
        ['source', set.source],
      ]),
    ].join('\n\n');
  });

/** Lists of codes, and types of what goes with one: they name a code and do not say it. */
const NAMING = /new Set\(\[[^\]]*\]\)|Tells<[^>]*>/g;

function issuesOf(words: Words): string[] {
  const src = new URL('../', import.meta.url);
  const files = readdirSync(fileURLToPath(src), { recursive: true, encoding: 'utf8' })
    .filter(
      (path) => path.endsWith('.ts') && /^(readers|timeline|schemas(?!.analysis)|visits|topics|writers)\//.test(path),
    )
    .sort()
    .map((path) => ({ path, content: readFileSync(new URL(path, src), 'utf8').replaceAll(NAMING, '') }));
  const rows = issueCodes(readFileSync(new URL('model/issues.ts', src), 'utf8')).map((code) => {
    // A question whether it is this one does not say it, nor does the kind of a question.
    const says = new RegExp(`(?<!(?:[=|]|kind:|id:|of:) )'${code}'(?! \\|)`);
    const places = files.filter(({ content }) => says.test(content)).map(({ path }) => `\`${path}\``);
    const message = text(words, `issues.${code}`);
    return `| \`${code}\` | ${message.replaceAll('|', '\\|').replaceAll('\n', ' ')} | ${places.join(', ')} |`;
  });
  return [['| code | words | said by |', '|---|---|---|', ...rows.sort()].join('\n')];
}

/** The registry is a type, and gone when the program runs: its names are read from its text. */
export const issueCodes = (registry: string): string[] =>
  [...registry.slice(registry.indexOf('interface IssueTells')).matchAll(/^ {2}'?([a-z][a-z0-9-]*)'?: (?!never)/gm)].map(
    ([, code]) => code!,
  );
