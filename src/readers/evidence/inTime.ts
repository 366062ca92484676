/** Values in order of time, with the row each came from. */
export interface Series {
  value: Float64Array;
  wall: Float64Array;
  row: Int32Array;
}

/** Puts values in order of time; rows without a number or a time are left out. Rows already in order cost no sorting. */
export function inTime(value: Float64Array, wall: Float64Array): Series {
  let n = 0;
  let up = true;
  let down = true;
  let last = Number.NaN;
  const row = new Int32Array(value.length);
  for (let k = 0; k < value.length; k++) {
    const t = wall[k]!;
    if (Number.isNaN(value[k]!) || Number.isNaN(t)) continue;
    if (t < last) up = false;
    else if (t > last) down = false;
    last = t;
    row[n++] = k;
  }
  const rows = row.subarray(0, n);
  if (!up && down) rows.reverse();
  else if (!up) rows.sort((a, b) => wall[a]! - wall[b]! || a - b);
  return {
    value: Float64Array.from(rows, (k) => value[k]!),
    wall: Float64Array.from(rows, (k) => wall[k]!),
    row: rows,
  };
}
