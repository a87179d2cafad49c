import { readFileSync } from 'node:fs';

const folder = new URL('../reference/colour/', import.meta.url);

/** Text of a published table. */
export function tableText(file: string): string {
  return readFileSync(new URL(file, folder), 'utf8');
}

/** Rows of a comma-separated table, by heading. */
export function csvRows(file: string): Record<string, string>[] {
  const [heading = '', ...lines] = tableText(file).trim().split('\n');
  const names = heading.split(',');
  return lines.map((line) => {
    const cells = line.split(',');
    return Object.fromEntries(names.map((name, i) => [name, cells[i] ?? '']));
  });
}

/** Rows of a spectral file with their first wavelength and step, numbers only. */
export function spectraIn(file: string): { startNm: number; stepNm: number; values: number[] }[] {
  const text = tableText(file);
  const keyword = (name: string): number => Number(new RegExp(`${name}\\s+"?([\\d.]+)`).exec(text)?.[1]);
  const startNm = keyword('SPECTRAL_START_NM');
  const stepNm = (keyword('SPECTRAL_END_NM') - startNm) / (keyword('SPECTRAL_BANDS') - 1);
  const body =
    text
      .split(/BEGIN_DATA\s/)
      .at(-1)
      ?.split('END_DATA')[0] ?? '';
  return body
    .trim()
    .split('\n')
    .map((line) => {
      const values = line.trim().split(/\s+/).map(Number);
      return { startNm, stepNm, values: Number.isNaN(values[0]) ? values.slice(1) : values };
    });
}

/** The value of a spectrum at a wavelength it was tabulated at. */
export function valueAt(spectrum: { startNm: number; stepNm: number; values: readonly number[] }, nm: number): number {
  return spectrum.values[Math.round((nm - spectrum.startNm) / spectrum.stepNm)] ?? Number.NaN;
}
