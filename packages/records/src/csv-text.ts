/** What a CSV reader has to know before it reads: where the text begins and what parts its cells. */

export type Delimiter = ',' | ';' | '\t';

/** The text without a byte order mark. */
export function csvTextFrom(text: string): string {
  return text.replace(/^\ufeff+/, '');
}

/** The sign that parts most cells of the first row that holds any, outside quotes; a comma when none does. */
export function delimiterOf(text: string): Delimiter {
  const counts: Record<Delimiter, number> = { ',': 0, ';': 0, '\t': 0 };
  let quoted = false;
  for (const sign of csvTextFrom(text)) {
    if (sign === '"') quoted = !quoted;
    else if (quoted) continue;
    else if (sign === ',' || sign === ';' || sign === '\t') counts[sign] += 1;
    else if ((sign === '\n' || sign === '\r') && counts[','] + counts[';'] + counts['\t'] > 0) break;
  }
  const [first] = ([',', ';', '\t'] as const).toSorted((a, b) => counts[b] - counts[a]);
  return first ?? ',';
}
