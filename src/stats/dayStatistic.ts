/** A number made of sums over days: `of` takes one sum a column and does not change when all sums are doubled. */
export interface DayStatistic {
  columns: Float64Array[];
  of(sums: readonly number[]): number;
}

/** How much each day pulls the statistic: its columns times the slope of `of` in each (the slopes taken numerically). */
export function influence({ columns, of }: DayStatistic): { value: number; perDay: Float64Array } {
  const sums = columns.map(total);
  const value = of(sums);
  const scale = Math.max(...sums.map(Math.abs)) || 1;
  const slopes = sums.map((sum, k) => {
    const step = 1e-5 * (Math.abs(sum) || scale);
    const near = (by: number) => of(sums.map((each, j) => (j === k ? each + by : each)));
    return (near(step) - near(-step)) / (2 * step);
  });
  const perDay = columns[0]!.map((_, day) => columns.reduce((pull, column, k) => pull + slopes[k]! * column[day]!, 0));
  return { value, perDay };
}

export function total(values: Float64Array): number {
  let sum = 0;
  for (let i = 0; i < values.length; i++) sum += values[i]!;
  return sum;
}
