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
  visit: 'visit-{day}.json',
  setAside: 'set-aside.csv',
  fhir: 'cgm.fhir.json',
} as const;

/** The method, where it is made once for a whole run. */
export const METHOD_NAME = ENDINGS.method;

export type Result = keyof typeof ENDINGS;

/** `day`: the last one it tells of, YYYY-MM-DD. */
export const resultName = (stem: string, what: Result, day: string): string =>
  `${stem}-${ENDINGS[what].replace('{day}', day)}`;

const inPattern = (ending: string): string => ending.replaceAll('.', '\\.').replace('{day}', '(\\d{4}-\\d{2}-\\d{2})');
/** What a visit file was called while it held sums of days alone. */
const SNAPSHOT = 'snapshot-{day}.json';
const RESULT = new RegExp(`-(?:${[...Object.values(ENDINGS), SNAPSHOT].map(inPattern).join('|')})$`);
const VISITS = [ENDINGS.visit, SNAPSHOT].map((ending) => new RegExp(`-${inPattern(ending)}$`));

/** Whether a file is called as our results are: such may lie among the exports. */
export const isResultName = (name: string): boolean => RESULT.test(name);

/** The last day of the visit file (or snapshot) of this name; undefined when it is the name of none. */
export const visitDay = (name: string): string | undefined =>
  VISITS.map((pattern) => pattern.exec(name)?.[1]).find((day) => day !== undefined);

/** Whether a visit file is called as this person's are. */
export const isVisitOf = (name: string, stem: string): boolean =>
  name.startsWith(stem) && VISITS.some((pattern) => pattern.exec(name)?.index === stem.length);
