/** What does not fit at a place of parsed JSON: the place and what stands there (for an unknown name the place alone). Empty when it fits. */
export type Place = (value: unknown, at: string) => string[];

const wrong = (value: unknown, at: string): string[] => [`${at || 'layout'}: ${shown(value).slice(0, 60)}`];

/** Of a list or an object only that it is one: it may be nested too deep to be written out. */
function shown(value: unknown): string {
  if (Array.isArray(value)) return value.length > 0 ? '[…]' : '[]';
  return isRecord(value) ? '{…}' : (JSON.stringify(value) ?? '');
}

const when = (fits: boolean, value: unknown, at: string): string[] => (fits ? [] : wrong(value, at));
const under = (at: string, name: string | number): string => (at === '' ? `${name}` : `${at}.${name}`);

export const isRecord = (value: unknown): value is Record<string, unknown> =>
  typeof value === 'object' && value !== null && !Array.isArray(value);

/** So many mistakes of one file are told; whoever made more has given the wrong file. */
export const MOST_TOLD = 20;

/** So few choices are told with what stands there. */
const FEW = 6;

export const oneOf = (...allowed: readonly unknown[]): Place => {
  const choices = allowed.length > FEW ? '' : ` (${allowed.map((one) => JSON.stringify(one)).join(' | ')})`;
  return (value, at) => (allowed.includes(value) ? [] : wrong(value, at).map((told) => told + choices));
};

/** A text of so many UTF-16 units. */
export const text = (least: number, most: number): Place => {
  return (value, at) => when(typeof value === 'string' && value.length >= least && value.length <= most, value, at);
};

export const someText = (fits: (value: string) => boolean): Place => {
  return (value, at) => when(typeof value === 'string' && fits(value), value, at);
};

export const finite: Place = (value, at) => when(Number.isFinite(value), value, at);

export const whole = (least: number): Place => {
  return (value, at) => when(Number.isSafeInteger(value) && (value as number) >= least, value, at);
};

export const yesOrNo = oneOf(true, false);

/** Names of any kind, each with a value that fits. */
export const named = (each: Place): Place => {
  return (value, at) =>
    isRecord(value) ? Object.entries(value).flatMap(([name, one]) => each(one, under(at, name))) : wrong(value, at);
};

export const orNull = (each: Place): Place => {
  return (value, at) => (value === null ? [] : each(value, at));
};

/** A list with at least so many members. */
export const list = (each: Place, least = 0): Place => {
  return (value, at) =>
    Array.isArray(value) && value.length >= least
      ? value.flatMap((one, i) => each(one, under(at, i)))
      : wrong(value, at);
};

/** Known names only, all of which may be absent but those that are needed. */
export const shaped = (places: Record<string, Place>, needed: readonly string[] = []): Place => {
  return (value, at) => {
    if (!isRecord(value)) return wrong(value, at);
    const missing = needed.filter((name) => value[name] === undefined);
    return [
      ...missing.map((name) => under(at, name)),
      ...Object.entries(value).flatMap(([name, one]) => {
        if (!Object.hasOwn(places, name)) return [under(at, name)];
        return one === undefined ? [] : places[name]!(one, under(at, name));
      }),
    ];
  };
};

/** All these names, and whatever a later program has added. */
export const atLeast = <T>(places: Record<keyof T & string, Place>): Place => {
  return (value, at) => {
    if (!isRecord(value)) return wrong(value, at);
    return Object.entries<Place>(places).flatMap(([name, place]) =>
      Object.hasOwn(value, name) ? place(value[name], under(at, name)) : [under(at, name)],
    );
  };
};
