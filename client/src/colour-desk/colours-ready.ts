/** The colours of the works on the desk worked out for other lamps than daylight, a few at a time, so that no page waits. */
import type { LabD65 } from '@enfilade/colour/lab';
import { deskWorksOf } from '@enfilade/shared/colour-desk';
import { colourSurfaceOf, isColourReady } from '@enfilade/shared/paints-under';
import { useEffect, useState } from 'react';
import { useStore } from '../selection.ts';
import { usePictures, useShow } from '../sync/hooks.ts';
import { useRestingRoots } from '../sync/resting-roots.ts';
import { deskLayout } from './desk-layout.ts';

/** So long at a time, ms; then the page has its turn. */
const TURN_MS = 8;
/** So few are worked out where they are asked for: a work more sends nothing back to daylight. */
const FEW = 150;
const REST_MS = 500;

/** How many are still to come; 0 once a lamp can be shown at once. */
export function useColoursReady(): number {
  const { judgements } = useShow();
  const pictures = usePictures();
  const roots = useRestingRoots(REST_MS, 'objects', 'pieces', 'places', 'memberOf');
  const { across } = useStore(deskLayout);
  const [waiting, setWaiting] = useState(Number.POSITIVE_INFINITY);
  // biome-ignore lint/correctness/useExhaustiveDependencies: the numbers stand for what the judgements say
  useEffect(() => {
    const missing = new Map<string, LabD65>();
    for (const { pieces } of deskWorksOf(judgements, across === 'own' ? 'hung' : across)) {
      for (const pieceId of pieces) {
        const colours = judgements.coloursOf(pieceId);
        for (const { lab } of colours === null ? [] : [...colours.body, ...colours.edge]) {
          if (!isColourReady(lab)) missing.set(`${lab.L} ${lab.a} ${lab.b}`, lab);
        }
      }
    }
    const todo = [...missing.values()];
    setWaiting(todo.length <= FEW ? 0 : todo.length);
    let at = 0;
    let timer = 0;
    const go = (): void => {
      const until = performance.now() + TURN_MS;
      while (at < todo.length && performance.now() < until) {
        const lab = todo[at];
        if (lab !== undefined) colourSurfaceOf(lab);
        at += 1;
      }
      if (at < todo.length) timer = window.setTimeout(go, TURN_MS);
      else setWaiting(0);
    };
    timer = window.setTimeout(go, TURN_MS);
    return () => clearTimeout(timer);
  }, [judgements, pictures, roots, across]);
  return waiting;
}
