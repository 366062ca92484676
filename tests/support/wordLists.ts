import { words } from './readability.ts';

/** Words no generated text uses, and why. Judgement and person-first words: Diabetes Care 2017;40:1790-1799. */
const JUDGING =
  /\b(diabetics?|sufferers?|complian\w*|complies|adheren\w*|non-?complian\w*|refuses?|unmotivated|control(led|s)?|uncontrolled|good|bad|poor(ly)?|normal(ly)?|abnormal|perfect|fail(s|ed|ure|ures)?|should(n[’']t)?|must|have to|need to|needs to|supposed to|you can[’']t|don[’']t|not allowed|stop|just|test(s|ed|ing)?|cheat\w*|naughty|sneak\w*|excuses?|forgot\w*|missed|violations?|worst|red flag|danger\w*|obese|fat)\b/i;

/** Only a clinician may assert a cause. */
const CAUSE =
  /\b(because|caus(e|es|ed|ing) (?!and\b)|caused by|due to|(led|leads?|leading) to|makes?|thanks to|effects? of|respon(ded|ds) to)\b/i;

/** Trade words that the patient paper says in other words. */
const TRADE =
  /\b(CGM|continuous glucose|hypo\w*|hyper\w*|level [12]|TIR|TBR|TAR|nocturnal|diurnal|(post|pre)-?prandial|excursions?|spikes?|crash\w*|glyc\w*|CV|coefficient|variability|percentiles?|interquartile|median|modal|ambulatory|GMI|A1C|sufficiency|wear time|(?<!not )mean|intervals?|artefacts?|artifacts?|interstitial|carbohydrates?|basal|bolus|calibrat\w*|interventions?|recommend\w*|patients?)\b/i;

/** Never a verdict without its statistics. */
const CLAIMS = /\b(significan\w*|trends?|improved|worse|1 in \d+)\b/i;

const VERBS = new Set(
  'increase decrease raise lower reduce cut add stop start skip hold switch double halve adjust titrate correct change try take give'.split(
    ' ',
  ),
);
const DRUGS = new Set(
  'insulin dose unit units basal bolus long-acting rapid-acting tablet pill medicine medication pump rate ratio factor'.split(
    ' ',
  ),
);

/** A dosing verb within six words of a drug word. Software that advises doses is another kind of thing (21 CFR 862.2120). */
export function crossesFence(text: string): boolean {
  const all = words(text).map((word) => word.toLowerCase());
  return all.some((word, at) => VERBS.has(word) && all.some((other, i) => DRUGS.has(other) && Math.abs(i - at) <= 6));
}

/** What is wrong with a generated text, in words; empty when nothing is. */
export function faults(text: string, voice: 'clinic' | 'patient'): string[] {
  const found: string[] = [];
  for (const [name, list] of [
    ['judging', JUDGING],
    ['cause', CAUSE],
    ['claim', CLAIMS],
    ...(voice === 'patient' ? ([['trade', TRADE]] as const) : []),
  ] as const) {
    const match = list.exec(text);
    if (match) found.push(`${name} word "${match[0]}"`);
  }
  if (crossesFence(text)) found.push('dosing verb near a drug word');
  if (
    /\bno (hypoglyc\w*|lows)\b(?! (were |was )?seen)/i.test(text) &&
    !/\bno lows? (\w+ )?seen|saw no lows/i.test(text)
  ) {
    found.push('"no lows" without the hours seen');
  }
  return found;
}
