import { sha256 } from '../../clinic/resume.ts';
import { fonts, version, words } from '../home.ts';
import { setAsideCsv } from '../setAside.ts';
import { teller } from '../tell.ts';
import { type Task, type Turn, type TurnTools, takeTurn } from './turn.ts';

/** What a worker keeps between people: words and faces are read and parsed once in its life. */
const kept = new Map<string, TurnTools>();

function toolsFor(language: string): TurnTools {
  let tools = kept.get(language);
  if (!tools) {
    const spoken = words(language);
    const tell = teller(spoken);
    tools = {
      words: spoken,
      wordsHash: sha256(JSON.stringify(spoken)),
      fonts: fonts(),
      version: version(),
      setAside: ({ issues }) => setAsideCsv(tell, issues),
    };
    kept.set(language, tools);
  }
  return tools;
}

/** What the pool calls: one person's turn. */
export const work = (task: Task): Promise<Turn> => takeTurn(task, toolsFor(task.person.row?.language ?? 'en'));
