import type { Detail } from '../../model/detail.ts';
import type { GlucoseUnit } from '../../model/glucose.ts';
import { MGDL_PER_MMOL } from '../../units.ts';
import { plain } from '../table/vocabulary.ts';

/** Readings outside this are no glucose a body or a sensor can show; set aside (ours). */
export const PLAUSIBLE: Record<GlucoseUnit, { low: number; high: number }> = {
  'mg/dL': { low: 10, high: 1000 },
  'mmol/L': { low: 0.6, high: 55.5 },
};

/** Why a number is set aside, as an issue tells it; undefined for one that can be glucose. Devices store 0 and less for none. */
export function implausible(
  value: number,
  unit: GlucoseUnit,
): { code: 'sentinel-value' | 'value-impossible'; expected: Extract<Detail, { is: 'range' }> } | undefined {
  const { low, high } = PLAUSIBLE[unit];
  if (value >= low && value <= high) return undefined;
  return { code: value <= 0 ? 'sentinel-value' : 'value-impossible', expected: { is: 'range', low, high, unit } };
}

/** Most sensors stop below this many mmol/L; nothing reads higher in mmol/L without being impossible. */
export const MMOL_TOP = 33.3;

const GLUCOSE_UNITS: [RegExp, GlucoseUnit][] = [
  [/^(?:mg\s*[/⁄]?\s*(?:\(?100\s*\.?\s*ml\)?|dl)|mg\s*%|mg\s*per\s*dl|mg[\s_]dl)$/, 'mg/dL'],
  [/^(?:mmol\s*[/⁄]?\s*l|mmol|mmol\s*per\s*l|mmol[\s_]l|mmol\/litre|mmol\/liter)$/, 'mmol/L'],
  [
    /^(?:мг\s*\/?\s*(?:дл|%)|مغ\s*\/?\s*دل|ملغ\s*\/?\s*دل|ملغم\s*\/?\s*دل|מג\s*\/\s*דל|毫克\s*\/?\s*分升|มก\.?\s*\/\s*ดล\.?)$/,
    'mg/dL',
  ],
  [
    /^(?:ммол[ья]?\s*\/?\s*[лl]|ملمول\s*\/?\s*لتر|毫摩尔?\s*\/?\s*升|ミリモル\s*\/?\s*リットル|มิลลิโมล\s*\/\s*ลิตร)$/,
    'mmol/L',
  ],
];

export function glucoseUnit(text: string): GlucoseUnit | undefined {
  const word = plain(text).replace(/[״"׳]/g, '').trim();
  for (const [pattern, unit] of GLUCOSE_UNITS) if (pattern.test(word)) return unit;
  return undefined;
}

/** Concentrations and sensor currents that glucose comes in elsewhere. Known, so that none is dropped for another. */
const FOREIGN =
  /^(?:mmol\s?\/\s?mol|(?:[munp\u00b5\u03bc]?g|[munp\u00b5\u03bc]?mol|mol|meq|iu|u)\s?(?:\/|per)\s?(?:[mcd\u00b5\u03bc]?l|lit(?:re|er)|kg|100\s?g)|[pn\u00b5\u03bc]a|m?v|adu|counts?|isig|%|percent)$/;

/** A unit, as written, in which no glucose is read here; undefined for glucose's own and for any other word. */
export function foreignUnit(text: string): string | undefined {
  const word = plain(text).trim();
  return FOREIGN.test(word) && !anyUnit(text) ? text.trim() : undefined;
}

/** Both readings of a number without a unit, each in both units, so that people see which one they know. */
export const bothUnits = (value: number, line: number): Extract<Detail, { is: 'either-unit' }> => ({
  is: 'either-unit',
  value,
  line,
  mmol: Math.round((value / MGDL_PER_MMOL) * 10) / 10,
  mgdl: Math.round(value * MGDL_PER_MMOL),
});

/** Words for other quantities, written the way UCUM writes the unit. */
const WORDS = {
  g: 'g gr gram grams gramm gramos grammes grammi gramas grammaa gramai grammi г гр грамм грам γρ γραμμαρια γρ غ غم جم جرام غرام גר גרם גרמים 克 グラム 그램 กรัม',
  IU: 'iu u ie ui e unit units einheiten unidades unites unita eenheden enheter ky yks j jednostki jed jedn jednotek ne egyseg ü birim vv vnt vienetai tu ед ме единиц од одиниц μον μοναδες وحدة وحدات יח יחידות 单位 單位 単位 단위 ยูนิต หน่วย',
  min: 'min mins minute minutes minuten minutos minuti minuter minuuttia minut perc dk dakika мин минут минуты хв λεπτα λεπτο λ دقيقة دقائق د דקות דק 分钟 分鐘 分 분 นาที',
  h: 'h hr hrs hour hours std stunden ora saat ч час часа часов ωρες ωρα ساعة ساعات שעות שעה 小时 小時 時間 시간 ชั่วโมง',
  s: 's sec secs second seconds sek сек с δευτ ثانية שניות 秒 초',
  mg: 'mg мг مغ ملغ ملغم מג 毫克',
  ug: 'mcg',
  mL: 'ml',
  tablet: 'tablet tablets',
};

/** A map, since a file may say any word, `constructor` too. */
const OTHER_UNITS = new Map(
  Object.entries(WORDS).flatMap(([unit, words]) =>
    plain(words)
      .split(' ')
      .map((word) => [word, unit] as const),
  ),
);

/** Insulin an hour, as a pump's background runs. */
const RATE =
  /^(?:iu|u|ui|ie|e|ed|ед|units?|einheiten|unidades|unites|unita|单位|單位|単位|단위)(?:[/⁄]|per|pro|por|par)(?:h|hr|hour|std|stunde|heure|hora|ora|uur|час|ч|小时|小時|時間|시간)$/;

/** Words of other units that a row may name; none of them is a length of time. */
const ASIDE = new Set(
  'km kilometer kilometers kilometre kilometres mi mile miles steps step kcal kj cal m meter meters км'.split(' '),
);

/** The unit of an insulin dose, carbohydrate, duration or medicine; undefined when it is no unit known here. */
export function otherUnit(text: string): string | undefined {
  const word = plain(text).replace(/[.\s״"׳'[\]{}]/g, '');
  return OTHER_UNITS.get(word) ?? (RATE.test(word) ? 'IU/h' : ASIDE.has(word) ? word : undefined);
}

export function anyUnit(text: string): string | undefined {
  return glucoseUnit(text) ?? otherUnit(text);
}

/** "IE/h" at the end of a name: a pump's rate. */
export function rateUnit(name: string): string | undefined {
  const end = /\S+\/\S+$/.exec(name)?.[0];
  return end !== undefined && otherUnit(end) === 'IU/h' ? 'IU/h' : undefined;
}
