import type { SavedFile } from '../messages.ts';
import type { State } from '../state/state.ts';

const LAYOUT = 'layout.json';

/** What was answered, as the two files that the command reads and that the page reads when they are dropped again. */
export function answerFiles({ asked, layout }: Pick<State, 'asked' | 'layout'>): SavedFile[] {
  const withLayout = Object.keys(layout).length > 0;
  const settings = withLayout ? { ...asked, layout: LAYOUT } : asked;
  const file = (name: string, content: unknown): SavedFile => ({
    ...{ name, type: 'application/json' },
    bytes: new TextEncoder().encode(`${JSON.stringify(content, null, 2)}\n`),
  });
  return [file('settings.json', settings), ...(withLayout ? [file(LAYOUT, layout)] : [])];
}
