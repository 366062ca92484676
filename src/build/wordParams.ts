import { messageParams } from '../language/index.ts';

const ABOUT = `// Written by \`npm run docs\` from templates/words/en.json; change the words instead.

/** What each message asks for, by its key. */
export interface WordParams {`;

const FINDINGS = `/** What all words of one finding ask for together, by its id. */
export interface FindingAsks {`;

/** The type of every message key with the names of its parameters, as a file of the model. */
export function wordParams(leaves: readonly [key: string, text: string][]): string {
  // What stands at the top is about the language: its name, its locale.
  const messages = leaves.filter(([key]) => key.includes('.'));
  const lines = messages.map(([key, text]) => `  '${key}': ${namesIn(text)};`);
  const ofFindings = new Map<string, string[]>();
  for (const [key, text] of messages) {
    const [section, id, part] = key.split('.');
    if (section === 'findings' && part !== undefined && id !== 'rules')
      ofFindings.set(id!, [...(ofFindings.get(id!) ?? []), text]);
  }
  const findings = [...ofFindings].map(([id, texts]) => `  '${id}': ${namesIn(...texts)};`);
  return `${ABOUT}\n${lines.join('\n')}\n}\n\n${FINDINGS}\n${findings.join('\n')}\n}\n`;
}

function namesIn(...texts: string[]): string {
  const names = [...new Set(texts.flatMap((text) => [...messageParams(text, 'en')]))];
  return names.length === 0 ? 'never' : names.map((name) => `'${name}'`).join(' | ');
}
