/** Writes a table as a workbook apart from the page; the library is loaded here alone. */
import { xlsxFrom } from '../importers/xlsx-out.ts';

addEventListener('message', async ({ data }: MessageEvent<{ table: string[][]; sheet: string }>) => {
  postMessage(await xlsxFrom(data.table, data.sheet));
});
