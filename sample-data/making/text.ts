const two = (n: number): string => String(n).padStart(2, '0');

/** Wall clock in ms as if UTC -> its parts, as text. */
export function parts(wall: number) {
  const date = new Date(wall);
  const hour = date.getUTCHours();
  return {
    year: String(date.getUTCFullYear()),
    month: two(date.getUTCMonth() + 1),
    day: two(date.getUTCDate()),
    hour: two(hour),
    minute: two(date.getUTCMinutes()),
    hour12: String(hour % 12 === 0 ? 12 : hour % 12),
    half: hour < 12 ? 'AM' : 'PM',
  };
}

export const isoMinute = (wall: number): string => {
  const p = parts(wall);
  return `${p.year}-${p.month}-${p.day} ${p.hour}:${p.minute}`;
};

/** A row of delimited text; a cell is quoted only when it must be. */
export function row(cells: readonly (string | number | undefined)[], delimiter: string): string {
  return cells
    .map((cell) => {
      const text = cell === undefined ? '' : String(cell);
      return text.includes(delimiter) || text.includes('"') || text.includes('\n')
        ? `"${text.replaceAll('"', '""')}"`
        : text;
    })
    .join(delimiter);
}

export const lines = (rows: readonly string[], end = '\n'): string => rows.map((text) => text + end).join('');

export const utf8 = (text: string): Uint8Array => new TextEncoder().encode(text);
