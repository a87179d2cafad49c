/** Pictures as they come, and as they are drawn. */
import type { ImageFacts } from '@enfilade/shared/protocol';

/** Where pictures come from; the session's PictureStore is one. */
export interface PictureSource {
  get(sha256: string): ImageFacts | undefined;
  atlasUrl(page: number): string;
  urlOf(sha256: string, sizePx: 256 | 1024): string;
}

export interface Drawable {
  readonly image: ImageBitmap;
  /** Part of the image that is the picture. */
  readonly sx: number;
  readonly sy: number;
  readonly sw: number;
  readonly sh: number;
  readonly level: Level;
}

export type Level = 64 | 256 | 1024;

/** A picture fetched and decoded; null where it could not be. */
export async function bitmapFrom(url: string): Promise<ImageBitmap | null> {
  try {
    const answer = await fetch(url);
    return answer.ok ? await createImageBitmap(await answer.blob()) : null;
  } catch {
    return null;
  }
}
