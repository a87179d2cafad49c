/** Which sheet of a spreadsheet is read, and what is told of those that are not. */
import type { ChecklistField } from '@enfilade/records/checklist-headings';
import { mappingFrom } from '@enfilade/records/checklist-headings';
import { headingRowsOf } from '@enfilade/records/heading-rows';
import type { ImportedTable, ImportIssue } from '@enfilade/records/imported-table';
import type { SheetGrid } from '@enfilade/records/sheet-grid';
import { sheetTableFrom } from '@enfilade/records/sheet-table';
import { type Imported, NotImported, type SheetName } from './importer.ts';

/** The name of the sheet that looks most like a checklist, of those that are seen; of equals the first. */
export function likeliestSheet(tops: readonly SheetGrid[]): string | null {
  let best: { readonly name: string; readonly score: number } | null = null;
  for (const grid of tops) {
    if (grid.hidden) continue;
    const found = headingRowsOf(grid);
    const mapping = found === null ? [] : mappingFrom(found.headings);
    const score = mapping.filter((field) => field !== null).length + (mapping.includes('number') ? 2 : 0);
    if (best === null || score > best.score) best = { name: grid.name, score };
  }
  return best?.name ?? null;
}

/** @throws NotImported where the sheet holds no table. */
export function importedSheet(grid: SheetGrid, sheets: readonly SheetName[], about: string): Imported {
  const others = sheets.filter(({ name }) => name !== grid.name);
  const told: ImportIssue[] = others.map(({ name, hidden }) => ({
    where: `Sheet “${name}”`,
    what: hidden
      ? 'It is hidden in the file and was not read; choose it to read it.'
      : 'It was not read; choose it to read it.',
    value: '',
  }));
  const asked = sheets.find(({ name }) => name === grid.name)?.hidden === true;
  if (asked)
    told.unshift({
      where: `Sheet “${grid.name}”`,
      what: 'It is hidden in the file, and read because you asked.',
      value: '',
    });
  const tableOf = (numberColumn?: number | null): ImportedTable => {
    const table = sheetTableFrom(grid, numberColumn);
    return { ...table, issues: [...told, ...table.issues] };
  };
  const table = tableOf();
  if (table.cells.length < 2) {
    const hidden = others.filter((one) => one.hidden).length;
    const more = hidden === 0 ? '' : ` ${hidden === 1 ? 'One sheet is' : `${hidden} sheets are`} hidden in it.`;
    throw new NotImported(`Sheet “${grid.name}” has headings at most, and no row below them.${more}`);
  }
  return {
    table,
    about,
    sheets,
    sheet: grid.name,
    mended: (mapping: readonly (ChecklistField | null)[]) => {
      const column = mapping.indexOf('number');
      return tableOf(column < 0 ? null : column);
    },
  };
}
