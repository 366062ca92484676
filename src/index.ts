/** Analyse the inputs, compose a paper from the analysis, write the numbers as data. PDF and web pages are the command's. */
export { type Analysis, analyse, type FileAccount, type Refusal } from './analyse.ts';
export { type ComposeOptions, compose } from './compose.ts';
export type { Input, Issue, Ledger } from './model/input.ts';
export type { Measures } from './model/measures.ts';
export type { Report } from './model/report.ts';
export type { PeriodChoice, Settings } from './model/settings.ts';
export type { Timeline } from './model/timeline.ts';
export { openWorkbooks } from './readers/containers/workbook.ts';
export { csvText } from './writers/csv.ts';
export { analysisJson } from './writers/json.ts';
