import type { Drawing, Mark, SignShape } from '../../src/model/drawing.ts';
import type { Block, Report } from '../../src/model/report.ts';
import type { Band } from '../../src/model/targets.ts';

/** An invented report with every kind of block, for looking at and for testing the writers. Nobody's data. */

const BANDS: readonly Band[] = ['very-low', 'low', 'in-range', 'high', 'very-high'];
const NAMES: Record<Band, string> = {
  'very-low': 'Very low',
  low: 'Low',
  'in-range': 'In range',
  high: 'High',
  'very-high': 'Very high',
};
const round = (value: number): number => Math.round(value * 100) / 100;

/** A made-up day: the same shape each time, moved by the day's number. */
const glucose = (day: number, minute: number): number =>
  140 + 55 * Math.sin(minute / 190 + day) + 28 * Math.sin(minute / 67 + day * 2) + 9 * Math.sin(minute / 11 + day * 5);

export function strip(day: number, width = 482, height = 62): Drawing {
  const left = 34;
  const x = (minute: number): number => round(left + ((width - left) * minute) / 1440);
  const y = (value: number): number => round(height - 14 - ((value - 40) / 280) * (height - 16));
  const trace: number[] = [];
  const later: number[] = [];
  for (let minute = 0; minute < 1440; minute += 3) {
    const line = minute < 600 ? trace : later;
    if (minute < 560 || minute >= 640) line.push(x(minute), y(glucose(day, minute)));
  }
  const marks: Mark[] = [
    {
      kind: 'line',
      role: 'grid',
      lines: [0, 6, 12, 18, 24].map((h) => [x(h * 60), 2, x(h * 60), height - 12]),
      width: 0.75,
    },
    {
      kind: 'line',
      role: 'limit',
      lines: [
        [left, y(70), width, y(70)],
        [left, y(180), width, y(180)],
      ],
      width: 0.75,
      dash: [2, 2],
    },
    { kind: 'text', role: 'axis', x: left - 4, y: y(70) + 3, text: '70', size: 8.5, anchor: 'end' },
    { kind: 'text', role: 'axis', x: left - 4, y: y(180) + 3, text: '180', size: 8.5, anchor: 'end' },
    { kind: 'line', role: 'gap', lines: [[x(560), height - 20, x(640), height - 20]], width: 1, dash: [1.5, 1.5] },
    { kind: 'line', role: 'trace', lines: [trace, later], width: 1.1 },
  ];
  const signs: [SignShape, string, number][] = [
    ['circle', 'F', 430],
    ['triangle', 'I', 470],
    ['diamond', 'E', 760],
    ['square', 'M', 900],
    ['plus', 'S', 1080],
    ['bell', 'A', 1180],
    ['ring', 'N', 1280],
    ['dash', 'T', 1360],
  ];
  for (const [shape, letter, minute] of signs)
    marks.push({ kind: 'sign', shape, role: 'ink', x: x(minute), y: height - 5, size: 9, letter });
  return { width, height, summary: `Day ${day}: a made-up trace from 40 to 320 mg/dL with one gap.`, marks };
}

export function stack(): Drawing {
  const shares = [0.03, 0.07, 0.61, 0.21, 0.08];
  const marks: Mark[] = [];
  let x = 0.5;
  BANDS.forEach((band, i) => {
    const w = round(shares[i]! * 474 - 1.5);
    marks.push({ kind: 'rect', role: band, x, y: 1, w, h: 34, outline: 'ink', outlineWidth: 0.75 });
    if (w > 30)
      marks.push({
        kind: 'text',
        role: band,
        x: round(x + w / 2),
        y: 22,
        text: `${Math.round(shares[i]! * 100)} %`,
        size: 10,
        anchor: 'middle',
        strong: true,
        on: band,
      });
    marks.push({
      kind: 'text',
      role: 'axis',
      x: round(i === 0 ? 0 : x + w / 2 - (i === 1 ? 0 : 0)),
      y: i === 0 ? 58 : 47,
      text: NAMES[band],
      size: 8.5,
      anchor: i === 0 ? 'start' : 'middle',
    });
    x = round(x + w + 3);
  });
  return {
    width: 482,
    height: 60,
    summary: 'Of each day: 3 % very low, 7 % low, 61 % in range, 21 % high, 8 % very high.',
    marks,
  };
}

