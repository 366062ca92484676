import * as z from 'zod';
import type { Issue } from '../model/input.ts';
import { type FolderSettings, folderSettings, readWith } from './settings.ts';
import './jitless.ts';

/** What the settings at the top of a clinic's folder may say of the run itself, besides what holds for everyone. */
export interface RunSettings {
  /** Paths from the folder of the settings file. */
  out?: string | undefined;
  since?: string | undefined;
  thresholds?: string | undefined;
  places?: number | undefined;
  byVisit?: boolean | undefined;
  further?: boolean | undefined;
  html?: boolean | undefined;
  numbers?: boolean | undefined;
  attach?: boolean | undefined;
  fhir?: boolean | undefined;
  fhirReadings?: boolean | undefined;
  threads?: number | undefined;
}

const path = z.string().min(1).max(400);
const flag = z.boolean().optional();

const runSettings = {
  out: path.optional(),
  since: path.optional(),
  thresholds: path.optional(),
  places: z.int().min(1).max(100_000).optional(),
  byVisit: flag,
  further: flag,
  html: flag,
  numbers: flag,
  attach: flag,
  fhir: flag,
  fhirReadings: flag,
  threads: z.int().min(1).max(256).optional(),
};
const whole = folderSettings.extend(runSettings) satisfies z.ZodType<FolderSettings & RunSettings>;

export interface ClinicSettings {
  everyone: FolderSettings;
  run: RunSettings;
}

/** Reads the settings at the top of a clinic's folder. */
export function readClinicSettings(text: string, file: string): ClinicSettings | { issues: Issue[] } {
  const read = readWith(whole, text, file);
  if ('issues' in read) return read;
  const split = (own: boolean) =>
    Object.fromEntries(Object.entries(read.settings).filter(([name]) => Object.hasOwn(runSettings, name) === own));
  return { everyone: split(false), run: split(true) };
}
