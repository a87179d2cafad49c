/** The colours of the show's works worked out for other lamps than daylight, a few at a time, so that no page waits for them. */
import { colourSurfaceOf } from '@enfilade/shared/paints-under';
import { useEffect, useState } from 'react';
import { usePictures, useRoots, useShow } from '../sync/hooks.ts';

/** So long at a time, ms; then the page has its turn. */
const TURN_MS = 8;

/** How many are still to come; 0 once a lamp can be shown at once. */
export function useColoursReady(): number {
  const { documents, judgements } = useShow();
  const pictures = usePictures();
  const objects = useRoots('objects', 'pieces');
  const [waiting, setWaiting] = useState(Number.POSITIVE_INFINITY);
  // biome-ignore lint/correctness/useExhaustiveDependencies: the numbers stand for what the judgements say
  useEffect(() => {
    const seen = new Set<unknown>();
    const swatches = [...documents.all('objects').keys()].flatMap((objectId) =>
      judgements.piecesOf(objectId).flatMap((pieceId) => {
        const colours = judgements.coloursOf(pieceId);
        if (colours === null || seen.has(colours)) return [];
        seen.add(colours);
        return [...colours.body, ...colours.edge];
      }),
    );
    let at = 0;
    let timer = 0;
    const go = (): void => {
      const until = performance.now() + TURN_MS;
      while (at < swatches.length && performance.now() < until) {
        const swatch = swatches[at];
        if (swatch !== undefined) colourSurfaceOf(swatch.lab);
        at += 1;
      }
      if (at < swatches.length) timer = window.setTimeout(go, TURN_MS);
      else setWaiting(0);
    };
    // What was worked out before takes no time, so nothing goes back to daylight for one work more.
    setWaiting((before) => (before === 0 ? 0 : swatches.length));
    timer = window.setTimeout(go, TURN_MS);
    return () => clearTimeout(timer);
  }, [documents, judgements, pictures, objects]);
  return waiting;
}
