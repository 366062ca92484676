import type { Drawing, Mark } from '../model/drawing.ts';
import { LONG } from '../occasions/sessions.ts';
import { type ChartContext, roughWidth } from './context.ts';
import type { Movement } from './drawnNotes.ts';
import type { SignBeside } from './eveningSigns.ts';
import { NARROW_WIDTH, narrowOr } from './frame.ts';
import { type SignKind, shapeOf } from './noteLanes.ts';
import { round } from './pen.ts';
import { wrapped } from './wrapped.ts';

const SIGN = 6.5;
const LINE = 11;
const BETWEEN = 9;

interface Item {
  name: string;
  /** What is written in the place of a sign, to be said before the name. */
  written?: string;
  mark(x: number, y: number): Mark;
}

const signOf =
  (kind: SignKind): Item['mark'] =>
  (x, y) => ({ kind: 'sign', shape: shapeOf(kind), role: 'ink', x, y, size: SIGN });

/** What the signs under the curves stand for; of a device's movements how many have one, and from what length on. */
export function signKeyChart(
  kinds: readonly SignKind[],
  movement: Movement,
  beyond: boolean,
  given: ChartContext,
): Drawing {
  const { speaker } = given;
  const written = (text: string, name: string): Item => ({
    name,
    written: text,
    mark: (x, y) => ({ kind: 'text', role: 'ink', x, y: round(y + 2.9), text, size: 8, anchor: 'middle' }),
  });
  const nameOf = (kind: SignKind): string =>
    kind === 'exercise' && movement.left > 0
      ? speaker.say('charts.signs.movement', {
          minutes: { q: 'minutes', value: LONG },
          shown: { q: 'count', value: movement.shown },
          all: { q: 'count', value: movement.shown + movement.left },
        })
      : speaker.say(`charts.signs.${kind}`);
  return keyOf(
    [
      ...kinds.map((kind): Item => ({ name: nameOf(kind), mark: signOf(kind) })),
      ...(kinds.length > 0 ? [written('3×', speaker.say('charts.signs.together'))] : []),
      written('%', speaker.say('charts.signs.inRange')),
      {
        name: speaker.say('charts.signs.weekend'),
        mark: (x, y) => ({ kind: 'rect', role: 'ink', x: x - 1, y: y - 4, w: 2, h: 8 }),
      },
      {
        name: speaker.say('charts.signs.gap'),
        mark: (x, y) => ({ kind: 'line', role: 'gap', lines: [[x - 4, y, x + 4, y]], width: 1.5, dash: [1.5, 2] }),
      },
      ...(beyond
        ? [
            {
              name: speaker.say('charts.signs.beyond'),
              mark: (x: number, y: number): Mark => ({ kind: 'rect', role: 'ink', x: x - 3, y: y - 2, w: 6, h: 4 }),
            },
          ]
        : []),
    ],
    given,
    'curves',
  );
}

/** What stands in the rows of evenings with a low: the bars with what is written beside them, and each sign; `hours` says how near. */
export function eveningsKeyChart(kinds: readonly SignBeside[], given: ChartContext, hours: boolean): Drawing {
  const { speaker } = given;
  const bar: Item = {
    name: speaker.say('charts.evenings.bar'),
    mark: (x, y) => ({ kind: 'rect', role: 'low', x: x - 4, y: y - 3, w: 8, h: 6, outline: 'ink', outlineWidth: 0.75 }),
  };
  const signs = kinds.map((kind, i): Item => {
    const name = speaker.say(`charts.evenings.${kind}`);
    const last = hours && i === kinds.length - 1;
    return { name: last ? `${name} – ${speaker.say('charts.evenings.noted')}` : name, mark: signOf(kind) };
  });
  return keyOf([bar, ...signs], given, 'rows');
}

/** One after the other, on as many lines as they take; on a narrow screen a long name has lines of its own. */
function keyOf(items: readonly Item[], given: ChartContext, where: 'curves' | 'rows'): Drawing {
  const context = { ...given, text: 8 };
  const { speaker, text } = context;
  const { narrow, whole } = narrowOr(given.width);
  let x = 0;
  let y = LINE / 2;
  const marks = items.flatMap(({ name, mark }): Mark[] => {
    // Small letters and blanks are narrower than the mean of the face.
    const lines = narrow ? wrapped(name, (whole - SIGN - 4) / 0.94, text) : [name];
    const width = SIGN + 4 + 0.94 * Math.max(...lines.map((one) => roughWidth(one, text)));
    if (x > 0 && x + width > whole) {
      x = 0;
      y += LINE;
    }
    const at = x;
    const top = y;
    x += width + BETWEEN;
    y += (lines.length - 1) * LINE;
    return [
      mark(round(at + SIGN / 2 + 1), round(top)),
      ...lines.map(
        (one, i): Mark => ({
          kind: 'text',
          role: 'ink',
          x: round(at + SIGN + 4),
          y: round(top + i * LINE + text * 0.36),
          text: one,
          size: text,
          anchor: 'start',
        }),
      ),
    ];
  });
  const named = items.map(({ name, written = '' }) => `${written} ${name}`.trim());
  const summary = speaker.say('charts.signs.summary', {
    count: { q: 'count', value: items.length },
    where: { q: 'word', value: where },
    // Names hold commas.
    names: { q: 'word', value: named.join('; ') },
  });
  const table = { columns: [speaker.say('charts.words.notes')], rows: named.map((name) => [name]) };
  return {
    width: whole,
    get narrow() {
      return narrow ? undefined : keyOf(items, { ...given, width: NARROW_WIDTH }, where);
    },
    height: round(y + LINE / 2),
    summary,
    table,
    marks,
  };
}
