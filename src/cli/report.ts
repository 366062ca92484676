import { realpathSync } from 'node:fs';
import { basename, extname, join, relative } from 'node:path';
import { type Analysis, analyse } from '../analyse.ts';
import { safeName } from '../clinic/safeName.ts';
import { type ComposeOptions, compose, HalfTranslated } from '../compose.ts';
import { sumsOf } from '../measures/earlier.ts';
import type { Report } from '../model/report.ts';
import { openWorkbooks } from '../readers/workbook.ts';
import { analysisJson } from '../writers/json.ts';
import { pageAsText } from '../writers/text.ts';
import { namedFor } from './alias.ts';
import { type Door, tellPeriod, tellSources } from './door.ts';
import { EXIT, WrongUse } from './exits.ts';
import { type Gathered, gather, reasonOf } from './gather.ts';
import { fonts } from './home.ts';
import type { ReportOptions } from './program.ts';
import { type Output, saveAll } from './save.ts';
import { setAsideCsv } from './setAside.ts';
import { settle, type Wanted } from './settings.ts';
import { accounts, issueLines } from './tell.ts';
import { webPages } from './webPage.ts';
import { paperWords } from './words.ts';

interface Made extends Output {
  what: 'clinic' | 'patient' | 'interpretation' | 'clinicPage' | 'patientPage' | 'analysis' | 'setAside' | 'snapshot';
}

/** Reads one person's files and writes both papers, the numbers, and what was set aside. Gives the exit code. */
export async function report(files: string[], options: ReportOptions, door: Door): Promise<number> {
  const { tell, print } = door;
  const { out, attach, password, html, ...given } = options;
  if (password === '') throw new WrongUse('emptyPassword');
  if (html && password !== undefined) throw new WrongUse('pageNotLocked');
  const found = gather(files);
  const wanted = await settle(given, found.settingsPath, door.today);
  if ('issues' in wanted) {
    for (const line of issueLines(tell, wanted.issues)) door.complain(line);
    throw new WrongUse('wrongSettings');
  }
  const { inputs, aliases, own } = namedFor(wanted.settings.person, found.inputs);
  const analysis = analyse(await openWorkbooks(inputs), wanted.settings, door.version);
  tellSources(door, found, wanted);
  for (const names of aliases) print(tell.say('cli.told.alias', names));
  if (!analysis.ok) {
    for (const line of issueLines(tell, analysis.issues)) door.complain(own(line));
    door.complain(tell.say('cli.told.refused'));
    return EXIT.refused;
  }
  const outputs = await make(analysis, wanted, stemOf(files, found, wanted), { attach, password, html }, door);
  guardInputs(out, outputs, found);
  try {
    saveAll(out, outputs);
  } catch (error) {
    door.complain(tell.say('cli.error.cannotWrite', { path: out, reason: reasonOf(error) }));
    return EXIT.partly;
  }
  print(accounts(tell, analysis.ledger));
  tellPeriod(door, analysis.timeline);
  for (const line of issueLines(tell, analysis.issues)) print(own(line));
  const failed = failures(analysis);
  if (failed.length > 0) door.complain(tell.say('cli.told.failed', { names: failed.join(', ') }));
  print(tell.say('cli.told.written', { folder: out }));
  const longest = Math.max(...outputs.map(({ name }) => name.length));
  for (const { name, what } of outputs) print(`  ${name.padEnd(longest)}  ${tell.say(`cli.told.output.${what}`)}`);
  if (password !== undefined) print(tell.say('cli.told.locked'));
  print(tell.say('cli.told.caution'));
  return failed.length > 0 ? EXIT.partly : EXIT.done;
}

async function make(
  analysis: Analysis,
  wanted: Wanted,
  stem: string,
  { attach, password, html }: { [P in 'attach' | 'password' | 'html']: ReportOptions[P] | undefined },
  door: Door,
): Promise<Made[]> {
  const { writePdf } = await import('../writers/pdf/index.ts');
  const spoken = paperWords(wanted.place);
  const webPage = html ? await webPages({ ...door, words: spoken }, wanted.grey) : null;
  // Read once: the writer knows a face it has parsed by its bytes.
  const faces = fonts();
  const made: Made[] = [];
  const numbers = { name: `${stem}-analysis.json`, bytes: analysisJson(analysis) };
  const attachment = attach && {
    name: numbers.name,
    bytes: Buffer.from(numbers.bytes),
    type: 'application/json',
    description: door.tell.say('cli.told.output.analysis'),
  };
  for (const voice of ['clinic', 'patient'] as const) {
    const paper = told(analysis, spoken, { voice, paper: wanted.paper, large: wanted.large, whole: door.words });
    const bytes = await writePdf(paper, faces, {
      version: door.version,
      grey: wanted.grey,
      password,
      // The paper for the person stays as light as a paper.
      ...(attachment && voice === 'clinic' ? { attachment } : {}),
    });
    const name = `${stem}-${voice === 'clinic' ? 'clinic-report' : 'patient-paper'}`;
    made.push({ name: `${name}.pdf`, bytes, what: voice });
    if (webPage) made.push({ name: `${name}.html`, bytes: webPage(paper), what: `${voice}Page` });
    // Plain text cannot be locked.
    if (voice === 'clinic' && password === undefined) {
      made.push({
        name: `${stem}-interpretation.txt`,
        bytes: pageAsText(paper, 'interpretation'),
        what: 'interpretation',
      });
    }
  }
  made.push({ ...numbers, what: 'analysis' });
  if (wanted.snapshot) made.push(await snapshotOf(analysis, stem));
  if (analysis.ledger.setAside > 0) {
    made.push({ name: `${stem}-set-aside.csv`, bytes: setAsideCsv(door.tell, analysis), what: 'setAside' });
  }
  return made;
}

/** Named by the last day it holds, so that a later visit never writes over an earlier one. */
async function snapshotOf({ timeline, targets, version, hash, settings }: Analysis, stem: string): Promise<Made> {
  const { snapshotText } = await import('../schemas/snapshot.ts');
  const bytes = snapshotText(sumsOf(timeline, targets), { by: version, hash, on: settings.today });
  return { name: `${stem}-snapshot-${timeline.to}.json`, bytes, what: 'snapshot' };
}

function told(analysis: Analysis, words: unknown, options: ComposeOptions): Report {
  try {
    return compose(analysis, words, options);
  } catch (error) {
    if (!(error instanceof HalfTranslated)) throw error;
    throw new WrongUse('halfTranslated', { language: error.language, missing: error.missing.join(', ') });
  }
}

/** The code, else the name of the one folder or the first file. Never the person's name: file names travel. */
function stemOf(files: string[], found: Gathered, wanted: Wanted): string {
  const { code } = wanted.settings.person;
  if (code !== undefined) return safeName(code);
  const first = files.length === 1 ? files[0]! : found.paths[0]!;
  return safeName(basename(first, extname(first)) || basename(found.paths[0]!, extname(found.paths[0]!)));
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

function failures({ measures, found }: Analysis): string[] {
  return [
    ...Object.entries(measures)
      .filter(([, measured]) => !measured.ok && measured.why === 'failed')
      .map(([id]) => id),
    ...found.filter(({ look }) => look.case === 'untold' && look.why === 'failed').map(({ id }) => id),
  ];
}
