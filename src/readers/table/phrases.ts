import { plain } from './vocabulary.ts';

const NO = new Set(
  plain(
    'no none false 0 n nein non nej ei nie nee nao off nada aucun kein ingen ne nem nu yok hayir нет не нема ні οχι لا לא 无 無 否 没有 なし いいえ 없음 아니오 아니요 ไม่ ไม่มี',
  ).split(' '),
);

/** A cell that says "nothing here": no, none, false, 0. */
export function isNo(text: string): boolean {
  return text.length < 8 && (NO.has(plain(text).trim()) || /^[-–—./]*$/.test(text));
}

const BEFORE_MEAL =
  /^(?:(?:before|after|pre|post|fasting|vor|nach|nuchtern|avant|apres|antes|despues|depois|prima|dopo|voor|fore|efter|ennen|jalkeen|przed|po|pred|inainte|dupa|once|sonra|ac|pries|pirms|enne|parast|до|перед|после|натощак|преди|след|перед|після|πριν|μετα|قبل|بعد|לפני|אחרי)(?!\p{L})|[食餐饭飯][前后後]|空腹|식[전후]|공복|(?:evés|ebéd|étkezés)[^ ]* (?:előtt|után)|ก่อน|หลัง)/u;

/** "Before lunch", "fasting": how a value relates to a meal, which is not yet a meal. */
export function isMealRelation(text: string): boolean {
  return BEFORE_MEAL.test(plain(text).trim());
}

const RATE =
  /^(?:rates?|basal(?:e|is)?rate\w*|temp|temporary|temporal|temporar\w*|suspen\w*|tasa|ritmo|debit|portata|snelheid|hastighe\w*|nopeus|tempo|predkosc|rychlost|sebesseg|hizi?|greitis|скорост\w*|ρυθμ\w*)$|速度|速率|속도|معدل|קצב/;

/** Words of a pump's background: its rate, a temporary one, a suspension. */
export function isRate(words: string[]): boolean {
  return words.some((word) => RATE.test(word));
}

/** Tablets are no insulin, whatever stands beside them. */
export const isTablets = (words: string[], unit: string | undefined): boolean =>
  unit === 'tablet' || words.some((word) => /^(?:tablet|tablett|pill|comprim|pastill)/.test(word));

/** "Patient details" may be anything of a person; "Patient notes" are remarks. */
export const isDetail = (word: string): boolean => /^detail/.test(word);
