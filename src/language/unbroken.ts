/** Words of a language that stay with the number before them, and the one between a part and its whole. */
export interface Binding {
  units: string;
  outOf: string;
}

const NO_BREAK = '\u00a0';

/** A number, its spoken unit and "3 of 14" stay on one line: their spaces become spaces at which no line ends. */
export function unbroken({ units, outOf }: Binding): (text: string) => string {
  const words = [...units.split(' '), outOf].join('|');
  const some = new RegExp(`\\d (?:${words})`, 'u');
  const before = new RegExp(`(?<=\\d) (?=(?:${units.split(' ').join('|')})(?![\\p{L}\\d]))`, 'gu');
  const between = new RegExp(`(?<=\\d) ${outOf} (?=\\d)`, 'gu');
  return (text) =>
    some.test(text) ? text.replace(before, NO_BREAK).replace(between, `${NO_BREAK}${outOf}${NO_BREAK}`) : text;
}
