import { once } from '../../once.ts';
import languages from './languages.json' with { type: 'json' };
import scripts from './scripts.json' with { type: 'json' };

const BEYOND_ASCII = /[^\0-\x7f]/;
/** Accents and points of Latin, Greek, Cyrillic, Hebrew and Arabic letters, and marks that nobody sees. */
const MARKS = /[\u0300-\u036f\u0591-\u05c7\u0640\u064b-\u065f\u0670\u200b-\u200f\u061c\ufeff]/g;
const STROKES: Record<string, string> = { ł: 'l', ø: 'o', æ: 'ae', ß: 'ss', ı: 'i', đ: 'd', œ: 'oe' };

/** Small letters without accents, signs as wide as two taken apart, for matching only; what a person sees stays as written. */
export function plain(text: string): string {
  if (!BEYOND_ASCII.test(text)) return text.toLowerCase();
  return text
    .normalize('NFKD')
    .replace(MARKS, '')
    .normalize('NFC')
    .toLowerCase()
    .replace(/[łøæßıđœ]/g, (letter) => STROKES[letter]!);
}

export type Concept =
  | 'instant'
  | 'time'
  | 'date'
  | 'zone'
  | 'glucose'
  | 'sensor'
  | 'fingerstick'
  | 'value'
  | 'insulin'
  | 'bolus'
  | 'dose'
  | 'carbohydrate'
  | 'food'
  | 'exercise'
  | 'sport'
  | 'duration'
  | 'active'
  | 'intensity'
  | 'medication'
  | 'note'
  | 'alarm'
  | 'person'
  | 'kind'
  | 'unit'
  | 'calibration'
  | 'event'
  | 'name'
  | 'start'
  | 'end'
  | 'other'
  | 'rest';

/**
 * Words of the trade and of everyday logbooks, each with its languages mixed: English, Spanish, German, French,
 * Italian, Portuguese, Dutch, Swedish/Danish/Norwegian, Finnish, Polish. `stem*` matches the beginning of a word,
 * `*stem*` any place in it, since German, Dutch, Swedish and Finnish write compounds as one word.
 */
