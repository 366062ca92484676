import { realpathSync } from 'node:fs';
import { basename, extname, join, relative } from 'node:path';
import { type Analysis, analyse } from '../analyse.ts';
import { failedIn } from '../clinic/facts.ts';
import { HalfTranslated } from '../compose.ts';
import { namedFor, withNames } from '../papers/alias.ts';
import { makePapers, type PapersWanted } from '../papers/makePapers.ts';
import { stemOf } from '../papers/safeName.ts';
import { accounts } from '../papers/teller.ts';
import { openWorkbooks } from '../readers/containers/workbook.ts';
import { type Door, refuseSettings, tellPeriod, tellSources } from './door.ts';
import { EXIT, reasonOf, WrongUse } from './exits.ts';
import { type Gathered, gather } from './gather.ts';
import { paperTools } from './paperTools.ts';
import type { ReportOptions } from './program.ts';
import { type Output, saveAll } from './save.ts';
import { settle, type Wanted } from './settings.ts';
import { issueLines, reasonText } from './tell.ts';
import { paperWords } from './words.ts';

/** Reads one person's files and writes both papers, the numbers, and what was set aside. Gives the exit code. */
export async function report(files: string[], options: ReportOptions, door: Door): Promise<number> {
  const { tell, print } = door;
  const { out, attach, password, html, further, ...given } = options;
  if (password === '') throw new WrongUse('emptyPassword');
  if (html && password !== undefined) throw new WrongUse('pageNotLocked');
  const found = gather(files);
  const wanted = await settle(given, found.settingsPath, door.today);
  if ('issues' in wanted) return refuseSettings(door, wanted.issues);
  const { inputs, aliases, own, renamed } = namedFor(wanted.settings.person, found.inputs);
  const analysis = analyse(await openWorkbooks(inputs), withNames(wanted.settings, renamed), door.version);
  tellSources(door, found, wanted);
  for (const names of aliases) print(tell.say('cli.told.alias', names));
  if (!analysis.ok) {
    for (const line of issueLines(tell, analysis.issues)) door.complain(own(line));
    door.complain(tell.say('cli.told.refused'));
    return EXIT.refused;
  }
  const { place, paper, grey, large, snapshot, agreed } = wanted;
  const asked = { html: html ?? false, attach: attach ?? false, further: further ?? false };
  const making = { paper, grey, large, snapshot, agreed, password, ...asked };
  const wishes = { ...making, numbers: true, fhir: false, fhirReadings: false };
  const outputs = await papersOf(analysis, nameFor(files, found, wanted), wishes, paperWords(place), door);
  guardInputs(out, outputs, found);
  try {
    saveAll(out, outputs);
  } catch (error) {
    door.complain(
      tell.say('cli.error.cannotWrite', { path: out, reason: { sentence: reasonText(door.tell, reasonOf(error)) } }),
    );
    return EXIT.partly;
  }
  print(accounts(tell, analysis.ledger));
  tellPeriod(door, analysis.timeline);
  for (const line of issueLines(tell, analysis.issues)) print(own(line));
  const failed = failedIn(analysis);
  if (failed.length > 0) door.complain(tell.say('cli.told.failed', { names: failed.join(', ') }));
  print(tell.say('cli.told.written', { folder: out }));
  const longest = Math.max(...outputs.map(({ name }) => name.length));
  for (const { name, what } of outputs)
    print(`  ${name.padEnd(longest)}  ${what === 'fhir' ? what : tell.say(`cli.told.output.${what}`)}`);
  if (password !== undefined) print(tell.say('cli.told.locked'));
  print(tell.say('cli.told.caution'));
  return failed.length > 0 ? EXIT.partly : EXIT.done;
}

/** One person's papers, and the numbers; a language without words for a part of them is a wrong option. */
async function papersOf(analysis: Analysis, stem: string, wanted: PapersWanted, words: unknown, door: Door) {
  const tools = { ...paperTools(door), words, whole: door.words };
  try {
    return await makePapers(analysis, stem, wanted, tools);
  } catch (error) {
    if (!(error instanceof HalfTranslated)) throw error;
    throw new WrongUse('halfTranslated', { language: error.language, missing: error.missing.join(', ') });
  }
}

function nameFor(files: string[], found: Gathered, wanted: Wanted): string {
  const bare = (path: string): string => basename(path, extname(path));
  const cameAs = files.length === 1 ? files[0]! : found.paths[0]!;
  return stemOf(wanted.settings.person.code, bare(cameAs), bare(found.paths[0]!));
}

function guardInputs(out: string, outputs: readonly Output[], found: Gathered): void {
  const real = (path: string): string => {
    try {
      return realpathSync(path);
    } catch {
      return path;
    }
  };
  const inputs = new Set(found.paths.map(real));
  for (const { name } of outputs) {
    const path = join(out, name);
    if (inputs.has(real(path))) throw new WrongUse('overInput', { path: relative('.', path) });
  }
}
