import { readFileSync } from 'node:fs';
import { join } from 'node:path';

/** Rows of a tab-separated file of the open data, without its headings; line ends within a cell stand as \r and \n. */
export function rowsOf(file: string): string[][] {
  const folder = process.env.OPEN_DATA;
  if (!folder) throw new Error('OPEN_DATA names no folder; run npm run test:open-data -- FOLDER');
  return readFileSync(join(folder, 'records', file), 'utf8')
    .split('\n')
    .slice(1)
    .filter((line) => line !== '')
    .map((line) => line.split('\t').map((cell) => cell.replaceAll('\\r', '\r').replaceAll('\\n', '\n')));
}

/** The ten commonest shapes (figures as 0, words as they are) among texts, each with its first text. */
export function worstShapes(texts: readonly string[]): string[] {
  const shapes = new Map<string, { count: number; first: string }>();
  for (const text of texts) {
    const shape = text.replace(/ \|.*$/s, '').replace(/\d+/g, '0');
    const known = shapes.get(shape);
    if (known) known.count += 1;
    else shapes.set(shape, { count: 1, first: text });
  }
  return [...shapes.values()]
    .toSorted((a, b) => b.count - a.count)
    .slice(0, 10)
    .map(({ count, first }) => `${String(count).padStart(4)} × ${first.replace(/\s+/g, ' ')}`);
}
