import { cgatsTables } from './cgats-tables.ts';
import { delimitedRows, delimiterOf } from './delimited.ts';
import { type Light, lightFrom } from './lights.ts';
import { type FileIssue, numberFrom, tidy } from './paint-file.ts';
import { evenWavelengths, wavelengthOf } from './wavelengths.ts';

/** A lamp as a meter wrote it down, or null where it cannot be read, and what is wrong with it. */
export interface LightFile {
  readonly light: Light | null;
  readonly issues: readonly FileIssue[];
}

interface Reading {
  readonly line: number;
  readonly nm: number;
  readonly text: string;
}

/**
 * A measured lamp from a meter's text: two columns of wavelength and power (commas, semicolons, tabs or spaces), or a CGATS
 * table with one column a wavelength, whose first set is read. Power is relative; the wavelengths must be even.
 */
export function lightFromText(
  text: string,
  { file, name }: { readonly file: string; readonly name: string },
): LightFile {
  const issues: FileIssue[] = [];
  const tell = (line: number, field: string, what: string, value: string): void => {
    issues.push({ where: `${file}, line ${line}, ${field}`, what, value: tidy(value) });
  };
  const readings = /^\s*BEGIN_DATA\s*$/m.test(text) ? tableReadings(text) : columnReadings(text);
  const powers: { nm: number; power: number }[] = [];
  for (const { line, nm, text: value } of readings) {
    const power = numberFrom(value);
    if (Number.isNaN(power)) tell(line, `${nm} nm`, 'Its power is not a number.', value);
    // Meters write small negatives where there is no light.
    else powers.push({ nm, power: Math.max(0, power) });
  }
  powers.sort((p, q) => p.nm - q.nm);
  const even = evenWavelengths(powers.map(({ nm }) => nm));
  if (typeof even === 'string') {
    tell(readings[0]?.line ?? 1, 'wavelengths', `${even} The lamp is left out.`, `${powers.length} values`);
    return { light: null, issues };
  }
  const values = powers.map(({ power }) => power);
  if (!values.some((power) => power > 0)) {
    tell(readings[0]?.line ?? 1, 'power', 'It gives no light at all, so it is left out.', `${values.length} values`);
    return { light: null, issues };
  }
  return { light: lightFrom(tidy(name) || 'measured lamp', { ...even, values }), issues };
}

/** The first two numbers of each line that starts with a wavelength; headings and notes are passed over. */
function columnReadings(text: string): Reading[] {
  const sign = delimiterOf(text);
  return delimitedRows(text, sign).flatMap(({ line, cells }) => {
    const [first = '', second = ''] = cells.length > 1 ? cells : (cells[0] ?? '').trim().split(/\s+/);
    const nm = numberFrom(first.replace(/nm\s*$/i, ''));
    return nm >= 200 && nm <= 1200 ? [{ line, nm, text: second }] : [];
  });
}

function tableReadings(text: string): Reading[] {
  const table = cgatsTables(text).tables.find(({ fields }) => fields.some((field) => wavelengthOf(field) !== null));
  const set = table?.sets[0];
  if (!table || !set) return [];
  return table.fields.flatMap((field, i) => {
    const nm = wavelengthOf(field);
    return nm === null ? [] : [{ line: set.line, nm, text: set.texts[i] ?? '' }];
  });
}
