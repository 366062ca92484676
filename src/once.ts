/** What is dear to make is made when it is first asked for, and once for each `key`. */
export function once<V, K = void>(make: (key: K) => V): (key: K) => V {
  const made = new Map<K, V>();
  return (key) => {
    if (!made.has(key)) made.set(key, make(key));
    return made.get(key) as V;
  };
}
