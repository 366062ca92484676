export const N = 120;
export const START = Date.UTC(2026, 2, 17, 6, 10);
export const mg = (i: number): number => Math.round(140 + 50 * Math.sin(i / 30) + 12 * Math.sin(i / 7));
export const mm = (i: number): number => Math.round(mg(i) / 1.80156) / 10;
export const two = (n: number): string => String(n).padStart(2, '0');
export const at = (i: number) => {
  const time = new Date(START + i * 300_000);
  return {
    year: time.getUTCFullYear(),
    month: time.getUTCMonth() + 1,
    day: time.getUTCDate(),
    hour: time.getUTCHours(),
    minute: time.getUTCMinutes(),
    ms: time.getTime(),
  };
};
export const hm = (i: number): string => `${two(at(i).hour)}:${two(at(i).minute)}`;
export const iso = (i: number): string => `${at(i).year}-${two(at(i).month)}-${two(at(i).day)}`;
export const dmy = (i: number, sign = '.'): string => [two(at(i).day), two(at(i).month), at(i).year].join(sign);
export const comma = (value: number | string): string => String(value).replace('.', ',');
export const rows = (row: (i: number) => string | string[]): string =>
  `${Array.from({ length: N }, (_, i) => row(i))
    .flat()
    .join('\n')}\n`;
/** A cell that only one row in forty fills: three of all. */
export const seldom = (i: number, k: number, cell: string): string => (i % 40 === k ? cell : '');

export interface Export {
  text: string;
  unit: 'mg/dL' | 'mmol/L';
  /** How many notes of each kind. */
  notes?: Record<string, number>;
  name?: string;
}
/** Must be asked about or refused, with this code. */
export interface Open {
  text: string;
  code: string;
  name?: string;
}
