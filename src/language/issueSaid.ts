import type { Said } from '../model/clinic.ts';
import type { Detail, Shown } from '../model/detail.ts';
import type { Issue } from '../model/issues.ts';
import type { Params, Quantity } from '../model/quantity.ts';

const word = (value: string): Quantity => ({ q: 'word', value });

/** An issue, to be said; its words may use any of its fields. */
export function issueSaid(issue: Issue): Said {
  const params: Params = {
    file: word(issue.origin?.file ?? ''),
    line: word(String(issue.origin?.line ?? '')),
    column: word(String(issue.origin?.column ?? '')),
    actual: { q: 'shown', value: issue.actual ?? '' },
    expected: { q: 'shown', value: issue.expected ?? '' },
    option: issue.question === undefined ? word('') : { q: 'question', value: issue.question },
    count: { q: 'count', value: issue.count ?? 1 },
  };
  return { key: `issues.${issue.code}`, params };
}

/** The same, with every word of a file in it changed so. */
export const withWords = ({ key, params }: Said, change: (text: string) => string): Said => ({
  key,
  params: Object.fromEntries(
    Object.entries(params).map(([name, value]) => {
      if (value.q === 'word') return [name, word(change(value.value))];
      if (value.q === 'question' && value.value.of === 'losses')
        return [name, { q: 'question', value: { of: 'losses', file: change(value.value.file) } }];
      return [name, value.q === 'shown' ? { q: 'shown', value: changed(value.value, change) } : value];
    }),
  ),
});

function changed(shown: Shown, change: (text: string) => string): Shown {
  if (typeof shown === 'string') return change(shown);
  if (typeof shown === 'number') return shown;
  if (Array.isArray(shown)) return shown.map((one: string | Detail) => changed(one, change)) as string[] | Detail[];
  const { is, ...data } = shown as Detail;
  const texts = Object.entries(data).map(([name, value]) => [name, typeof value === 'string' ? change(value) : value]);
  return { is, ...Object.fromEntries(texts) } as Detail;
}
