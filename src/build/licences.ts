import { readdirSync, readFileSync } from 'node:fs';
import { join } from 'node:path';

/** Packages that went into a bundle, found by the paths of its inputs; what a plugin made up has a prefix and no file. */
export const packagesOf = (inputs: string[]): string[] =>
  [...new Set(inputs.flatMap((path) => /^[^:]*node_modules\/((?:@[^/]+\/)?[^/]+)/.exec(path)?.[0] ?? []))].sort();

/** Their licences in one text: the licences ask that they travel with the code. Throws when a package has none. */
export function licenceText(home: string, packages: string[]): string {
  return packages
    .map((path) => {
      const folder = join(home, path);
      const { name, version, license } = JSON.parse(readFileSync(join(folder, 'package.json'), 'utf8'));
      const file = readdirSync(folder).find((each) => /^licen[cs]e/i.test(each));
      if (license === undefined && file === undefined) throw new Error(`${name} names no licence.`);
      const text = file === undefined ? '' : `\n\n${readFileSync(join(folder, file), 'utf8').trim()}`;
      return `${name} ${version}${license === undefined ? '' : `: ${license}`}${text}`;
    })
    .join(`\n\n${'-'.repeat(78)}\n\n`)
    .concat('\n');
}
