import type { PersonMark } from '../../model/input.ts';
import { plain } from '../table/vocabulary.ts';

export type MarkKind = PersonMark['kind'];

/** Words before a person's name, number or birthday; languages mixed as in table/vocabulary.ts. Longest part first wins. */
const KEYS: [MarkKind, RegExp][] = [
  [
    'born',
    /(?:birth|geboren|geburt|\bdob\b|nacimiento|naissance|\bne\(?e?\)? le|nascita|nascimento|geboorte|fodelse|fodsel|syntyma|urodzenia|narozen|szulet|dogum|рожд|γεννησ|出生|生年|생년|เกิด|ميلاد|לידה)/,
  ],
  ['mail', /(?:e-?mail|correo|courriel|mail address)/],
  [
    'record',
    /(?:\bmrn\b|\bnhs\b|(?:record|chart|hospital|medical|health|case|insurance|identification)\s*(?:record\s*)?(?:no|nr|num|number|id|code|#)\b|historia clinica|fallnummer|aktenzeichen|versichertennummer|personnummer|henkilotunnus|dossier|cartella|numero de historia|病历号|カルテ)/,
  ],
  [
    'code',
    /(?:(?:patient|participant|subject|person|client|study)\s*(?:no|nr|num|number|id|code|#)\b|\b(?:pid|ptid|subjectid|patientid)\b|patienten?-?(?:nr|nummer|id)\b|numero de paciente|\buser\b|\baccount\b|\blogin\b|患者id)/,
  ],
  [
    'name',
    /(?:\bname\b|patient|participant|subject|\bperson\b|client|proband|teilnehmer|paciente|nombre|\bnom\b|\bnome\b|naam|\bnamn\b|\bnavn\b|\bnimi\b|nazwisko|imie|paziente|potilas|pacjent|utilisateur|usuario|benutzer|jmeno|prijmeni|\bnev\b|\bad(?:i)?\b|имя|фамилия|пациент|ονομα|ασθενης|姓名|患者|氏名|이름|환자|ชื่อ|اسم|שם)/,
  ],
];

/** Keys that hold such a word and name no person: a device, a clinic, a file. */
const NOT_PERSON =
  /device|sensor|file|clinic|hospital name|doctor|physician|provider|column|app\b|report|product|model|software|zone|unit|arzt|praxis|datei|gerat|medico|archivo|appareil|fichier|insulin|food|meal/;

/** What a key such as "Patient name" announces; undefined when it announces no person. */
export function markKindOf(key: string): MarkKind | undefined {
  const word = plain(key).replaceAll('_', ' ').trim();
  if (word.length === 0 || word.length > 40) return undefined;
  const found = KEYS.find(([, pattern]) => pattern.test(word))?.[0];
  return found !== undefined && NOT_PERSON.test(word) && !/patient|person|subject|participant/.test(word)
    ? undefined
    : found;
}

/** The mark a value gives under a kind; undefined for nothing, "unknown" and the like. What holds a digit under "Patient" is a code. */
export function markOf(kind: MarkKind, value: string): PersonMark | undefined {
  const text = value.trim();
  const bare = plain(text);
  if (
    text === '' ||
    text.length > 80 ||
    /^(?:-+|n\/?a|none|null|unknown|anonym\w*|not (?:given|set)|\?+|x+|\*+)$/.test(bare)
  )
    return undefined;
  if (/^[^\s@]+@[^\s@]+\.[a-z]{2,}$/.test(bare)) return { kind: 'mail', text };
  if (kind === 'name' && /\d/.test(bare)) return { kind: 'code', text };
  return { kind, text };
}

/** How two marks of one kind are compared: order of names, case, accents and signs do not part people. */
export function markKey({ kind, text }: PersonMark): string {
  const parts = plain(text)
    .split(/[^\p{L}\p{N}@]+/u)
    .filter((part) => part !== '');
  return `${kind} ${(kind === 'name' ? parts.sort() : parts).join(' ')}`;
}

/** Marks of one kind that cannot all be of one person; undefined when they can. A shortened name is no other person. */
export function twoPersons(marks: readonly PersonMark[]): [PersonMark, PersonMark] | undefined {
  for (const kind of ['name', 'record', 'code', 'mail', 'born'] as const) {
    const own = marks.filter((mark) => mark.kind === kind);
    for (let i = 1; i < own.length; i++) if (!mayBeOne(own[0]!, own[i]!)) return [own[0]!, own[i]!];
  }
  return undefined;
}

/** "Anna" and "Anna Berg", "A. Berg" and "Anna Berg" may be one person; "Anna Berg" and "Ben Berg" are not. */
function mayBeOne(a: PersonMark, b: PersonMark): boolean {
  const [x, y] = [markKey(a), markKey(b)];
  if (x === y) return true;
  if (a.kind !== 'name') return false;
  const [short, long] = [x, y].map((key) => key.split(' ').slice(1)).sort((p, q) => p.length - q.length) as [
    string[],
    string[],
  ];
  const left = [...long];
  return short.every((part) => {
    const at = left.findIndex(
      (other) => other === part || (Math.min(part.length, other.length) === 1 && other[0] === part[0]),
    );
    if (at < 0) return false;
    left.splice(at, 1);
    return true;
  });
}
