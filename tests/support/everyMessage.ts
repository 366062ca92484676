import { IntlMessageFormat } from 'intl-messageformat';

interface Element {
  type: number;
  value: string;
  options?: Record<string, { value: Element[] }>;
}

const LITERAL = 0;
const CHOICES = [5, 6];
const POUND = 7;

/** Every text of a words file with its dotted key. */
export function everyMessage(words: object, path: string[] = []): [key: string, text: string][] {
  return Object.entries(words).flatMap(([name, value]): [string, string][] => {
    if (typeof value === 'string') return path.length === 0 ? [] : [[[...path, name].join('.'), value]];
    return everyMessage(value as object, [...path, name]);
  });
}

/**
 * A message as it may be read: once for each arm of its plurals and selects, with the others at `other`, and `sample`
 * for what is filled in.
 */
export function readings(text: string, sample = '12'): string[] {
  const ast = new IntlMessageFormat(text, 'en', undefined, { ignoreTag: true }).getAst() as unknown as Element[];
  const found = new Set<string>([spoken(ast, sample, null)]);
  for (const arm of arms(ast)) found.add(spoken(ast, sample, arm));
  return [...found].map((each) => each.replace(/ {2,}/g, ' ').trim()).filter((each) => each !== '');
}

function arms(elements: Element[]): Element[][] {
  return elements.flatMap((element) =>
    CHOICES.includes(element.type)
      ? Object.values(element.options!).flatMap((option) => [option.value, ...arms(option.value)])
      : [],
  );
}

const leadsTo = (elements: Element[], arm: Element[]): boolean => elements === arm || arms(elements).includes(arm);

function spoken(elements: Element[], sample: string, arm: Element[] | null): string {
  return elements
    .map((element) => {
      if (element.type === LITERAL) return element.value;
      if (element.type === POUND || !CHOICES.includes(element.type)) return sample;
      const options = Object.values(element.options!).map((option) => option.value);
      const chosen = options.find((option) => arm !== null && leadsTo(option, arm)) ?? element.options!.other!.value;
      return spoken(chosen, sample, arm);
    })
    .join('');
}
