/** From when one may hang on a wall's paint: facts of the documents, by the show's limits. */
import { hangNotBeforeOf } from '@enfilade/practice/paint-quantities';
import { practiceProfileOf } from './practice-limits.ts';
import type { SurfaceId } from './schema.ts';
import type { ShowReader } from './show-reader.ts';

export interface Drying {
  /** ISO dates: of the last coat, from when one may hang, and from when one had better. */
  readonly lastCoat: string;
  readonly earliest: string;
  readonly preferred: string;
  /** The hang begins before. */
  readonly tooSoon: boolean;
}

/** Null while no last coat is written down, or its day is no day. */
export function dryingOf(reader: ShowReader, surface: SurfaceId): Drying | null {
  const { lastCoat, covering } = reader.documents.get('finishes', surface) ?? {};
  // Under paper or cloth there is no coat to dry.
  if (typeof lastCoat !== 'string' || covering) return null;
  const dry = hangNotBeforeOf({ lastCoat, thing: 'wall' }, practiceProfileOf(reader.documents));
  if ('what' in dry) return null;
  const hang = reader.setting('hangBegins');
  return { lastCoat, ...dry, tooSoon: hang !== '' && hang < dry.earliest };
}
