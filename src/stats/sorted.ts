/** Index of the first of `count` ascending numbers that is `least` or more; `count` where none is. */
export function firstFrom(ascending: ArrayLike<number>, count: number, least: number): number {
  let low = 0;
  let high = count;
  while (low < high) {
    const middle = (low + high) >>> 1;
    if (ascending[middle]! < least) low = middle + 1;
    else high = middle;
  }
  return low;
}
