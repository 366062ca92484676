import { relative } from 'node:path';
import { BaseSequencer, type TestSpecification } from 'vitest/node';

/**
 * Files that take longest, in the order in which they begin: a long one that begins last is waited for by all. Those that wait for a
 * queue or for files to come to rest stand apart from each other, so that somebody works meanwhile. Only speed depends on this list.
 */
const FIRST = [
  'cli/clinicQueue',
  'browser/pageEngines',
  'reliability/steering',
  'browser/page',
  'browser/core',
  'cli/clinicSurvives',
  'browser/pageFolder',
  'browser/pages',
  'cli/clinicKept',
  'reliability/package',
  'browser/stories',
  'browser/spanishStories',
  'browser/pageLooks',
  'cli/clinic',
  'cli/clinicHeld',
  'browser/pageFolderLooks',
  'reliability/hostileText',
  'cli/report',
  'browser/pageVisit',
  'browser/pageFolderList',
  'browser/pageDay',
  'browser/pageFonts',
  'cli/pool',
  'reliability/docs',
  'pages/sides',
  'writers/fhir',
  'samples/structure',
  'pages/person',
  'pages/onePlace',
  'shapes/shapes',
  'shapes/faults',
  'language/unmixed',
];

/** Project after project, as the runner has them, and within each the long files first. */
export class LongestFirst extends BaseSequencer {
  override async sort(files: TestSpecification[]): Promise<TestSpecification[]> {
    const sorted = await super.sort(files);
    const projects = [...new Set(sorted.map(({ project }) => project.name))];
    const place = ({ project, moduleId }: TestSpecification): number => {
      const known = FIRST.indexOf(relative(`${this.ctx.config.root}/tests`, moduleId).replace(/\.test\.ts$/, ''));
      return projects.indexOf(project.name) * 1000 + (known < 0 ? FIRST.length : known);
    };
    return sorted.sort((a, b) => place(a) - place(b));
  }
}
