import { type CgatsTable, cgatsTables } from './cgats-tables.ts';
import {
  type FileIssue,
  numberFrom,
  type Origin,
  type PaintFile,
  type PaintFileOptions,
  paintFrom,
  type RawPaint,
  tidy,
} from './paint-file.ts';
import type { MeasuredPaint } from './paints.ts';
import { evenWavelengths, wavelengthOf, wholeOf } from './wavelengths.ts';

/**
 * Paints of a CGATS.17 file, as reading programs write them: LAB_L, LAB_A, LAB_B with the illuminant and observer its
 * keywords state, and SPECTRAL_NM, SPEC_400 … columns or SPECTRAL_NM and SPECTRAL_PCT (or _DEC) pairs.
 */
export function paintsFromCgats(text: string, options: PaintFileOptions): PaintFile {
  const { tables, faults } = cgatsTables(text);
  const issues: FileIssue[] = faults.map(({ line, field, what, value }) => ({
    where: `${options.file}, line ${line}, ${field}`,
    what,
    value,
  }));
  if (tables.length === 0) {
    issues.push({
      where: options.file,
      what: 'No table of data is in it (BEGIN_DATA to END_DATA).',
      value: text.slice(0, 80),
    });
  }
  const read = tables.flatMap((table) => paintsOf(table, options, issues));
  return { paints: read.map(({ paint }) => paint), origins: read.map(({ origin }) => origin), issues };
}

interface Read {
  readonly paint: MeasuredPaint;
  readonly origin: Origin;
}

interface SpectralField {
  readonly nm: number;
  readonly column: number;
}

function paintsOf(table: CgatsTable, options: PaintFileOptions, issues: FileIssue[]): Read[] {
  const names = table.fields.map((field) => field.toUpperCase());
  const line = table.sets[0]?.line ?? 0;
  const lab = ['LAB_L', 'LAB_A', 'LAB_B'].map((name) => names.indexOf(name));
  const spectral = spectralOf(names, table);
  const even = spectral.length > 0 && evenWavelengths(spectral.map(({ nm }) => nm));
  if (typeof even === 'string') {
    issues.push({
      where: `${options.file}, line ${line}, reflectance`,
      what: `${even} It is left out.`,
      value: `${spectral.length} wavelengths`,
    });
  }
  const hasLab = lab.every((column) => column >= 0);
  if (!hasLab && typeof even !== 'object') {
    const what = 'The table has neither LAB_L, LAB_A and LAB_B nor reflectance.';
    issues.push({ where: `${options.file}, line ${line}, fields`, what, value: names.join(' ').slice(0, 200) });
    return [];
  }
  const whole = wholeIn(table, names, spectral);
  const white = whiteTextsOf(table.keywords);
  return table.sets.flatMap(({ line: setLine, texts }) => {
    const of = (...fields: string[]): string =>
      texts[fields.map((field) => names.indexOf(field)).find((at) => at >= 0) ?? -1] ?? '';
    const id = of('SAMPLE_ID', 'SAMPLEID');
    const name = of('SAMPLE_NAME', 'SAMPLENAME');
    const raw: RawPaint = {
      name: name || id,
      // A bare counter is no maker's code.
      code: of('CODE') || (name !== '' && !/^\d+$/.test(id) ? id : ''),
      ...white,
      lrv: of('LRV'),
      sheen: of('SHEEN'),
      measured: of('MEASURED') || (table.keywords.get('CREATED')?.[0] ?? ''),
      instrument: of('INSTRUMENT') || (table.keywords.get('INSTRUMENTATION')?.[0] ?? ''),
      ...(hasLab && { lab: [of('LAB_L'), of('LAB_A'), of('LAB_B')] as const }),
      ...(typeof even === 'object' && {
        spectrum: { ...even, whole, texts: spectral.map(({ column }) => texts[column] ?? '') },
      }),
    };
    const paint = paintFrom(raw, options, (field) => `${options.file}, line ${setLine}, ${field}`, issues);
    const origin = { where: `line ${setLine}`, source: tidy(texts.join(' ')) };
    return paint ? [{ paint, origin }] : [];
  });
}

/** Columns of reflectance, by rising wavelength; in the standard's pairs the wavelength stands in the data itself. */
function spectralOf(names: readonly string[], { sets }: CgatsTable): SpectralField[] {
  const first = sets[0]?.texts ?? [];
  const fields = names.flatMap((name, column): SpectralField[] => {
    const nm = wavelengthOf(name);
    if (nm !== null) return [{ nm, column }];
    const isPair = name === 'SPECTRAL_NM' && /^SPECTRAL_(?:PCT|DEC)$/.test(names[column + 1] ?? '');
    return isPair ? [{ nm: numberFrom(first[column] ?? ''), column: column + 1 }] : [];
  });
  return fields.sort((p, q) => p.nm - q.nm);
}

function wholeIn({ keywords, sets }: CgatsTable, names: readonly string[], spectral: readonly SpectralField[]): number {
  const norm = numberFrom(keywords.get('SPECTRAL_NORM')?.[0] ?? '');
  if (norm > 0) return norm;
  if (names.includes('SPECTRAL_DEC')) return 1;
  if (names.includes('SPECTRAL_PCT')) return 100;
  return wholeOf(sets.map(({ texts }) => spectral.map(({ column }) => numberFrom(texts[column] ?? ''))));
}

/** Illuminant and observer as any of the three keywords that programs use for them has it; empty where none does. */
function whiteTextsOf(keywords: CgatsTable['keywords']): { illuminant: string; observer: string } {
  const source = keywords.get('MEASUREMENT_SOURCE')?.join(' ').slice(0, 400) ?? '';
  const weighting = keywords.get('WEIGHTING_FUNCTION')?.join('; ').slice(0, 400) ?? '';
  const said = (keyword: string, inSource: RegExp, inWeighting: RegExp): string =>
    keywords.get(keyword)?.[0] ?? inWeighting.exec(weighting)?.[1] ?? inSource.exec(source)?.[1] ?? '';
  return {
    illuminant: said('ILLUMINANT', /Illumination(?:Name)?\s?=\s?(\w{1,4})/i, /ILLUMINANT[,\s]{1,3}(\w{1,4})/i),
    observer: said('OBSERVER', /Observer(?:Angle)?\s?=\s?(\d{1,2})/i, /OBSERVER[,\s]{1,3}(\d{1,2})/i),
  };
}
