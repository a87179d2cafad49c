/** A row of delimited text with the line it starts on, from 1. */
export interface DelimitedRow {
  readonly line: number;
  readonly cells: readonly string[];
}

/** The sign between cells: whichever of tab, semicolon and comma the first line has most of. */
export function delimiterOf(text: string): string {
  const first = text.slice(0, 20_000).split(/\r?\n|\r/, 1)[0] ?? '';
  return ['\t', ';', ','].reduce(
    (best, sign) => (first.split(sign).length > first.split(best).length ? sign : best),
    ',',
  );
}

/** Rows of comma-, semicolon- or tab-separated text by RFC 4180: quoted cells may hold the sign, line ends and "". */
export function delimitedRows(text: string, delimiter: string): DelimitedRow[] {
  const rows: DelimitedRow[] = [];
  let cells: string[] = [];
  let cell = '';
  let quoted = false;
  let line = 1;
  let startLine = 1;
  const endRow = (): void => {
    cells.push(cell);
    if (cells.some((each) => each.trim() !== '')) rows.push({ line: startLine, cells });
    cells = [];
    cell = '';
  };
  for (let at = text.charCodeAt(0) === 0xfeff ? 1 : 0; at < text.length; at++) {
    const sign = text[at]!;
    const ends = sign === '\n' || (sign === '\r' && text[at + 1] !== '\n');
    if (ends) line++;
    if (quoted) {
      if (sign === '"' && text[at + 1] === '"') cell += text[at++];
      else if (sign === '"') quoted = false;
      else cell += sign;
    } else if (sign === '"' && cell.trim() === '') {
      cell = '';
      quoted = true;
    } else if (sign === delimiter) {
      cells.push(cell);
      cell = '';
    } else if (ends) {
      endRow();
      startLine = line;
    } else if (sign !== '\r') cell += sign;
  }
  endRow();
  return rows;
}

/** A cell as RFC 4180 has it: quoted only where it must be. */
export function toCell(text: string): string {
  return /[",;\t\r\n]|^\s|\s$/.test(text) ? `"${text.replaceAll('"', '""')}"` : text;
}
