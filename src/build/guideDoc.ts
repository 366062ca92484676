import { readFileSync } from 'node:fs';
import { GUIDES, type Guide } from '../page/guide.ts';

/** Pictures of docs/looks for a part of a guide, each named by words of the page that say what it shows. */
const PICTURES: Record<Guide, Record<string, readonly (readonly [file: string, named: string])[]>> = {
  patient: {
    answer: [['screen-asks-1280', 'ask.title']],
    sheet: [
      ['patient-colour', 'sheets.patient'],
      ['patient-second', 'sheets.patient'],
    ],
    save: [['screen-papers-360', 'told.title']],
  },
  clinic: {
    answer: [['screen-asks-1280', 'ask.title']],
    read: [['clinic-colour', 'sheets.clinic']],
    save: [['screen-papers-1280', 'told.title']],
    many: [['screen-folder-1280', 'folder.title']],
  },
};

interface Texts {
  [name: string]: string | Texts;
}

/** Both guides in each language as pages of docs/, by path; `first` is their first line. */
export function guideDocs(first: string): Record<string, string> {
  const pages = (['en', 'es'] as const).flatMap((language) => {
    const file = new URL(`../../templates/words/${language}.json`, import.meta.url);
    const words: unknown = JSON.parse(readFileSync(file, 'utf8'));
    const end = language === 'en' ? '' : `-${language}`;
    return [
      [`docs/guide-person${end}.md`, guideDoc(words, 'patient')],
      [`docs/guide-educator${end}.md`, guideDoc(words, 'clinic')],
    ] as const;
  });
  return Object.fromEntries(pages.map(([path, text]) => [path, `${first}\n\n${text}`]));
}

/** A guide in Markdown: the same words that the page shows, with pictures of whole papers and screens. */
function guideDoc(words: unknown, guide: Guide): string {
  const { screen, cautions } = words as { screen: Texts; cautions: Record<string, string> };
  const screenWord = (key: string): string =>
    String(key.split('.').reduce<string | Texts>((at, step) => (at as Texts)[step]!, screen));
  const parts = GUIDES[guide].flatMap(({ name, cautions: ids = [], not }) => [
    `## ${screenWord(`guide.${guide}.${name}.title`)}`,
    screenWord(`guide.${guide}.${name}.text`),
    ...(PICTURES[guide][name] ?? []).map(([file, named]) => `![${screenWord(named)}](looks/${file}.png)`),
    ...(not ? [screenWord('foot.not')] : []),
    ...(ids.length > 0 ? [ids.map((id) => `- ${cautions[id]!}`).join('\n')] : []),
  ]);
  const all = [
    `# ${screenWord(`guide.${guide}.name`)}`,
    screenWord(`guide.${guide}.lead`),
    ...parts,
    screenWord('guide.invented'),
  ];
  return `${all.join('\n\n')}\n`;
}
