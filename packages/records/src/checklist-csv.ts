/** Rows as CSV text that a spreadsheet opens as text. */

const FORMULA = /^\s*[=+\-@＝＋－＠]|^[\t\r]/;
const FIGURE = /^[+-]\d+([.,]\d+)?$/;

/**
 * CSV by RFC 4180: commas, CRLF, quotes where needed. A cell that a spreadsheet would run as a formula (it begins with
 * = + - @, their full-width forms, a tab or a return) gets an apostrophe before it; plain figures such as -3 or +0.5
 * stay. Common practice, no source.
 */
export function csvFrom(rows: readonly (readonly string[])[]): string {
  return rows.map((row) => `${row.map(cellFrom).join(',')}\r\n`).join('');
}

function cellFrom(text: string): string {
  const safe = FORMULA.test(text) && !FIGURE.test(text) ? `'${text}` : text;
  return /[",\r\n]/.test(safe) ? `"${safe.replaceAll('"', '""')}"` : safe;
}
