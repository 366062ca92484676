/**
 * How deep headings lie under one another: those of one level that follow each other are siblings, however deep the last one lay,
 * and no level is skipped. `over` are levels of headings that stand above all others.
 */
export function outline(over: readonly number[] = []): (level: number) => number {
  const open = [...over];
  return (level) => {
    while (open.length > 0 && open.at(-1)! >= level) open.pop();
    open.push(level);
    return Math.min(open.length, DEEPEST);
  };
}

/** PDF and HTML know six levels. */
const DEEPEST = 6;
