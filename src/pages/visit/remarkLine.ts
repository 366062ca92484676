import { isolated } from '../../language/index.ts';
import type { Remark } from '../../model/remarks.ts';
import { type PageContext, word } from '../context.ts';

/** When, and what, whole. */
export function remarkLine({ speaker }: PageContext, remarks: readonly Remark[]): string {
  const when = remarks.map(({ date, minute }) => {
    const day = speaker.value({ q: 'date', value: date }, 'compact');
    const clock = minute === null ? '' : ` ${speaker.value({ q: 'clock', value: minute }, 'short')}`;
    return `${day}${clock}`.replaceAll(' ', '\u00a0');
  });
  return speaker.say('pages.visit.remark', { when: word(when.join(', ')), text: word(isolated(remarks[0]!.text)) });
}
