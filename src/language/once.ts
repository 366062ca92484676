/** Intl formatters are slow to build and quick to use, so each is built once, when first needed. */
export function once<K, V>(build: (key: K) => V): (key: K) => V {
  const built = new Map<K, V>();
  return (key) => {
    let value = built.get(key);
    if (value === undefined) {
      value = build(key);
      built.set(key, value);
    }
    return value;
  };
}
