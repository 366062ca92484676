import { intake } from '../analyse.ts';
import type { Choice } from '../model/input.ts';
import { accounts, printableJson, type Teller } from '../papers/teller.ts';
import { choiceRows } from '../papers/understood.ts';
import { openWorkbooks } from '../readers/containers/workbook.ts';
import { columnLines } from './columnLines.ts';
import { type Door, refuseSettings, tellPeriod, tellSources } from './door.ts';
import { EXIT } from './exits.ts';
import { gather } from './gather.ts';
import type { ReadOptions } from './program.ts';
import { settle } from './settings.ts';
import { issueLines } from './tell.ts';

/** Shows how each file was understood, and writes nothing. Gives the exit code. */
export async function read(files: string[], { json, ...given }: ReadOptions, door: Door): Promise<number> {
  const { tell, print } = door;
  const found = gather(files);
  const wanted = await settle(given, found.settingsPath, door.today);
  if ('issues' in wanted) return refuseSettings(door, wanted.issues);
  const taken = intake(await openWorkbooks(found.inputs), wanted.settings);
  const exit = taken.ok ? EXIT.done : EXIT.refused;
  if (json) {
    const { ok, files: fileFacts, ledger, outside, issues, setAside } = taken;
    print(printableJson(JSON.stringify({ ok, files: fileFacts, ledger, outside, issues, setAside }, null, 2)));
    return exit;
  }
  tellSources(door, found, wanted);
  for (const file of taken.files) {
    print('');
    print(tell.say('cli.told.understood', { file: file.name }));
    for (const line of choiceLines(tell, file.kind, file.choices)) print(`  ${line}`);
    if (file.columns && file.columns.length > 0) {
      print(`  ${tell.say('cli.told.columns.head')}:`);
      for (const line of columnLines(tell, file.columns)) print(`    ${line}`);
    }
    print(`  ${accounts(tell, file.ledger)}`);
    if (file.persons.length > 0) print(`  ${tell.say('cli.told.persons', { names: file.persons.join(', ') })}`);
    const options = optionsOf(file.choices);
    if (options !== '') print(`  ${tell.say('cli.told.options')}:\n    ${options}`);
    if (file.layout !== undefined) {
      print(`  ${tell.say('cli.told.layout')}:`);
      print(printableJson(JSON.stringify(file.layout)).replace(/^/gm, '    '));
    }
  }
  print('');
  if (taken.files.length > 1) print(tell.say('cli.told.allRows', { accounts: accounts(tell, taken.ledger) }));
  if (taken.ok) tellPeriod(door, taken.timeline);
  const lines = issueLines(tell, taken.issues, Number.POSITIVE_INFINITY);
  print(lines.length > 0 ? `${tell.say('cli.told.problems')}:` : tell.say('cli.told.noProblems'));
  for (const line of lines) print(`  ${line}`);
  return exit;
}

function choiceLines(tell: Teller, kind: string, choices: readonly Choice[]): string[] {
  const table = [[tell.say('cli.told.kind'), kind, ''], ...choiceRows(tell, choices)];
  const widths = [0, 1].map((column) => Math.min(40, Math.max(...table.map((row) => row[column]!.length))));
  return table.map(([what, value, who]) =>
    `${what!.padEnd(widths[0]!)}  ${value!.padEnd(widths[1]!)}  ${who}`.trimEnd(),
  );
}

/** Choices that have an option of their own; the layout carries the rest. */
const OPTION: Partial<Record<Choice['id'], string>> = { unit: '--unit', 'date-order': '--date-order', zone: '--zone' };

const optionsOf = (choices: readonly Choice[]): string =>
  choices
    .flatMap((choice) =>
      choice.id in OPTION && choice.value !== 'both' ? [{ id: choice.id, value: String(choice.value) }] : [],
    )
    // An option speaks of a whole file: none fits tables that differ, and once says it for tables that agree.
    .filter(({ id, value }, i, options) => {
      const alike = options.filter((other) => other.id === id);
      return alike.every((other) => other.value === value) && options.indexOf(alike[0]!) === i;
    })
    .map(({ id, value }) => `${OPTION[id]} ${/[^\w/.-]/.test(value) ? JSON.stringify(value) : value}`)
    .join(' ');