const WORDS: Record<Concept, string> = {
  instant: 'timestamp ts datetime horodatage zeitstempel tidsstempel aikaleima znacznik',
  time: 'time clock hora horas heure ora orario horario *zeit zeitpunkt tijd tijdstip tid tidpunkt tidspunkt klockslag klokkeslett klokkeslaet kl aika kello kellonaika klo czas godzina when moment uhr',
  date: 'date day fecha dia datum tag jour data giorno dag dato paiva paivamaara pvm dzien',
  zone: 'zone timezone tz offset zeitzone fuseau fuso tijdzone tidszon aikavyohyke strefa huso',
  glucose:
    'bg sg gl glu *gluc* *glukos* *glucos* *glukoos* *glukoz* *glykemi* *glycemi* *glicemi* *glycaemi* *glicos* *zucker* *suiker* *socker* *sukker* *sokeri* sugar azucar acucar zucchero cukier cgm isf *glukose*',
  sensor:
    'sensor* cgm interstiti* intersticial* tissue gewebe* continuous kontinuierlich* continu* kudos* capteur senseur scan isf tejido',
  fingerstick:
    'fingerstick fingerprick finger* smbg meter capillar* capilar* kapillar* strip strips *streifen lancet sormi* sorme* glucometer glucometro glucometre palec palca *messgerat stick blutig* manual',
  value:
    'value values *wert *werte valor valeur valore waarde varde arvo wartosc vaerdi verdi reading result measurement *messung lectura lettura amount menge cantidad quantity quantidade quantite quantita hoeveelheid mangd maara ilosc level concentration',
  insulin: '*insulin* *insulina *insuline *insuliini* basal bolus bolo basale bazal* bazowa',
  bolus:
    'rapid fast short rapida schnell* kurz* rapide snabb* pika* mealtime correction long slow lang* lenta lente lunga pitka* dlugo* background verzogert*',
  dose: 'dose doses dosis dosage dosierung dosi dawka annos dos dosering',
  carbohydrate:
    'carb carbs carbohydrate carbohydrates cho *kohlenhydrat* kh hh hc hidratos carbohidrat* glucides carboidrat* *koolhydrat* *kolhydrat* *hiilihydraat* weglowodan* *kulhydrat* *karbohydrat*',
  food: 'dietary nutrition intake food foods meal meals eten essen speise *mahlzeit* comida comidas repas aliment* cibo pasto pasti *maaltijd* voeding mat maltid* ateria* ruoka posilek jedzenie refeicao dish eaten snack gericht breakfast lunch dinner desayuno cena fruhstuck abendessen mittagessen dejeuner colazione pranzo',
  exercise:
    'exercise* *liikunta activity activities workout* sport* training ejercicio actividad *bewegung aktivitat* exercice activite esercizio attivita exercicio atividade beweging inspanning motion trening aktywnosc cwiczen* wysilek liikunta urheilu aktivitet*',
  sport: 'walk walks walking run running jog jogging cycl* bike biking swim swimming gym yoga football dance dancing',
  duration: 'duration dauer duracion duree durata duracao duur varaktighet kesto trwania varighed elapsed length',
  active: 'active moving aktiv',
  intensity: 'intensity effort intensitat intensidad intensite intensita intensiteit intensitet',
  medication:
    'medication* medicine* meds antidiabet* metformin* comprim* oad drug drugs tablet* pill* medikament* medicament* farmac* medicijn* lakemedel laake laakkeet lek leki medicin remedio pastill*',
  note: 'note notes comment comments remark remarks diary memo text notiz* bemerkung* kommentar* nota notas comentari* remarque* commentaire* opmerking* notitie* anteckning* huomautu* huom muistiinpano* uwagi notatk* observac* annotation* detail details',
  alarm: 'alarm* alert* warning* alarma allarme avviso waarschuwing larm varning* halytys* avis aviso',
  person:
    'person patient* participant* subject* ptid pid paciente paziente potila* pacjent* teilnehmer* proband* sujet deltagar* henkilo client study user users account email mail login member mrn surname vorname nachname apellido apellidos prenom cognome achternaam voornaam efternamn fornamn sukunimi etunimi nazwisko imie',
  kind: 'type types kind event category art typ tipo categoria categorie soort luokka tyyppi rodzaj laji tapahtuma ereignis evento recordtype kategorie kategori',
  unit: 'unit units uom einheit* unidad* unite unita unidade* eenheid enhet enhed yksikko jednostka',
  calibration: '*calibr* *kalibr*',
  event:
    'change changed inserted insertion start started stopped replaced replacement removed removal warmup gewechselt wechsel vaihto',
  name: 'name description tag label item what bezeichnung nombre nom nome naam namn nimi nazwa code id identifier',
  start: 'start begin beginning onset debut inicio inizio alku',
  end: 'end stop finish ende fin fine slut loppu koniec',
  other:
    'trend arrow rate average mean avg median minimum maximum max target goal limit threshold ketone* keton* hba1c a1c gmi quality status serial device model version firmware index number nr no count row fat fats fett gras cholesterol* colesterol* cholesterin* kolesterol* lactat* laktat* lactato triglycer* triglyzer* triglicer* urea creatinin* kreatinin* uric urin* orina mocz virtsa coverage abdeckung cobertura couverture copertura dekking tackning kattavuus ziel* zielwert objetivo objectif doel doelwaarde tavoite cel predict* forecast* vorhersage* prognose* prognos previsto prevision prevue prevu ennuste durchschnitts* mittlere* gemiddeld* genomsnitt* keskiarvo srednia medio media moyen % protein* prot fibre fiber calorie* calories kcal energy weight gewicht peso poids vikt vekt paino waga hmotnost* testsuly* pulse heart steps step distance temperature created modified updated upload uploaded sync synced export exported birth birthday dob gender age delta sd battery ratio factor sensitivity remaining board iob cob predicted forecast vorhergesagt* forutsag* forudsag* przewidywan* varhato* numatom* malgluk* docelow* vise cible alvo meta tikslin* raw met sum total percent mittelwert durchschnitt moyenne media promedio',
  rest: 'sedentary resting still rest inactive sleep sleeping sitting idle',
};

