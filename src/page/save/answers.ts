import type { SavedFile } from '../messages.ts';
import type { State } from '../state/state.ts';

const LAYOUT = 'layout.json';
const AGREED = 'agreed.json';

/** What was answered and typed, as the files that the command reads and that the page reads when they are dropped again. */
export function answerFiles({ asked, layout, typed }: Pick<State, 'asked' | 'layout' | 'typed'>): SavedFile[] {
  const has = (content: object): boolean => Object.keys(content).length > 0;
  const settings = { ...asked, ...(has(layout) ? { layout: LAYOUT } : {}), ...(has(typed) ? { agreed: AGREED } : {}) };
  const file = (name: string, content: unknown): SavedFile => ({
    ...{ name, type: 'application/json' },
    bytes: new TextEncoder().encode(`${JSON.stringify(content, null, 2)}\n`),
  });
  return [
    file('settings.json', settings),
    ...(has(layout) ? [file(LAYOUT, layout)] : []),
    ...(has(typed) ? [file(AGREED, typed)] : []),
  ];
}
