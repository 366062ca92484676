import { isResultName } from './resultNames.ts';

// Which of the files that lie together are exports, by their names alone: the same for a folder of a disk and for files
// that are dropped on a page.

export const SETTINGS = 'settings.json';
const EXPORTS = /\.(csv|tsv|tab|txt|xlsx|xls|ods|json|ndjson|jsonl|zip|gz)$/i;
/** Beside a workbook that is open, an office program keeps such a file under nearly its name. */
const LEFT_BEHIND = /^(~\$|\.~lock\.)/;
const LAYOUT = /layout\.json$/;
/** What was agreed, as the page saves it beside the settings that name it. */
export const AGREED = /^agreed\.(json|txt)$/;
export const isExport = (name: string): boolean => EXPORTS.test(name) && !LEFT_BEHIND.test(name);
/** What may lie among the exports under such a name and is none: our own results, a layout, a text about the folder. */
export const isNoExport = (name: string): boolean =>
  (isExport(name) && isResultName(name)) || LAYOUT.test(name) || AGREED.test(name) || /^readme/i.test(name);
/** What systems and office programs leave in a folder by themselves is nobody's: a locked workbook's `~$name.xlsx` too. */
export const isOfTheSystem = (name: string): boolean =>
  LEFT_BEHIND.test(name) ||
  /^(thumbs\.db|desktop\.ini|icon\r|.*~|.*\.(tmp|lnk|bak|part|partial|crdownload|download))$/i.test(name) ||
  isResultName(name);
/** An export of ten years of readings every minute is about 200 MB; more in one file is a mistake. */
export const MOST_BYTES = 1_000_000_000;
