import { at, hm, iso, mg, mm, N, type Open, rows, seldom, two } from './rows.ts';

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
    code: 'two-value-columns',
  },
  'lines of a log without columns': {
    text: rows((i) => `${iso(i)} ${hm(i)} glucose=${mg(i)} mg/dL`),
    code: 'no-columns',
  },
  'columns set with blanks': {
    text: `Date        Time    Glucose\n${rows((i) => `${iso(i)}  ${hm(i)}   ${String(mg(i)).padStart(4)}`)}`,
    code: 'no-columns',
  },
  'a heading for each day': {
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
    code: 'times-unreadable',
  },
  'minutes since the start': {
    text: `Start of recording: 2026-03-17 06:10\nminute;glucose (mg/dL)\n${rows((i) => `${i * 5};${mg(i)}`)}`,
    code: 'columns-unclear',
  },
  'seconds and numbers under two letters': {
    text: JSON.stringify({
      device: 'homemade',
      samples: Array.from({ length: N }, (_, i) => ({ t: at(i).ms / 1000, mgdl: mg(i) })),
    }),
    code: 'columns-unclear',
    name: 'a.json',
  },
  'readings and meals in one column': {
    text:
      `When,What\n` +
      rows((i) => [`${iso(i)} ${hm(i)},${mg(i)}`, ...(i % 40 === 6 ? [`${iso(i)} ${hm(i)},lunch 45 g`] : [])]),
    code: 'columns-unclear',
  },
  'no year anywhere': {
    text: `Time,Glucose (mg/dL)\n${rows((i) => `${two(at(i).day)}/${two(at(i).month)} ${hm(i)},${mg(i)}`)}`,
    code: 'columns-unclear',
  },
  'single blanks': {
    text: `date time glucose mmol\n${rows((i) => `${iso(i)} ${hm(i)} ${mm(i)}`)}`,
    code: 'no-columns',
  },
  'an unknown word over a sensor’s curve': {
    text: `Time,Qwyx,Carbs (g)\n${rows((i) => `${iso(i)} ${hm(i)},${mg(i)},${seldom(i, 6, '35')}`)}`,
    code: 'column-like-glucose',
  },
};