/** Scripts that part no words: Thai, kana, Han, Hangul. */
export const UNPARTED = /[\u0e00-\u0e7f\u3040-\u30ff\u3400-\u9fff\uac00-\ud7af]/;
/** Letters beyond Latin ones. */
const OTHER_LETTERS = /[\u0370-\u1fff\u3040-\ud7ff]/;

interface Stems {
  starts: [string, Concept][];
  inside: [string, Concept][];
  finishes: [string, Concept][];
}
const exact = new Map<string, Concept[]>();
const latin: Stems = { starts: [], inside: [], finishes: [] };
const others: Stems = { starts: [], inside: [], finishes: [] };

function learn(words: Partial<Record<Concept, string>>): void {
  for (const [concept, list] of Object.entries(words) as [Concept, string][]) {
    for (const word of list.split(' ')) {
      const bare = word.replaceAll('*', '');
      const stems = OTHER_LETTERS.test(bare) ? others : latin;
      if (UNPARTED.test(bare) || (word.startsWith('*') && word.endsWith('*'))) stems.inside.push([bare, concept]);
      else if (word.startsWith('*')) stems.finishes.push([bare, concept]);
      else if (word.endsWith('*')) stems.starts.push([bare, concept]);
      else exact.set(word, [...(exact.get(word) ?? []), concept]);
    }
  }
}
for (const words of [WORDS, ...Object.values(languages)]) learn(words);

/** Languages in other letters, learnt when the first such word is met. */
const learnScripts = once(() => Object.values(scripts).forEach(learn));

/** Words of a header or label: parted at blanks, signs, underscores and `camelCase` humps. */
export function tokens(text: string): string[] {
  return plain(text.replace(/([a-z])([A-Z][a-z])/g, '$1 $2'))
    .split(BEYOND_ASCII.test(text) ? /[^\p{L}\p{M}\p{N}%]+/u : /[^a-z0-9%]+/)
    .filter((word) => word.length > 0);
}

/** Words that turn the noun behind them into what it is not. */
const WITHOUT = new Set(
  'non no not without ohne kein keine nicht sin sans pas senza sem nao zonder geen niet utan ingen inte uden ikke ilman ei bez nie ne nem fara brez be без не χωρις οχι بدون غير ללא לא'.split(
    ' ',
  ),
);

/** Every meaning the words carry. What a word of denial stands before means the opposite, so it is left out. */
export function conceptsOf(words: string[]): Set<Concept> {
  const found = new Set<Concept>();
  // Blanks of scripts that need none part no words.
  if (words.length > 1 && UNPARTED.test(words[0]!)) words = [...words, words.join('')];
  for (let i = 0; i < words.length; i++) {
    const word = words[i]!;
    if (i + 1 < words.length && WITHOUT.has(word)) {
      // What is given instead of insulin is a medicine.
      if (conceptsOf([words[i + 1]!]).has('insulin')) found.add('medication');
      i++;
      continue;
    }
    const other = OTHER_LETTERS.test(word);
    if (other) learnScripts();
    const known = exact.get(word);
    if (known) {
      for (const concept of known) found.add(concept);
      continue;
    }
    if (word.length < 4 && !other) continue;
    const { starts, inside, finishes } = other ? others : latin;
    for (const [stem, concept] of starts) if (word.startsWith(stem)) found.add(concept);
    for (const [stem, concept] of inside) if (word.includes(stem)) found.add(concept);
    for (const [stem, concept] of finishes) if (word.endsWith(stem)) found.add(concept);
  }
  return found;
}
