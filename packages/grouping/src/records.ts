/** A colour of a picture, CIELAB D65, with its share of the picture, 0 to 1. */
export interface Swatch {
  readonly L: number;
  readonly a: number;
  readonly b: number;
  readonly share: number;
}

/** What a cut-out's outline is like, whatever its size. */
export interface Silhouette {
  /** Width over height of its box, upright. */
  readonly aspect: number;
  /** The part of its box it fills, 0 to 1. */
  readonly fill: number;
  /** Eight magnitudes that stay the same when the outline is turned, moved, mirrored or scaled. */
  readonly outline: readonly number[];
}

/** What likeness is sought in: what is not known is left out, never 0 and never an empty word. */
export interface GroupingRecord {
  readonly id: string;
  readonly type?: string;
  readonly materials?: readonly string[];
  readonly maker?: string;
  readonly from?: string;
  readonly tags?: readonly string[];
  readonly earliestYear?: number;
  readonly latestYear?: number;
  readonly heightMm?: number;
  readonly widthMm?: number;
  readonly depthMm?: number;
  readonly palette?: readonly Swatch[];
  readonly silhouette?: Silhouette;
}
