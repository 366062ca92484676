import { teller } from '../papers/teller.ts';
import { joinChanged } from './compareWith.ts';
import type { Door } from './door.ts';
import { EXIT, reasonOf, WrongUse } from './exits.ts';
import { version, words } from './home.ts';
import { ownHash } from './ownHash.ts';
import { program } from './program.ts';
import { read } from './read.ts';
import { report } from './report.ts';
import { reasonText, wrongUse } from './tell.ts';

ownHash();
const language = words('en');
const tell = teller(language);

/** The day on the wall of whoever runs the command: the one place where the program asks what day it is. */
function localToday(): string {
  const now = new Date();
  const two = (n: number): string => String(n).padStart(2, '0');
  return `${now.getFullYear()}-${two(now.getMonth() + 1)}-${two(now.getDate())}`;
}

function localTime(): string {
  const now = new Date();
  const two = (n: number): string => String(n).padStart(2, '0');
  return `${two(now.getHours())}:${two(now.getMinutes())}`;
}

const door: Door = {
  tell,
  words: language,
  today: localToday(),
  day: localToday,
  time: localTime,
  version,
  print: (line) => console.log(line),
  complain: (line) => console.error(line),
};

async function main(): Promise<number> {
  let exit: number = EXIT.done;
  // A report is made of what one person needs: the other commands load what is theirs when they are called.
  const command = program(version, tell, {
    report: async (files, options) => {
      exit = await report(files, options, door);
    },
    read: async (files, options) => {
      exit = await read(files, options, door);
    },
    agreed: async (options) => {
      const { agreedForm } = await import('./agreed.ts');
      exit = await agreedForm(options, door);
    },
    page: async (options) => {
      const { page } = await import('./page.ts');
      exit = await page(options, door);
    },
    clinic: async (folder, options) => {
      const { clinic } = await import('./clinic/command.ts');
      exit = await clinic(folder, options, door);
    },
    worklist: async (folders, options) => {
      const { worklist } = await import('./clinic/merge.ts');
      exit = await worklist(folders, options, door);
    },
    worker: async (options) => {
      const { worker } = await import('./clinic/worker.ts');
      exit = await worker(options, door);
    },
  });
  try {
    if (process.argv.length <= 2) command.help();
    await command.parseAsync(joinChanged(process.argv));
    return exit;
  } catch (error) {
    if (error instanceof WrongUse) {
      console.error(wrongUse(tell, error));
      console.error(tell.say('cli.error.seeHelp', { command: 'daybands' }));
      return EXIT.usage;
    }
    // The argument parser has already said what was wrong, or shown the help that was asked for.
    const { code, exitCode } = error as { code?: string; exitCode?: number };
    if (code?.startsWith('commander.')) return exitCode === 0 ? EXIT.done : EXIT.usage;
    console.error(tell.say('cli.error.unexpected', { reason: { sentence: reasonText(tell, reasonOf(error)) } }));
    if (process.env.DAYBANDS_TRACE) console.error(error);
    return EXIT.partly;
  }
}

// Whoever reads along may leave early (a pipe into head); the work is done all the same.
for (const stream of [process.stdout, process.stderr]) {
  stream.on('error', (error: NodeJS.ErrnoException) => {
    if (error.code !== 'EPIPE') throw error;
  });
}

void main().then((exit) => {
  process.exitCode = exit;
});
