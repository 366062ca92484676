/** What is dear to make is made when it is first asked for, and once for each `key`. */
export function once<V, K = void>(make: (key: K) => V): (key: K) => V {
  const known = new Map<K, V>();
  return (key) => {
    if (!known.has(key)) known.set(key, make(key));
    return known.get(key) as V;
  };
}
