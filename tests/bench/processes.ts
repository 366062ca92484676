import { readdirSync, readFileSync } from 'node:fs';

const read = (path: string): string => {
  try {
    return readFileSync(path, 'utf8');
  } catch {
    // It has ended.
    return '';
  }
};
const statOf = (pid: number): string[] => {
  const stat = read(`/proc/${pid}/stat`);
  return stat.slice(stat.lastIndexOf(')') + 2).split(' ');
};

/** Megabytes that a process holds for itself, with its part of what it shares. */
export const memoryOf = (pid: number): number =>
  Number(/^Pss:\s+(\d+)/m.exec(read(`/proc/${pid}/smaps_rollup`))?.[1] ?? 0) / 1024;

/** Seconds of processor that it has used (a tick is a hundredth, as Linux has it on all usual machines). */
export const cpuOf = (pid: number): number => {
  const [user = 0, system = 0] = statOf(pid).slice(11, 13).map(Number);
  return (user + system) / 100;
};

/** Processes below one. */
export function below(parent: number): number[] {
  const children = readdirSync('/proc')
    .filter((name) => /^\d+$/.test(name) && Number(statOf(Number(name))[1]) === parent)
    .map(Number);
  return children.flatMap((child) => [child, ...below(child)]);
}
