import * as z from 'zod';
import { analysis } from './analysis/index.ts';
import './jitless.ts';
import { layout } from './layout.ts';
import { manifestRow } from './manifestRow.ts';
import { folderSettings } from './settings.ts';
import { thresholds } from './thresholds.ts';
import { VISIT_VERSION, visit } from './visit.ts';

/** Each file that others read or write, with the number of its form, and what it is in a sentence. */
const FILES = {
  analysis: [analysis, 3, 'The numbers of one report. Shares 0 to 1, glucose in mg/dL unless its name says otherwise.'],
  visit: [visit, VISIT_VERSION, 'What one visit leaves for the next: sums of days, and what was agreed.'],
  settings: [folderSettings, 1, 'The file settings.json beside the inputs.'],
  layout: [layout(), 1, 'What the columns of a file mean.'],
  thresholds: [thresholds, 1, 'When a person is put into a group of the worklist.'],
  manifest: [manifestRow, 1, 'One row of a manifest, column by column as text.'],
} as const satisfies Record<string, readonly [z.ZodType, number, string]>;

/** JSON Schemas (draft 2020-12) by the name of their file, made of the shapes that the program itself checks with. */
export function published(): Record<string, object> {
  return Object.fromEntries(
    Object.entries(FILES).map(([name, [shape, form, description]]) => [
      `${name}.schema.json`,
      {
        $id: `urn:daybands:schema:${name}:${form}`,
        title: name,
        description,
        ...z.toJSONSchema(shape, { io: 'output', unrepresentable: 'any' }),
      },
    ]),
  );
}
