import { readdirSync, readFileSync } from 'node:fs';
import { join } from 'node:path';

/** Packages that went into a bundle, found by the paths of its inputs; what a plugin made up has a prefix and no file. */
export const packagesOf = (inputs: string[]): string[] =>
  [...new Set(inputs.flatMap((path) => /^[^:]*node_modules\/((?:@[^/]+\/)?[^/]+)/.exec(path)?.[0] ?? []))].sort();

/**
 * Their licences in one text: the licences ask that they travel with the code, and notices beside them. A text that
 * several packages share stands once, under all their names. Throws when a package has none.
 */
export function licenceText(home: string, packages: string[]): string {
  const byText = new Map<string, string[]>();
  for (const path of packages) {
    const folder = join(home, path);
    const { name, version, license } = JSON.parse(readFileSync(join(folder, 'package.json'), 'utf8'));
    const files = readdirSync(folder).filter((each) => /^(licen[cs]e|notice)/i.test(each));
    if (license === undefined && files.length === 0) throw new Error(`${name} names no licence.`);
    const text = files.map((file) => `\n\n${readFileSync(join(folder, file), 'utf8').trim()}`).join('');
    const named = `${name} ${version}${license === undefined ? '' : `: ${license}`}`;
    byText.set(text, [...(byText.get(text) ?? []), named]);
  }
  return [...byText]
    .map(([text, names]) => names.join('\n') + text)
    .join(`\n\n${'-'.repeat(78)}\n\n`)
    .concat('\n');
}
