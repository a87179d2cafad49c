/** A table as an XLSX workbook in which every cell is text. */

/** Headings first. Text cells in the text format: no spreadsheet makes dates, figures or formulas of them. */
export async function xlsxFrom(table: readonly (readonly string[])[], sheet: string): Promise<Uint8Array<ArrayBuffer>> {
  const { utils, write } = await import('@e965/xlsx');
  const cells = table.map((row) =>
    // A cell of a spreadsheet holds 32,767 characters (ECMA-376 part 1, 18.3.1.96 and its producers' limit).
    row.map((text) => (text === '' ? null : { t: 's' as const, v: text.slice(0, 32_767), z: '@' })),
  );
  const made = utils.aoa_to_sheet(cells, { dense: true });
  made['!cols'] = (table[0] ?? []).map((_, column) => ({
    wch: Math.min(40, Math.max(10, ...table.slice(0, 200).map((row) => (row[column] ?? '').length))),
  }));
  const book = utils.book_new();
  utils.book_append_sheet(book, made, sheet);
  return new Uint8Array(write(book, { type: 'array', bookType: 'xlsx', compression: true }) as ArrayBuffer);
}
