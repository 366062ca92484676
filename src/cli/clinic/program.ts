import { type Command, Option } from 'commander';
import type { Below } from '../../model/words.ts';
import { WrongUse } from '../exits.ts';
import type { ClinicOptions } from './asked.ts';
import type { WorklistOptions } from './merge.ts';
import type { WorkerOptions } from './worker.ts';

export interface ClinicActions {
  clinic(folder: string | undefined, options: ClinicOptions): Promise<void>;
  worklist(folders: string[], options: WorklistOptions): Promise<void>;
  worker(options: WorkerOptions): Promise<void>;
}

export type ClinicCommand = 'clinic' | 'worklist' | 'worker';

/** What the command line already has: help texts, commands without arguments, options with the checks of others. */
export interface Kit {
  help(name: Below<'cli.help'>): string;
  bare(name: ClinicCommand): Command;
  /** Options on how a paper is printed. */
  forPaper(command: Command): Command;
  /** Those, and on how exports are read and what is made of them. */
  forPapers(command: Command): Command;
  examples(command: Command, key: Below<'cli.help.examples'>): Command;
}

/** A long year of readings every minute is read and printed in under ten seconds on a slow machine. */
const SECONDS = 120;
/** Enough for ten years of readings; an ordinary fortnight takes a tenth. */
const MEGABYTES = 1024;

/** For which a queue's server may be away: one that is begun again, or replaced, answers sooner (ours). */
const QUEUE_WAIT = 120;

/** The commands for many people. */
export function clinicCommands(kit: Kit, actions: ClinicActions): Command[] {
  const { help, bare, forPaper, forPapers, examples } = kit;
  const whole = (flag: string, value: string, name: Below<'cli.help'>, from: number, to: number): Option =>
    new Option(`${flag} ${value}`, help(name)).argParser((text) => {
      const number = Number(text);
      if (!Number.isInteger(number) || number < from || number > to) {
        throw new WrongUse('wrongNumber', { option: flag, value: text, from: String(from), to: String(to) });
      }
      return number;
    });
  const timeLimit = () => whole('--time-limit', '<seconds>', 'timeLimit', 1, 86_400).default(SECONDS);
  const memory = () => whole('--memory', '<MB>', 'memory', 16, 65_536).default(MEGABYTES);
  const queueWait = () => whole('--queue-wait', '<seconds>', 'queueWait', 1, 86_400).default(QUEUE_WAIT);
  const thresholds = () => new Option('--thresholds <file>', help('thresholds'));
  const byVisit = () => new Option('--by-visit', help('byVisit'));
  const places = () => whole('--places', '<n>', 'places', 1, 100_000);

  const clinic = examples(forPapers(bare('clinic').argument('[folder]', help('folder'))), 'clinic')
    .addOption(new Option('--out <folder>', help('outClinic')))
    .addOption(new Option('--numbers', help('numbers')))
    .addOption(new Option('--fhir', help('fhir')))
    .addOption(new Option('--fhir-readings', help('fhirReadings')))
    .addOption(new Option('--fhir-system <address>', help('fhirSystem')))
    .addOption(thresholds())
    .addOption(byVisit())
    .addOption(places())
    .addOption(new Option('--since <results>', help('since')))
    .addOption(new Option('--dry-run', help('dryRun')))
    .addOption(new Option('--write-manifest', help('writeManifest')))
    .addOption(new Option('--keep-ready', help('keepReady')))
    .addOption(whole('--settle', '<seconds>', 'settle', 1, 3600))
    .addOption(whole('--threads', '<n>', 'threads', 1, 256))
    .addOption(new Option('--shard <i/n>', help('shard')))
    .addOption(timeLimit())
    .addOption(memory())
    .addOption(new Option('--queue <address>', help('queue')))
    .addOption(queueWait())
    .action(actions.clinic);
  const worklist = forPaper(bare('worklist').argument('<results...>', help('results')))
    .addOption(new Option('--out <folder>', help('outList')))
    .addOption(thresholds())
    .addOption(byVisit())
    .addOption(places())
    .action(actions.worklist);
  const worker = bare('worker')
    .addOption(new Option('--queue <address>', help('queue')).makeOptionMandatory())
    .addOption(queueWait())
    .addOption(whole('--concurrency', '<n>', 'concurrency', 1, 256))
    .addOption(timeLimit())
    .addOption(memory())
    .addOption(new Option('--once', help('once')))
    .action(actions.worker);
  return [clinic, worklist, worker];
}
