import { keptBytes } from '../kept.ts';
import { say } from '../say.ts';
import type { Picked } from './dropped.ts';

/** The fortnight that nobody lived, as files that somebody chose. */
export function invented(): Picked[] {
  const folder = say('example.folder');
  return ['readings', 'logbook'].map((name) => ({
    path: `${folder}/${name}.csv.gz`,
    file: new File([keptBytes(`example-${name}`)], `${name}.csv.gz`),
  }));
}
