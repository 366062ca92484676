import { Command, Option } from 'commander';
import { LANGUAGES } from '../language/index.ts';
import type { Below } from '../model/words.ts';
import type { Teller } from '../papers/teller.ts';
import { glucoseUnit } from '../readers/glucose/unit.ts';
import type { FolderSettings } from '../schemas/settings.ts';
import { targetSets } from '../targets/index.ts';
import { isLocalDate } from '../time/calendar.ts';
import { type ClinicActions, type ClinicCommand, clinicCommands } from './clinic/program.ts';
import { WrongUse } from './exits.ts';
import type { PageOptions } from './page.ts';

export interface ReportOptions extends FolderSettings {
  out: string;
  /** Puts the numbers into the clinic report as a file within the file. */
  attach?: boolean;
  /** Also makes all that a visit does not need, and how each number is made. */
  further?: boolean;
  /** Also writes the papers as web pages. */
  html?: boolean;
  /** Locks both papers. */
  password?: string;
}
export interface ReadOptions extends FolderSettings {
  json?: boolean;
}

export interface Actions extends ClinicActions {
  report(files: string[], options: ReportOptions): Promise<void>;
  read(files: string[], options: ReadOptions): Promise<void>;
  agreed(options: Pick<FolderSettings, 'language' | 'region'>): Promise<void>;
  page(options: PageOptions): Promise<void>;
}

type Help = Below<'cli.help'>;

/** The command line: names, help and the shape of each option. What they do is the actions' business. */
export function program(version: string, tell: Teller, actions: Actions): Command {
  const help = (key: Help): string => tell.plain(`cli.help.${key}`);
  const option = (flag: string, value: string, name: Help, check?: (flag: string) => (text: string) => unknown) => {
    const built = new Option(`${flag} ${value}`, help(name));
    return check ? built.argParser(check(flag)) : built;
  };

  const bare = (name: 'report' | 'read' | 'agreed' | 'page' | ClinicCommand): Command =>
    new Command(name)
      .summary(help(name))
      .description(help(name))
      .helpOption('-h, --help', help('help'))
      .exitOverride()
      .configureHelp({ helpWidth: 100 });
  const forReading = (command: Command): Command =>
    command
      .addOption(option('--unit', '<unit>', 'unit', unit))
      .addOption(option('--date-order', '<order>', 'dateOrder', choice('day-first', 'month-first', 'year-first')))
      .addOption(option('--zone', '<zone>', 'zone'))
      .addOption(option('--layout', '<file>', 'layout'))
      .addOption(option('--days', '<n>', 'days', wholeDays))
      .addOption(option('--from', '<date>', 'from', calendarDate))
      .addOption(option('--to', '<date>', 'to', calendarDate));

  const forPaper = (command: Command): Command =>
    command
      .addOption(option('--paper', '<size>', 'paper', choice('a4', 'letter')))
      .addOption(new Option('--grey', help('grey')))
      .addOption(option('--clinic', '<text>', 'clinicName'));
  const forPapers = (command: Command): Command =>
    forPaper(forReading(command))
      .addOption(option('--language', '<code>', 'language', choice(...LANGUAGES)))
      .addOption(option('--region', '<code>', 'region'))
      .addOption(option('--phone', '<number>', 'phone'))
      .addOption(option('--targets', '<set>', 'targets', choice(...Object.keys(targetSets))))
      .addOption(new Option('--large', help('large')))
      .addOption(option('--date', '<date>', 'date', calendarDate))
      .addOption(option('--compare', '<with>', 'compare').argParser(collect))
      .addOption(new Option('--infer-meals', help('inferMeals')))
      .addOption(new Option('--more-indices', help('moreIndices')))
      .addOption(new Option('--further', help('further')))
      .addOption(new Option('--html', help('html')))
      .addOption(new Option('--attach', help('attach')));
  const examples = (command: Command, key: Below<'cli.help.examples'>): Command =>
    command.addHelpText('after', section(tell, `examples.${key}`));

  const report = examples(forPapers(bare('report').argument('<files...>', help('files'))), 'report')
    .addOption(option('--out', '<folder>', 'out').default('reports'))
    .addOption(option('--name', '<text>', 'name'))
    .addOption(option('--code', '<text>', 'code'))
    .addOption(option('--changed', '<date and text>', 'changed'))
    .addOption(new Option('--snapshot', help('snapshot')))
    .addOption(option('--agreed', '<file>', 'agreed'))
    .addOption(option('--topic', '<name>', 'topic'))
    .addOption(option('--a1c', '<value>', 'a1c'))
    .addOption(option('--due-date', '<date>', 'dueDate', calendarDate))
    .addOption(option('--pregnancy-goals', '<goals>', 'pregnancyGoals'))
    .addOption(option('--accept-losses', '<file>', 'acceptLosses').argParser(collect))
    .addOption(option('--password', '<text>', 'password'))
    .action(actions.report);

  const read = examples(forReading(bare('read').argument('<files...>', help('files'))), 'read')
    .addOption(new Option('--json', help('json')))
    .addOption(option('--accept-losses', '<file>', 'acceptLosses').argParser(collect))
    .action(actions.read);

  const agreed = bare('agreed')
    .addOption(option('--language', '<code>', 'language', choice(...LANGUAGES)))
    .addOption(option('--region', '<code>', 'region'))
    .action(actions.agreed);

  const page = examples(forPaper(bare('page')), 'page')
    .addOption(option('--out', '<file>', 'outPage').default('for-our-patients.html'))
    .addOption(option('--language', '<code>', 'language', choice(...LANGUAGES)))
    .addOption(option('--region', '<code>', 'region'))
    .addOption(option('--phone', '<number>', 'phone'))
    .addOption(option('--targets', '<set>', 'targets', choice(...Object.keys(targetSets))))
    .addOption(new Option('--large', help('large')))
    .addOption(option('--unit', '<unit>', 'unit', unit))
    .addOption(option('--date-order', '<order>', 'dateOrder', choice('day-first', 'month-first', 'year-first')))
    .addOption(option('--zone', '<zone>', 'zone'))
    .addOption(option('--days', '<n>', 'days', wholeDays))
    .addOption(option('--pregnancy-goals', '<goals>', 'pregnancyGoals'))
    .addOption(option('--thresholds', '<file>', 'thresholds'))
    .action(actions.page);

  const whole = new Command('daybands')
    .description(help('about'))
    .version(version, '-V, --version', help('version'))
    .helpOption('-h, --help', help('help'))
    .helpCommand(false)
    .exitOverride()
    .configureHelp({ helpWidth: 100 })
    .addHelpText('after', `${section(tell, 'examples.all')}\n${help('settings')}\n\n${exits(tell)}`)
    .addCommand(report)
    .addCommand(read)
    .addCommand(agreed)
    .addCommand(page);
  for (const command of clinicCommands({ help, bare, forPaper, forPapers, examples }, actions))
    whole.addCommand(command);
  return whole;
}

