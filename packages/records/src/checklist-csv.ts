/** Rows as CSV text that a spreadsheet opens as text. */

const FORMULA = /^[=+\-@\t\r]/;

/**
 * CSV by RFC 4180: commas, CRLF, quotes where needed. A cell that a spreadsheet would run as a formula (it begins with
 * = + - @ or a tab) gets an apostrophe before it; plain figures such as -3 or +0.5 stay.
 */
export function csvFrom(rows: readonly (readonly string[])[]): string {
  return rows.map((row) => `${row.map(cellFrom).join(',')}\r\n`).join('');
}

function cellFrom(text: string): string {
  const safe = FORMULA.test(text) && !/^[+-]\d+([.,]\d+)?$/.test(text) ? `'${text}` : text;
  return /[",\r\n]/.test(safe) ? `"${safe.replaceAll('"', '""')}"` : safe;
}
