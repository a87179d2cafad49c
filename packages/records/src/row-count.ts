/** How many pieces a row stands for. */
import type { DimensionReading } from './dimension-reading.ts';
import { numberRangeOf } from './object-number.ts';
import type { Tell } from './row-issue.ts';

/** The Count cell, else a range of numbers (`1902.7.1–60`), else `set of 12` among the dimensions, else 1; at most `most`. */
export function countFrom(
  cell: string,
  number: string,
  dimensions: DimensionReading | null,
  most: number,
  tell: Tell,
): number {
  const inNumber = numberRangeOf(number)?.count ?? null;
  const inDimensions = dimensions?.quantity ?? null;
  const said = [inNumber, inDimensions].filter((count) => count !== null);
  const fits = (count: number) => Number.isInteger(count) && count >= 1 && count <= most;
  const elsewhere = said.find(fits) ?? 1;
  const tooMany = said.find((count) => count > most);
  if (cell === '') {
    if (tooMany !== undefined)
      tell('count', 'count not understood', `${tooMany} pieces are more than a show holds, ${most}. It counts as one.`);
    else if (said.length === 2 && inNumber !== inDimensions) {
      const choices = said.map(String);
      tell('count', 'counts disagree', `The number names ${inNumber} pieces, the dimensions ${inDimensions}.`, {
        choices,
      });
    }
    return elsewhere;
  }
  const stated = /^(\d{1,9})\s*(pcs?\.?|pieces?|items?|objects?|parts?|x)?$/i.exec(cell)?.[1];
  const count = stated === undefined ? Number.NaN : Number(stated);
  if (!fits(count)) {
    const why = count > most ? `${count} pieces are more than a show holds, ${most}` : 'Not a number of pieces';
    tell('count', 'count not understood', `${why}. It counts as ${elsewhere}.`);
    return elsewhere;
  }
  if (inNumber !== null && inNumber !== count) {
    const choices = [String(count), String(inNumber)];
    tell('count', 'counts disagree', `The column says ${count}, the number names ${inNumber}. The column is taken.`, {
      choices,
    });
  }
  return count;
}
