/**
 * Glucose and insulin of one person, minute by minute: published equations, simplified. See ../README.md for sources.
 * Glucose mg/dL, insulin in plasma µU/mL, doses U, carbohydrate g, time min.
 */
export interface Body {
  weightKg: number;
  /** Glucose the usual long-acting dose settles at without food, mg/dL. */
  settlesAt: number;
  /** Usual long-acting dose, U a day. */
  usualLongActing: number;
  /** Insulin sensitivity SI, per min per µU/mL (Bergman 1981). */
  sensitivity: number;
  /** Glucose effectiveness p1, per min. */
  effectiveness: number;
  /** Rise of the liver's output at the height of the dawn, as a share. */
  dawn: number;
  /** Own secretion, µU/mL a minute per mg/dL above 90; 0 in type 1. */
  secretion: number;
  /** How strongly the liver answers a low: 1 = fully, less after many lows. */
  answers: number;
  /** How strongly movement acts: uptake during it, sensitivity in the hours after. */
  movement: { during: number; after: number };
}

export interface BodyState {
  glucose: number;
  tissue: number;
  action: number;
  insulin: number;
  rapid1: number;
  rapid2: number;
  long1: number;
  long2: number;
  meals: { gut1: number; gut2: number; minutes: number }[];
  moving: number;
  after1: number;
  after2: number;
}

/** Remote insulin action p2, per min (Bergman; from memory). */
const ACTION_RATE = 0.025;
/** Hovorka 2004 (from memory): time to peak of rapid insulin, clearance, volume. */
const RAPID_MINUTES = 55;
const CLEARANCE = 0.138;
const INSULIN_ML_PER_KG = 120;
const GLUCOSE_DL_PER_KG = 1.6;
const CARBOHYDRATE_SHARE = 0.8;
/** Two compartments in a row for long-acting insulin; ours. */
const LONG_MINUTES = 540;
/** Plasma to tissue, ours from the usual 5 to 10 minutes. */
const LAG_MINUTES = 8;

function usualInsulin(body: Body): number {
  const perMinute = (body.usualLongActing * 1e6) / 1440 / (body.weightKg * INSULIN_ML_PER_KG);
  return (perMinute + body.secretion * Math.max(0, body.settlesAt - 90)) / CLEARANCE;
}

export function settled(body: Body, glucose: number): BodyState {
  const insulin = usualInsulin(body);
  const depot = (body.usualLongActing / 1440) * LONG_MINUTES;
  return {
    glucose,
    tissue: glucose,
    action: body.sensitivity * insulin,
    insulin,
    rapid1: 0,
    rapid2: 0,
    long1: depot,
    long2: depot,
    meals: [],
    moving: 0,
    after1: 0,
    after2: 0,
  };
}

/** One minute on. `wallMinute` is the minute of the local day, `factor` today's sensitivity, `effort` 0 to 1. */
export function stepMinute(body: Body, state: BodyState, wallMinute: number, factor: number, effort: number): void {
  const volume = body.weightKg * INSULIN_ML_PER_KG;
  const usual = usualInsulin(body);

  let appearing = 0;
  for (const meal of state.meals) {
    const first = meal.gut1 / meal.minutes;
    const second = meal.gut2 / meal.minutes;
    meal.gut1 -= first;
    meal.gut2 += first - second;
    appearing += second;
  }
  state.meals = state.meals.filter((meal) => meal.gut1 + meal.gut2 > 0.01);
  const fromFood = (appearing * 1000 * CARBOHYDRATE_SHARE) / (GLUCOSE_DL_PER_KG * body.weightKg);

  const rapid = state.rapid2 / RAPID_MINUTES;
  const long = state.long2 / LONG_MINUTES;
  state.rapid2 += state.rapid1 / RAPID_MINUTES - rapid;
  state.rapid1 -= state.rapid1 / RAPID_MINUTES;
  state.long2 += state.long1 / LONG_MINUTES - long;
  state.long1 -= state.long1 / LONG_MINUTES;
  const own = body.secretion * Math.max(0, state.glucose - 90);
  state.insulin += ((rapid + long) * 1e6) / volume + own - CLEARANCE * state.insulin;

  // Movement: quick uptake, and a slow wave of sensitivity that peaks some hours later (McMahon 2007, Davey 2013).
  state.moving += (effort - state.moving) / 10;
  state.after1 += effort / 60 - state.after1 / 200;
  state.after2 += (state.after1 - state.after2) / 200;

  const sensitivity = body.sensitivity * factor * (1 + body.movement.after * state.after2);
  state.action += ACTION_RATE * (sensitivity * state.insulin - state.action);

  const balance = (body.effectiveness + body.sensitivity * usual) * body.settlesAt;
  const dawn = 1 + body.dawn * bump(wallMinute, 210, 390, 570);
  // Counter-regulation, ours: the liver answers below 70, more so the lower.
  const answer = 1 + body.answers * Math.min(1.5, Math.max(0, (70 - state.glucose) / 22));
  // What the kidneys spill above 200 is taken out slowly (Hovorka 2004: 0.003 a minute over 9 mmol/L).
  const spilled = 0.003 * Math.max(0, state.glucose - 180);
  const uptake = body.effectiveness + state.action + body.movement.during * state.moving;
  state.glucose = Math.max(25, state.glucose + balance * dawn * answer + fromFood - uptake * state.glucose - spilled);
  state.tissue += (state.glucose - state.tissue) / LAG_MINUTES;
}

/** 0 outside, rising to 1 at `top`: a tent. */
function bump(minute: number, from: number, top: number, to: number): number {
  if (minute <= from || minute >= to) return 0;
  return minute < top ? (minute - from) / (top - from) : (to - minute) / (to - top);
}
