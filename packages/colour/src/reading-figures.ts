import { colourNameOf } from './colour-words.ts';
import type { LabD65 } from './lab.ts';
import { fieldsOf, WITHIN } from './measures.ts';
import type { Swatch } from './palette.ts';

// A field under this share is not told of: nobody would point at it.
const TOLD = 0.04;

/**
 * What stands one press behind the words: a sentence with figures for each larger field of the body against the wall,
 * largest first, then one for the edge: "The sea-green ground, 46 % of the surface, lies 6 from the wall" (ΔE00).
 */
export function figureSentencesOf(
  colours: { readonly body: readonly Swatch[]; readonly edge: readonly Swatch[]; readonly framed?: boolean },
  wall: LabD65,
): string[] {
  if (colours.body.length === 0) throw new RangeError('figureSentencesOf: body has 0 swatches, needs at least 1');
  const sentences = fieldsOf(colours.body, wall)
    .filter(({ share }) => share >= TOLD)
    .map(({ lab, share, deltaE }) => {
      const lies = `${percentOf(share)} of the surface, lies ${Math.round(deltaE)} from the wall`;
      return `The ${colourNameOf(lab)}, ${lies}${deltaE < WITHIN ? ": the wall's own colour" : ''}.`;
    });
  if (colours.edge.length === 0) return sentences;
  const edge = fieldsOf(colours.edge, wall);
  const mean = edge.reduce((sum, { share, deltaE }) => sum + share * deltaE, 0);
  const nearest = edge.reduce((least, field) => (field.deltaE < least.deltaE ? field : least));
  const noun = colours.framed ? 'frame' : 'edge';
  const weakest =
    edge.length > 1
      ? `, at its nearest ${Math.round(nearest.deltaE)}, over ${percentOf(nearest.share)} of its length`
      : '';
  return [...sentences, `The ${noun} lies ${Math.round(mean)} from the wall${weakest}.`];
}

function percentOf(share: number): string {
  return `${Math.max(1, Math.round(share * 100))} %`;
}
