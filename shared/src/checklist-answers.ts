/** A person's answers to a checklist's questions: chosen, typed, given to all that are alike, and what then goes in. */
import { MAX_ROWS } from '@enfilade/records/checklist-rows';
import { dimensionsFrom } from '@enfilade/records/dimensions';
import { outerSizeOf } from '@enfilade/records/outer-size';
import type { RowIssue } from '@enfilade/records/row-issue';
import { type ChecklistRow, measuredFrom, type RowAnswer, type RowWait } from './checklist-reading.ts';

/** What a person may type in place of a cell that waits; null where there is nothing to type. */
export function typedFieldOf(issue: RowIssue): 'size' | 'weight' | 'count' | 'number' | null {
  if (issue.field === 'weight' || issue.field === 'count' || issue.field === 'number') return issue.field;
  return issue.field === 'dimensions' || issue.field === 'framedDimensions' ? 'size' : null;
}

/** The answer a person typed; null where it cannot be read. A size needs height, width and a unit: none is guessed. */
export function typedAnswer(issue: RowIssue, typed: string): RowAnswer | null {
  const label = typed.trim();
  switch (label === '' ? null : typedFieldOf(issue)) {
    case 'size': {
      const size = outerSizeOf({ dimensions: dimensionsFrom(label) });
      return size === null ? null : { label, fields: { measured: measuredFrom(size) } };
    }
    case 'weight': {
      const kg = dimensionsFrom(label).weight?.kg;
      return kg === undefined ? null : { label, fields: { weightKg: kg } };
    }
    case 'count': {
      const count = Number(label);
      return Number.isInteger(count) && count >= 1 && count <= MAX_ROWS ? { label, fields: { count } } : null;
    }
    case 'number':
      return { label, fields: { number: label } };
    default:
      return null;
  }
}

/** The waits of a row, those of one cell together: one answer settles its cell. */
export function cellsOf(row: ChecklistRow): readonly (readonly RowWait[])[] {
  const cells = new Map<string, RowWait[]>();
  for (const wait of row.waits) {
    const key = `${wait.issue.heading}/${wait.issue.field ?? ''}`;
    cells.set(key, [...(cells.get(key) ?? []), wait]);
  }
  return [...cells.values()];
}

/** Nothing of the row waits any more: every cell is understood, or answered. */
export function isUnderstood(row: ChecklistRow, answers: ReadonlyMap<string, RowAnswer>): boolean {
  return cellsOf(row).every((waits) => waits.some(({ key }) => answers.has(key)));
}

/** A row with the answers given, the later ones standing; null where it stays out. */
export function answeredRow(row: ChecklistRow, answers: readonly RowAnswer[]): ChecklistRow | null {
  if (answers.some(({ leaveOut }) => leaveOut)) return null;
  if (answers.length === 0) return row;
  const sourceStated = row.sourceStated || answers.some(({ fields }) => fields?.source !== undefined);
  return { ...row, sourceStated, object: Object.assign({}, row.object, ...answers.map(({ fields }) => fields)) };
}

/**
 * The latest answer given to every other row that still waits with the same question under the same heading and offers
 * the same; the latest is the last of `answers`.
 */
export function alikeAnswers(
  rows: readonly ChecklistRow[],
  answers: ReadonlyMap<string, RowAnswer>,
): readonly (readonly [key: string, answer: RowAnswer])[] {
  const latest = [...answers].at(-1);
  if (latest === undefined) return [];
  const [latestKey, { label }] = latest;
  const question = latestKey.slice(latestKey.indexOf('/'));
  return rows.flatMap((row) =>
    cellsOf(row).flatMap((waits) => {
      const wait = waits.find(({ key }) => key.slice(key.indexOf('/')) === question);
      const answer = wait?.answers.find((one) => one.label === label);
      if (wait === undefined || answer === undefined || waits.some(({ key }) => answers.has(key))) return [];
      return [[wait.key, answer] as const];
    }),
  );
}
