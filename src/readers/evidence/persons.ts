import type { PersonMark } from '../../model/input.ts';
import { plain } from '../table/vocabulary.ts';

export type MarkKind = PersonMark['kind'];

/**
 * Words before a person's name, number or birthday, in the languages of table/vocabulary.ts and some more; the first that fits wins.
 * From memory, without accents.
 */
const KEYS: [MarkKind, RegExp][] = [
  [
    'born',
    /birth|\bdob\b|geboren|geburt|nacimiento|naissance|\bnee? le\b|nascita|nascimento|geboorte|fodsel|syntyma|urodzen|narozen|szuletes|gimimo|dogum|рожд|γεννησ|לידה|ميلاد|出生|生年|생년|เกิด/,
  ],
  [
    'mail',
    /e-?mail|e-?post|courriel|correo electr|correio electr|posta elettr|adresse electr|sahkoposti|pastas|ηλεκτρονικη διευθ|электронн|דואר אלקטר|البريد|メール|电子邮件|電子郵件|전자우편|이메일/,
  ],
  [
    'record',
    /\bmrn\b|\bnhs\b|(?:record|chart|hospital|medical|health|case|insurance|identification|social security)\s*(?:record\s*)?(?:no|nr|num|number|id|code|#)(?:$|[^a-z])|(?:akten?|fall|versicherten|kartei|journal|dossier|potilas|sygehus|sygesikrings|person)-?(?:nummer|nr|numero)\b|numero d[eiou]\w* (?:historia|dossier|cartella|processo|expediente|utente|prontuario)|numero di cartella|numer (?:karty|pesel|kartoteki)|cislo (?:karty|pojistence)|karton-?szam|taj-?szam|korteles|dosya n|protokol n|henkilotunnus|номер карт|история болезни|αριθμος (?:φακελου|μητρωου)|מספר (?:תיק|זהות)|رقم (?:الملف|الهوية)|カルテ|診察券|病历号|病歷號|차트|등록번호/,
  ],
  [
    'code',
    /(?:patient|participant|subject|person|client|study)\s*(?:no|nr|num|number|id|code|#)(?:$|[^a-z])|\b(?:pid|ptid|subjectid|patientid)\b|patienten?-?(?:nr|nummer|id)\b|numero de paciente|\b(?:user|account|login|member)\b|benutzer|utilisateur|usuario|utente|utilizador|gebruiker|anvandare|bruger|kayttaja|uzytkownik|uzivatel|felhasznalo|naudotoj|kullanici|пользовател|χρηστης|משתמש|المستخدم|利用者|用户|사용자|患者id/,
  ],
  [
    'name',
    /\bname\b|patient|participant|subject|\bperson\b|client|\bwearer\b|\bowner\b|proband|teilnehmer|paciente?\b|pacientas|paciens|pacjent|nombre|\bnom\b|\bnome\b|naam\b|\bnamn\b|\bnavn\b|\bnimi\b|paziente|potilas|\bjmeno\b|\bnev\b|vardas|\badi?\b|\bhasta\b|\bimie\b|\bime\b|имя|пациент|ονομα|ασθενης|מטופל|^שם(?: (?:פרטי|מלא))?$|المريض|الاسم|姓名|患者|氏名|이름|환자|ชื่อ/,
  ],
];

/** A name that only people have, wherever it stands: given and family names. */
const OWN_NAME =
  /(?:first|last|given|family|middle|sur|full)\s?name|vorname|nachname|familienname|apellido|prenom|nom de famille|cognome|apelido|sobrenome|achternaam|voornaam|efternavn|fornavn|efternamn|fornamn|sukunimi|etunimi|nazwisko|prijmeni|vezeteknev|keresztnev|pavarde|soyad|фамили|отчеств|επωνυμο|שם משפחה|اسم العائلة|^姓$|^성$/;

/** Keys that hold such a word and name no person: a device, a clinic, a file. */
const NOT_PERSON =
  /device|sensor|file|clinic|hospital name|doctor|physician|provider|column|app\b|report|product|model|software|zone|unit|arzt|praxis|datei|gerat|medico|archivo|appareil|fichier|insulin|food|meal/;

/** What a key such as "Patient name" announces; undefined when it announces no person. */
export function markKindOf(key: string): MarkKind | undefined {
  // Times and numbers, as most cells below a table, are no words.
  if (/^[\d\s.,:/-]*$/.test(key)) return undefined;
  const word = plain(key).replaceAll('_', ' ').trim();
  if (word.length === 0 || word.length > 40) return undefined;
  // Letters that are no accents of others are looked for as they stand.
  const raw = key.toLowerCase().trim();
  if (isOwnName(key)) return 'name';
  const found = KEYS.find(([, pattern]) => pattern.test(word) || pattern.test(raw))?.[0];
  return found !== undefined && NOT_PERSON.test(word) && !/patient|person|subject|participant/.test(word)
    ? undefined
    : found;
}

/** Whether a column's name, even of one word, can hold nothing but people's names. */
export const isOwnName = (key: string): boolean =>
  key.length <= 40 && (OWN_NAME.test(plain(key)) || OWN_NAME.test(key.toLowerCase().trim()));

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