export function ribbons(): Drawing {
  const [left, right, top, bottom] = [34, 478, 8, 168];
  const x = (i: number): number => round(left + ((right - left) * i) / 479);
  const y = (value: number): number => round(bottom - ((value - 40) / 280) * (bottom - top));
  const middle = (i: number): number => 140 + 38 * Math.sin(i / 70) + 14 * Math.sin(i / 24);
  const ring = (spread: number): number[] => {
    const points: number[] = [];
    for (let i = 0; i < 480; i++) points.push(x(i), y(middle(i) + spread * (1 + 0.3 * Math.sin(i / 50))));
    for (let i = 479; i >= 0; i--) points.push(x(i), y(middle(i) - spread * (0.8 + 0.2 * Math.sin(i / 40))));
    return points;
  };
  const median = Array.from({ length: 480 }, (_, i) => [x(i), y(middle(i))]).flat();
  const hours = [0, 3, 6, 9, 12, 15, 18, 21, 24];
  const marks: Mark[] = [
    { kind: 'line', role: 'grid', lines: hours.map((h) => [x(h * 19.96), top, x(h * 19.96), bottom]), width: 0.75 },
    { kind: 'shape', role: 'outer-ribbon', rings: [ring(75)], outline: 'outer-edge', outlineWidth: 0.75 },
    { kind: 'shape', role: 'inner-ribbon', rings: [ring(36)], outline: 'inner-edge', outlineWidth: 0.75 },
    { kind: 'line', role: 'median', lines: [median], width: 2 },
    ...[54, 70, 180, 250].map(
      (limit): Mark => ({
        kind: 'line',
        role: 'limit',
        lines: [[left, y(limit), right, y(limit)]],
        width: 0.75,
        dash: [3, 2],
      }),
    ),
    ...[54, 70, 180, 250].map(
      (limit): Mark => ({
        kind: 'text',
        role: 'axis',
        x: left - 4,
        y: y(limit) + 3,
        text: `${limit}`,
        size: 8.5,
        anchor: 'end',
      }),
    ),
    ...hours.map(
      (h): Mark => ({
        kind: 'text',
        role: 'axis',
        x: x(h * 19.96),
        y: bottom + 12,
        text: `${h}`,
        size: 8.5,
        anchor: 'middle',
      }),
    ),
  ];
  return {
    width: 482,
    height: 184,
    summary: 'Over the usual day half of the readings lie within 36 mg/dL of the middle line.',
    marks,
  };
}

const table = (rows: number, dense = false): Block => ({
  kind: 'table',
  caption: 'Episodes below 70 mg/dL',
  captionShown: true,
  columns: [
    { title: 'When', align: 'start', width: 0.3 },
    { title: 'Lowest', align: 'end', width: 0.14 },
    { title: 'Minutes', align: 'end', width: 0.14 },
    { title: 'Band', align: 'start', width: 0.17 },
    { title: 'Written down around the same time', align: 'start', width: 0.25 },
  ],
  rows: Array.from({ length: rows }, (_, i) => {
    const band = BANDS[i % 5]!;
    if (i % 7 === 4) return [{ text: 'Between these two rows: a sensor was changed.', across: true }];
    return [
      { text: `Tue ${(i % 28) + 1} June, 02:15`, strong: true },
      { text: `${50 + i}` },
      { text: `${(i * 17) % 120}` },
      { text: NAMES[band], band },
      { text: i % 3 ? 'Walk, 40 minutes; supper with rice' : 'no note', muted: i % 3 === 0 },
    ];
  }),
  dense,
});

