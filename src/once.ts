/** What is dear to make is made when it is first asked for, and once for each `key`. */
export function once<V, K = void>(make: (key: K) => V): (key: K) => V {
  const known = new Map<K, V>();
  return (key) => {
    if (!known.has(key)) known.set(key, make(key));
    return known.get(key) as V;
  };
}

/** As `once`, for texts of files: beyond `most` of them each is made anew, so that no file fills the memory. `make` gives no undefined. */
export function onceUpTo<V>(most: number, make: (text: string) => V): (text: string) => V {
  const known = new Map<string, V>();
  return (text) => {
    const found = known.get(text);
    if (found !== undefined) return found;
    const value = make(text);
    if (known.size < most) known.set(text, value);
    return value;
  };
}
