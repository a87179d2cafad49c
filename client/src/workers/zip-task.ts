/** What the worker that unpacks a zip answers. */
import type { ZipLeft } from '../importers/picture-zip.ts';

export type ZipAnswer =
  | { readonly kind: 'progress'; readonly what: string; readonly share: number | null }
  | { readonly kind: 'file'; readonly file: File }
  | { readonly kind: 'done'; readonly left: readonly ZipLeft[] }
  | { readonly kind: 'failed'; readonly what: string };