const indent = (text: string): string => text.replace(/^(?=.)/gm, '  ');
const section = (tell: Teller, key: Help): string =>
  `\n${tell.plain('cli.help.examplesTitle')}:\n${indent(tell.plain(`cli.help.${key}`))}\n`;
const exits = (tell: Teller): string =>
  `${tell.plain('cli.help.exitsTitle')}:\n${indent(tell.plain('cli.help.exits'))}`;

const choice =
  (...allowed: string[]) =>
  (option: string) =>
  (value: string): string => {
    if (!allowed.includes(value)) throw new WrongUse('wrongValue', { option, value, expected: allowed.join(', ') });
    return value;
  };

/** Either unit as people write it: `mgdl`, `MMOL/L`. */
const unit =
  (option: string) =>
  (value: string): string => {
    const meant = glucoseUnit(value) ?? glucoseUnit(value.replace(/^(mg|mmol)\W*(dl|l)$/i, '$1/$2'));
    return choice('mg/dL', 'mmol/L')(option)(meant ?? value);
  };

/** Given once for each file. */
const collect = (value: string, before: string[] = []): string[] => [...before, value];

const calendarDate =
  (option: string) =>
  (value: string): string => {
    if (!isLocalDate(value)) throw new WrongUse('wrongDate', { option, value });
    return value;
  };

const wholeDays =
  (option: string) =>
  (value: string): number => {
    const days = Number(value);
    if (!Number.isInteger(days) || days < 1 || days > 366) throw new WrongUse('wrongDays', { option, value });
    return days;
  };
