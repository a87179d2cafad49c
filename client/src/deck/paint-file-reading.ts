/** A colour file as a person chose it: which kind it is told by its text, not by its name. */
import { paintsFromCgats } from '@enfilade/colour/cgats';
import { paintsFromCxf } from '@enfilade/colour/cxf';
import { paintsFromCsv } from '@enfilade/colour/deck-csv';
import type { PaintFile, PaintFileOptions } from '@enfilade/colour/paint-file';
import type { WhitePoint } from '@enfilade/colour/white-points';
import { textEncodingOf } from '@enfilade/records/text-encoding';

export type PaintFileKind = 'CSV' | 'CGATS.17' | 'CxF3';

export interface ReadPaintFile extends PaintFile {
  readonly kind: PaintFileKind;
}

/** More than the largest deck with its spectra. */
export const MAX_BYTES = 24 << 20;

export function kindOf(text: string): PaintFileKind {
  if (/^\s*</.test(text)) return 'CxF3';
  return /^\s*(?:CGATS|IT8|BEGIN_DATA)/i.test(text) || /^BEGIN_DATA\s*$/m.test(text) ? 'CGATS.17' : 'CSV';
}

/** Paints of a file's text; XML by the function given, which only a browser has. */
export function paintsFromText(
  text: string,
  options: PaintFileOptions,
  elementFrom: (text: string) => Parameters<typeof paintsFromCxf>[0] | string,
): ReadPaintFile {
  const kind = kindOf(text);
  if (kind === 'CSV') return { kind, ...paintsFromCsv(text, options) };
  if (kind === 'CGATS.17') return { kind, ...paintsFromCgats(text, options) };
  const root = elementFrom(text);
  if (typeof root !== 'string') return { kind, ...paintsFromCxf(root, options) };
  return {
    kind,
    paints: [],
    origins: [],
    issues: [{ where: options.file, what: root, value: text.trim().slice(0, 80) }],
  };
}

export async function textOfFile(file: File): Promise<string> {
  const bytes = new Uint8Array(await file.arrayBuffer());
  return new TextDecoder(textEncodingOf(bytes)).decode(bytes).replace(/^\uFEFF/, '');
}

export function optionsOf(file: string, assume: WhitePoint | null): PaintFileOptions {
  return assume === null ? { file } : { file, assume };
}
