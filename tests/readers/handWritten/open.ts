import { at, hm, iso, mg, N, type Open, rows, seldom, two } from './rows.ts';

/** Files of which something cannot be told. */
export const open: Record<string, Open> = {
  'days side by side, clock times down': {
    text:
      `Time,${[0, 1, 2].map((d) => `${17 + d} Mar 2026`).join(',')}\n` +
      Array.from(
        { length: 96 },
        (_, k) => `${two(k >> 2)}:${two((k & 3) * 15)},${[0, 1, 2].map((d) => mg(d * 96 + k)).join(',')}`,
      ).join('\n') +
      '\n',
    code: 'column-like-glucose',
  },
  'one day in a heading': {
    text: (() => {
      let s = 'Sensor glucose (mg/dL)\n';
      let last = '';
      for (let i = 0; i < N; i++) {
        if (iso(i) !== last) {
          last = iso(i);
          s += `Tuesday ${at(i).day} March 2026\nTime;Sensor glucose (mg/dL)\n`;
        }
        s += `${hm(i)};${mg(i)}\n`;
      }
      return s;
    })(),
    code: 'days-not-said',
  },
  'readings and meals in one column': {
    text:
      `When,What\n` +
      rows((i) => [`${iso(i)} ${hm(i)},${mg(i)}`, ...(i % 40 === 6 ? [`${iso(i)} ${hm(i)},lunch 45 g`] : [])]),
    code: 'column-of-both',
  },
  'no year anywhere': {
    text: `Time,Glucose (mg/dL)\n${rows((i) => `${two(at(i).day)}/${two(at(i).month)} ${hm(i)},${mg(i)}`)}`,
    code: 'year-not-said',
  },
  'an unknown word over a sensor’s curve': {
    text: `Time,Qwyx,Carbs (g)\n${rows((i) => `${iso(i)} ${hm(i)},${mg(i)},${seldom(i, 6, '35')}`)}`,
    code: 'column-like-glucose',
  },
};
