/** A table handed to the person as a workbook. */
import { writeXlsx } from '../workers/xlsx-writer.ts';
import { download } from './download.ts';

/** Of a workbook (ECMA-376). */
const XLSX_TYPE = 'application/vnd.openxmlformats-officedocument.spreadsheetml.sheet';

/** Answers whether it came; where it did not and was not stopped, what is to be said of it. */
export async function takeWorkbook(
  table: readonly (readonly string[])[],
  sheet: string,
  fileName: string,
  signal: AbortSignal,
): Promise<{ readonly came: boolean; readonly trouble: string }> {
  const bytes = await writeXlsx(table, sheet, signal);
  if (bytes !== null) download(fileName, bytes, XLSX_TYPE);
  const trouble =
    bytes === null && !signal.aborted ? 'The workbook could not be written. Nothing in the show was changed.' : '';
  return { came: bytes !== null, trouble };
}
