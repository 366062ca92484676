import type { Also, Evidence } from '../../model/look.ts';
import type { Measured, Why } from '../../model/measured.ts';
import type { AlsoDiffers, Comparison, ComparisonId, Noted, Side } from '../../model/occasions.ts';
import { alsoDiffers } from '../../occasions/alsoDiffers.ts';
import { WINDOW } from '../../occasions/mealCourse.ts';
import { stretchFrom } from './places.ts';
import { choice, count, word } from './quantities.ts';

/** The comparisons of one kind; `why` when none could be made at all. */
export function ofKind(comparisons: Measured<Comparison[]>, id: ComparisonId): { list: Comparison[] } | { why: Why } {
  if (!comparisons.ok) return { why: comparisons.why };
  const list = comparisons.value.filter((one) => one.id === id);
  if (list.every(({ verdict }) => verdict === 'too-few')) return { why: 'too-few-occasions' };
  return { list };
}

/** The hint with the largest difference to one side, or undefined. */
export function strongest(list: readonly Comparison[], sign: 1 | -1): Comparison | undefined {
  const size = ({ difference }: Comparison) => sign * (difference?.value ?? 0);
  return list
    .filter((one) => one.verdict === 'hint' && size(one) > 0)
    .reduce<Comparison | undefined>((best, one) => (best && size(best) >= size(one) ? best : one), undefined);
}

/** Which part of the day a meal comparison looks at; `any` where it is none of them. */
export const partOfDay = ({ slot }: Comparison) => ({ slot: word(slot ?? 'any') });

/** How many occasions each side has, and after how many of them a low was seen. */
export const counts = ({ a, b }: Comparison) => ({
  a: count(a.n),
  b: count(b.n),
  aLow: count(a.lows),
  aOf: count(a.lowsOf),
  bLow: count(b.lows),
  bOf: count(b.lowsOf),
});

/** Occasions of both sides that are not among those compared. */
export const leftOut = ({ a, b }: Comparison) => ({ leftOut: count(a.leftOut + b.leftOut) });

/** By which note the two sides differ as well; undefined where by none. */
export const also = ({ alsoDiffers }: Comparison): Also | undefined => alsoParams(alsoDiffers);

/** The same of occasions followed by a low and those that were not. */
export const alsoBeside = (low: readonly { nearby: Noted[] }[], rest: readonly { nearby: Noted[] }[]) =>
  alsoParams(
    alsoDiffers(
      low.map(({ nearby }) => nearby),
      rest.map(({ nearby }) => nearby),
      [],
    ),
  );

function alsoParams(differing: AlsoDiffers | null): Also | undefined {
  if (differing === null) return undefined;
  const { id, name, a, b } = differing;
  return { note: choice(id), name: word(name), a: count(a.k), aOf: count(a.n), b: count(b.k), bOf: count(b.n) };
}

export const seenOn = ({ occasions }: Side): Evidence[] => occasions.map((one) => stretchFrom(one, WINDOW));
