import type { DimensionPart, DimensionReading, Measure } from '@enfilade/records/dimension-reading';
import { dimensionsFrom } from '@enfilade/records/dimensions';
import { describe, expect, test } from 'vitest';
import { rowsOf, worstShapes } from './rows.ts';

// Museums' open data (CC0), read where it lies. Scores agreed: a little under what is reached.
const AGREED = { heightAndWidth: 0.998, inchesAndCentimetres: 0.998 };

interface Score {
  agree: number;
  told: number;
  /** The museum's own figures contradict its text. */
  atOdds: number;
  /** Texts read otherwise than the museum does, with no word about it. */
  readonly silent: string[];
  readonly unread: string[];
}

function report(what: string, { agree, told, atOdds, silent, unread }: Score): void {
  const worst = [...silent.map((text) => `in silence: ${text}`), ...unread];
  const all = agree + told + silent.length;
  const share = ((100 * agree) / all).toFixed(2);
  console.log(
    `${what}: ${agree} of ${all} agree (${share} %), ${told} told as an issue, ${silent.length} wrong in silence; ` +
      `${atOdds} left out, where the museum's figures are not those of its text.`,
  );
  for (const shape of worstShapes(worst)) console.log(`  ${shape}`);
}

describe('reference: dimension texts beside the museum’s own figures', () => {
  test('reference: Tate open data, heights and widths in mm (dimensions-tate-gold.tsv)', () => {
    const score: Score = { agree: 0, told: 0, atOdds: 0, silent: [], unread: [] };
    for (const [raw = '', height = '', width = '', depth = ''] of rowsOf('dimensions-tate-gold.tsv')) {
      const reading = dimensionsFrom(raw);
      const stated = [height, width, depth].filter((figure) => figure !== '').map(Number);
      if (lostItsFirst(raw, stated)) score.atOdds += 1;
      else if (reading.parts.some((part) => says(part, stated))) score.agree += 1;
      else if (reading.issues.length > 0) {
        score.told += 1;
        score.unread.push(`${raw} | ${reading.issues[0]?.what ?? ''}`);
      } else score.silent.push(`${raw} | ${stated.join(', ')}`);
    }
    report('Tate', score);
    expect(score.agree / (score.agree + score.told + score.silent.length)).toBeGreaterThanOrEqual(
      AGREED.heightAndWidth,
    );
    expect(score.silent).toEqual([]);
  });

  test('reference: Williams College Museum of Art, inches beside centimetres (dimensions-wcma.tsv)', () => {
    const score: Score = { agree: 0, told: 0, atOdds: 0, silent: [], unread: [] };
    for (const [raw = '', inches = ''] of rowsOf('dimensions-wcma.tsv')) {
      const reading = dimensionsFrom(raw);
      const stated = inches.split(';').map((inch) => Number(inch) * 25.4);
      const read = reading.parts.flatMap(measuresOf).map(({ mm }) => mm ?? Number.NaN);
      const agrees = stated.every((mm) => read.some((other) => Math.abs(other - mm) < 0.6));
      const conflict = reading.issues.some(({ kind }) => kind === 'systems disagree');
      if (agrees && !conflict) score.agree += 1;
      else if (reading.issues.length > 0) {
        score.told += 1;
        score.unread.push(`${raw} | ${reading.issues[0]?.what ?? ''}`);
      } else score.silent.push(`${raw} | ${inches}`);
    }
    report('Williams', score);
    expect(score.agree / (score.agree + score.told + score.silent.length)).toBeGreaterThanOrEqual(
      AGREED.inchesAndCentimetres,
    );
    expect(score.silent).toEqual([]);
  });
});

/** The source's columns dropped the first of three figures in some rows: two stated, and they are the text's last two. */
function lostItsFirst(raw: string, stated: readonly number[]): boolean {
  const figures = /^\D*?(\d+)\s*x\s*(\d+)\s*x\s*(\d+)/.exec(raw)?.slice(1).map(Number);
  const [first, second, third] = figures ?? [];
  return stated.length === 2 && stated[0] === second && stated[1] === third && !(first === second && second === third);
}

function measuresOf(part: DimensionReading['parts'][number]): Measure[] {
  return [part.height, part.width, part.depth, part.diameter, part.length].filter((measure) => measure !== undefined);
}

function says(part: DimensionPart, stated: readonly number[]): boolean {
  const [height, width, depth] = stated;
  const near = (measure: Measure | undefined, mm: number | undefined) =>
    mm === undefined || (measure !== undefined && measure.mm !== null && Math.abs(measure.mm - mm) <= 1);
  return (
    near(part.height ?? part.diameter, height) &&
    near(part.width ?? part.length ?? part.diameter, width) &&
    near(part.depth ?? part.diameter, depth)
  );
}
