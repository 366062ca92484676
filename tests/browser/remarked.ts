/** Half a month of invented readings every half hour, with more remarks than the report has room for. */
export function remarked(): string {
  const two = (n: number): string => String(n).padStart(2, '0');
  const rows = Array.from({ length: 15 * 48 }, (_, i) => {
    const at = `2026-03-${two(2 + Math.floor(i / 48))} ${two(Math.floor(i / 2) % 24)}:${two(30 * (i % 2))}`;
    const remark = i % 6 === 0 ? `remark ${i}: slept badly after a late film and walked home` : '';
    return `${at},${130 + Math.round(40 * Math.sin(i / 7))},${remark}`;
  });
  return ['Time,Glucose (mg/dL),Remark', ...rows, ''].join('\n');
}
