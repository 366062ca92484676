/** What each result of one person is, and how its name ends after the person's code. The one rule for their names. */
const ENDINGS = {
  clinic: 'clinic-report.pdf',
  clinicPage: 'clinic-report.html',
  patient: 'patient-paper.pdf',
  patientPage: 'patient-paper.html',
  further: 'further-pages.pdf',
  furtherPage: 'further-pages.html',
  method: 'how-numbers-are-made.pdf',
  interpretation: 'interpretation.txt',
  analysis: 'analysis.json',
  snapshot: 'snapshot-{day}.json',
  setAside: 'set-aside.csv',
  fhir: 'cgm.fhir.json',
} as const;

/** The method, where it is made once for a whole run. */
export const METHOD_NAME = ENDINGS.method;

export type Result = keyof typeof ENDINGS;

/** `day`: the last one it tells of, YYYY-MM-DD. */
export const resultName = (stem: string, what: Result, day: string): string =>
  `${stem}-${ENDINGS[what].replace('{day}', day)}`;

const inPattern = (ending: string): string =>
  ending.replaceAll('.', '\\.').replace('{day}', '(?<day>\\d{4}-\\d{2}-\\d{2})');
const RESULT = new RegExp(`-(?:${Object.values(ENDINGS).map(inPattern).join('|')})$`);
const SNAPSHOT = new RegExp(`-${inPattern(ENDINGS.snapshot)}$`);

/** Whether a file is called as our results are: such may lie among the exports. */
export const isResultName = (name: string): boolean => RESULT.test(name);

/** The last day of the snapshot of this name; undefined when it is the name of none. */
export const snapshotDay = (name: string): string | undefined => SNAPSHOT.exec(name)?.groups?.day;
