/** The day on the wall of whoever has the page open, YYYY-MM-DD: the one place where it asks what day it is. */
export function today(): string {
  const now = new Date();
  const two = (n: number): string => String(n).padStart(2, '0');
  return `${now.getFullYear()}-${two(now.getMonth() + 1)}-${two(now.getDate())}`;
}
