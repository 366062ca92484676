import { onceUpTo } from '../../once.ts';
import { plain } from '../table/vocabulary.ts';

/** Words for the two halves of a day, as clocks and spreadsheets of many places write them. From memory. */
const MORNING =
  'am morning vorm vormittag vormittags matin manana manha mattina fm ap de 上午 午前 오전 ص صباحا sa dop rano dopoledne เช้า öö πμ утра ночи לפנהצ priešpiet förm förmiddag vm';
const AFTERNOON =
  'pm afternoon nachm nachmittag nachmittags soir apresmidi tarde pomeriggio em ip du 下午 午後 오후 م مساء ch pop odp odpoledne เย็น ös μμ дня вечера אחהצ popiet efterm eftermiddag nm';
const HALVES = new Map<string, 1 | 2>([
  ...MORNING.split(' ').map((word) => [plain(word), 1] as const),
  ...AFTERNOON.split(' ').map((word) => [plain(word), 2] as const),
]);

const LONGEST = 16;
const knownHalf = onceUpTo(500, (text): 0 | 1 | 2 => HALVES.get(plain(text).replace(/[.\s'"’”׳״]/g, '')) ?? 0);

/** 1 before noon, 2 after noon, 0 for any other word. */
export const halfOf = (text: string): 0 | 1 | 2 => (text.length > LONGEST ? 0 : knownHalf(text));
