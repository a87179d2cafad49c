/** '1–3, 7': figures with their runs drawn together; two that follow each other are said singly. */
export function runsText(figures: readonly number[]): string {
  const sorted = [...new Set(figures)].sort((a, b) => a - b);
  const parts: string[] = [];
  for (let at = 0; at < sorted.length; ) {
    let end = at;
    while (sorted[end + 1] === (sorted[end] ?? 0) + 1) end += 1;
    if (end - at >= 2) parts.push(`${sorted[at]}–${sorted[end]}`);
    else for (let one = at; one <= end; one += 1) parts.push(String(sorted[one]));
    at = end + 1;
  }
  return parts.join(', ');
}
