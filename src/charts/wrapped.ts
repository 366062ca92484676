import { roughWidth } from './context.ts';

/** Lines that end within a width, broken between words. */
export function wrapped(content: string, width: number, size: number): string[] {
  const lines: string[] = [];
  for (const next of content.split(' ')) {
    const last = lines.pop();
    const longer = last === undefined ? next : `${last} ${next}`;
    if (last !== undefined && roughWidth(longer, size) > width) lines.push(last, next);
    else lines.push(longer);
  }
  return lines;
}