const EVERY: Block[] = [
  { kind: 'heading', level: 1, text: 'What we had to work with' },
  {
    kind: 'paragraph',
    style: 'lead',
    text: 'This paper covers 14 days, from 27 May to 9 June. The sensor gave readings for 13 days and 2 hours of that time.',
  },
  {
    kind: 'caution',
    id: 'C2',
    boxed: true,
    text: 'Do not change your insulin or other medicine because of this report alone. Talk with your care team first.',
  },
  { kind: 'heading', level: 2, text: 'Lows first' },
  {
    kind: 'paragraph',
    style: 'body',
    text: 'On 5 of 13 nights glucose went below 70 mg/dL for 15 minutes or more. The longest low lasted 55 minutes. Two of the five came on days with an evening walk, three on days without one; that is too few to call a pattern, and the days with no evening note may have had a walk as well.',
  },
  { kind: 'chart', title: 'Where the hours went', drawing: stack() },
  table(7),
  { kind: 'heading', level: 3, text: 'One thing to talk about' },
  {
    kind: 'list',
    ordered: false,
    items: [
      'Lows after 2 in the morning, on 5 of 13 nights.',
      'What was different on the nights without one? A longer question that needs a second line to show how the text hangs under itself and not under the mark.',
      'A note on the evening meal would help most with this.',
    ],
  },
  {
    kind: 'caution',
    id: 'C11',
    boxed: false,
    text: 'A gap means no reading. It does not mean no low. On 3 nights no readings came in from 1 to 4 in the morning; what glucose did then is not known.',
  },
  { kind: 'chart', title: 'The usual day', drawing: ribbons() },
  {
    kind: 'columns',
    widths: [0.5, 0.5],
    columns: [
      [
        { kind: 'heading', level: 2, text: 'What went well' },
        {
          kind: 'paragraph',
          style: 'body',
          text: 'From 6 to 10 in the morning readings were in range on most days, 11 of 13.',
        },
        { kind: 'list', ordered: true, items: ['First question', 'Second question'] },
      ],
      [
        { kind: 'heading', level: 2, text: 'Agreed today' },
        { kind: 'boxes', items: ['Bring the logbook', 'Ask about the nights'] },
        { kind: 'writeIn', label: 'Other', lines: 2 },
      ],
    ],
  },
  {
    kind: 'panel',
    blocks: [
      { kind: 'heading', level: 3, text: 'Sure of this page?' },
      { kind: 'paragraph', style: 'body', text: 'How sure are you, from 0 to 10?' },
      { kind: 'boxes', inline: true, items: ['0', '1', '2', '3', '4', '5', '6', '7', '8', '9', '10'] },
    ],
  },
  {
    kind: 'paragraph',
    style: 'small',
    text: 'Small print in ink that still reads: method 7, interval by whole-day resampling, 13 days.',
  },
];

export function sampleReport(over: Partial<Report> = {}): Report {
  return {
    language: 'en',
    direction: 'ltr',
    paper: 'a4',
    voice: 'clinic',
    title: 'Glucose report, 27 May to 9 June',
    tab: 'HQ-1 · 27 May to 9 June · Glucose report',
    header: { left: 'Quince, Harriet (invented) · 27 May to 9 June · mg/dL', right: 'Sheet {page} of {pages}' },
    footer: {
      left: 'This report helps a person and a care team talk. It does not take the place of advice.',
      right: 'Printed 10 June · 0.1.0 · 3f9a2c',
    },
    pages: [
      { id: 'summary', title: 'Summary', blocks: EVERY },
      {
        id: 'days',
        title: 'Day strips',
        blocks: [
          { kind: 'heading', level: 1, text: 'Day strips' },
          ...Array.from(
            { length: 14 },
            (_, day): Block => ({ kind: 'chart', title: `Day ${day + 1}`, drawing: strip(day) }),
          ),
        ],
      },
      {
        id: 'left-out',
        title: 'Left out, and why',
        blocks: [{ kind: 'heading', level: 1, text: 'Left out, and why' }, table(90, true)],
      },
    ],
    printed: '2031-06-10',
    ...over,
  };
}
