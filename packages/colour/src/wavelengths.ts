// Where a handheld reader may start and end and how far apart it may read: common practice, no source. Between, the
// curve of a paint is smooth enough for its colour; outside, the ends are held.
const LATEST_START_NM = 420;
const EARLIEST_END_NM = 680;
const WIDEST_STEP_NM = 20;

/** Even wavelengths, in nanometres. */
export interface Wavelengths {
  readonly startNm: number;
  readonly stepNm: number;
}

const HEADING =
  /^(?:(?:SPECTRAL_?)?NM_?|SPECTRAL_?|SPEC_?|REFL(?:ECTANCE)?[ _]?|R[ _]?|λ ?)?([3-8]\d\d)(?:\.0{1,6}|000)? ?(?:NM)?$/i;

/** The wavelength a column is headed with ("SPEC_400", "400 nm", "R400"); null for any other heading. */
export function wavelengthOf(heading: string): number | null {
  const digits = HEADING.exec(heading.trim().slice(0, 40))?.[1];
  return digits === undefined ? null : Number(digits);
}

/** The even wavelengths of a rising list, or a sentence on why a colour cannot be summed from them. */
export function evenWavelengths(nanometres: readonly number[]): Wavelengths | string {
  const [startNm, second] = nanometres;
  const endNm = nanometres.at(-1);
  if (startNm === undefined || second === undefined || endNm === undefined) return 'There are too few wavelengths.';
  const stepNm = second - startNm;
  const gap = nanometres.findIndex((nm, i) => i > 0 && nm - nanometres[i - 1]! !== stepNm);
  if (gap > 0) return `The wavelengths are not even after ${nanometres[gap - 1]} nm.`;
  return spanIssueOf(startNm, stepNm, nanometres.length) ?? { startNm, stepNm };
}

/** Why a spectrum of `count` values is of no use for colour, as a sentence; null when it is. */
export function spanIssueOf(startNm: number, stepNm: number, count: number): string | null {
  const endNm = startNm + (count - 1) * stepNm;
  if (!(stepNm > 0 && stepNm <= WIDEST_STEP_NM))
    return `Its step of ${stepNm} nm is not over 0 to ${WIDEST_STEP_NM} nm.`;
  if (startNm > LATEST_START_NM || endNm < EARLIEST_END_NM) {
    return `It runs from ${startNm} to ${endNm} nm, and must cover ${LATEST_START_NM} to ${EARLIEST_END_NM} nm.`;
  }
  return startNm >= 300 && endNm <= 900 ? null : `It runs from ${startNm} to ${endNm} nm, beyond 300 to 900 nm.`;
}

/**
 * What a table of reflectances writes for all light returned, 1 or 100: 100 when half of its rows rise over 1.5, so that
 * a single slip does not turn shares into per cent.
 */
export function wholeOf(rows: readonly (readonly number[])[]): 1 | 100 {
  const peaks = rows.map((row) => row.reduce((most, value) => Math.max(most, value || 0), 0)).sort((p, q) => p - q);
  return (peaks[Math.floor(peaks.length / 2)] ?? 0) > 1.5 ? 100 : 1;
}
