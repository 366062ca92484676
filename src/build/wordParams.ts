import { messageParams } from '../language/index.ts';

const ABOUT = `// Written by \`npm run docs\` from templates/words/en.json; change the words instead.

/** What each message asks for, by its key. */
export interface WordParams {`;

/** The type of every message key with the names of its parameters, as a file of the model. */
export function wordParams(leaves: readonly [key: string, text: string][]): string {
  // What stands at the top is about the language: its name, its locale.
  const messages = leaves.filter(([key]) => key.includes('.'));
  const lines = messages.map(([key, text]) => `  '${key}': ${namesIn(text)};`);
  return `${ABOUT}\n${lines.join('\n')}\n}\n`;
}

function namesIn(text: string): string {
  const names = [...messageParams(text, 'en')];
  return names.length === 0 ? 'never' : names.map((name) => `'${name}'`).join(' | ');
}
