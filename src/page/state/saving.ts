import type { Wanting } from '../messages.ts';
import { answerFiles } from '../save/answers.ts';
import { chooseDirectory, writeAllInto } from '../save/directory.ts';
import { saveAll } from '../save/save.ts';
import { say } from '../say.ts';
import type { Screen } from './screen.ts';
import type { State } from './state.ts';
import type { Worker } from './worker.ts';

export type Into = 'each' | 'zip' | 'folder';

interface Around {
  begun(): Worker;
  /** To be called once a file holds what is typed now. */
  saving(): () => void;
  fail(error: unknown): void;
}

/** Hands out what was made of one person: by the browser, or into a folder that somebody chooses, where nothing is written over. */
export function openSaving(state: State, screen: Screen, { begun, saving, fail }: Around) {
  return {
    async save(what: Wanting['what'], into: Into): Promise<void> {
      const held = saving();
      const directory = into === 'folder' ? await chooseDirectory() : null;
      if (directory === undefined) return;
      let files: Awaited<ReturnType<typeof make>>;
      const make = () => begun().ask('make', { what, zip: into === 'zip', fhirReadings: false, typed: state.typed });
      try {
        files = await make();
        if (directory === null) await saveAll(files);
      } catch (error) {
        return fail(error);
      }
      if (directory !== null) {
        try {
          const clash = await writeAllInto(directory, files);
          const names = (clash.length > 0 ? clash : files.map(({ name }) => name)).join(', ');
          screen.saved(say(clash.length > 0 ? 'save.clash' : 'save.saved', { names }));
          if (clash.length > 0) return;
        } catch (error) {
          return screen.saved(say('save.unsaved', { reason: error instanceof Error ? error.message : String(error) }));
        }
      }
      if (what.includes('visit')) held();
    },
    saveAnswers: (): void => void saveAll(answerFiles(state)).then(saving()),
  };
}
