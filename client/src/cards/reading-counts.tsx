/** How the works on a wall read, counted; pressing a count selects those works. */
import type { LabD65 } from '@enfilade/colour/lab';
import type { ReadingWord } from '@enfilade/colour/reading-thresholds';
import type { Judgements } from '@enfilade/shared/judgements';
import type { PieceId, SurfaceId } from '@enfilade/shared/schema';
import { choose } from '../selection.ts';
import { ReadingMark } from '../shell/marks.tsx';
import { useShow } from '../sync/hooks.ts';
import './reading-counts.css';

export const READING_WORDS: readonly ReadingWord[] = ['lost', 'weak', 'holds', 'carries'];

/** The works hung on a wall by how they read on it, or would on a paint being tried. */
export function readingsOn(
  judgements: Judgements,
  surface: SurfaceId,
  trial?: LabD65,
): ReadonlyMap<ReadingWord, readonly PieceId[]> {
  const words = new Map<ReadingWord, PieceId[]>();
  for (const pieceId of judgements.where.directlyOn(surface)) {
    const word = judgements.readingOf(pieceId, trial)?.word;
    if (word === undefined) continue;
    const list = words.get(word);
    if (list === undefined) words.set(word, [pieceId]);
    else list.push(pieceId);
  }
  return words;
}

export function ReadingCounts({ surface, only }: { readonly surface: SurfaceId; readonly only?: ReadingWord }) {
  const { judgements } = useShow();
  const readings = readingsOn(judgements, surface);
  const words = READING_WORDS.filter((word) => readings.has(word) && (only === undefined || only === word));
  if (words.length === 0) return null;
  return (
    <ul className="reading-counts" aria-label="How works read on this wall">
      {words.map((word) => {
        const pieces = readings.get(word) ?? [];
        return (
          <li key={word}>
            <ReadingMark word={word} sizePx={12} />
            <button type="button" aria-label={`${pieces.length} ${word}: select them`} onClick={() => choose(pieces)}>
              {pieces.length} {word}
            </button>
          </li>
        );
      })}
    </ul>
  );
}
