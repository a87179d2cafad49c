import type { MeasuredPaint } from './paints.ts';

const quoted = (text: string): string => `"${text.replaceAll('"', '""')}"`;

/** Fields, values and keywords of one paint: paints with the same fields and keywords share a table. */
function columnsOf(paint: MeasuredPaint): { keywords: string[]; fields: string[]; values: string[] } {
  const { name, code, lab, reflectance, lrv, sheen, measured, instrument } = paint;
  const columns: [string, string][] = [['SAMPLE_NAME', quoted(name)]];
  if (code !== undefined) columns.push(['CODE', quoted(code)]);
  if (lab) columns.push(['LAB_L', `${lab.L}`], ['LAB_A', `${lab.a}`], ['LAB_B', `${lab.b}`]);
  if (lrv !== undefined) columns.push(['LRV', `${lrv}`]);
  if (sheen !== undefined) columns.push(['SHEEN', quoted(sheen)]);
  if (measured !== undefined) columns.push(['MEASURED', quoted(measured)]);
  if (instrument !== undefined) columns.push(['INSTRUMENT', quoted(instrument)]);
  for (const [i, share] of reflectance?.values.entries() ?? []) {
    columns.push([`SPECTRAL_NM${reflectance!.startNm + i * reflectance!.stepNm}`, `${share}`]);
  }
  const keywords = [
    ...(lab ? [`ILLUMINANT ${quoted(lab.illuminant)}`, `OBSERVER ${quoted(lab.observer)}`] : []),
    ...(reflectance ? ['SPECTRAL_NORM "1"'] : []),
  ];
  return { keywords, fields: columns.map(([field]) => field), values: columns.map(([, value]) => value) };
}

const OWN = ['ILLUMINANT', 'OBSERVER', 'SPECTRAL_NORM', 'CODE', 'LRV', 'SHEEN', 'MEASURED', 'INSTRUMENT'];

/**
 * Paints as CGATS.17 text that `paintsFromCgats` reads back alike and in order: a new table wherever the white point or
 * the fields change, since a table states one white point and has no empty values.
 */
export function toCgats(paints: readonly MeasuredPaint[], originator: string): string {
  const lines = ['CGATS.17', `ORIGINATOR ${quoted(originator)}`, ...OWN.map((keyword) => `KEYWORD "${keyword}"`)];
  let table = '';
  let sets: string[] = [];
  const endTable = (): void => {
    if (sets.length > 0) lines.push(table, `NUMBER_OF_SETS ${sets.length}`, 'BEGIN_DATA', ...sets, 'END_DATA', '');
    sets = [];
  };
  for (const paint of paints) {
    const { keywords, fields, values } = columnsOf(paint);
    const frame = [
      ...keywords,
      `NUMBER_OF_FIELDS ${fields.length + 1}`,
      'BEGIN_DATA_FORMAT',
      ['SAMPLE_ID', ...fields].join(' '),
      'END_DATA_FORMAT',
    ].join('\n');
    if (frame !== table) endTable();
    table = frame;
    sets.push([sets.length + 1, ...values].join(' '));
  }
  endTable();
  return `${lines.join('\n')}\n`;
}
