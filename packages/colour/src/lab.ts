/** A colour as CIELAB under D65 for the CIE 1931 2° observer: L 0 (black) to 100 (white), a and b unbounded. */
export interface LabD65 {
  readonly L: number;
  readonly a: number;
  readonly b: number;
}
