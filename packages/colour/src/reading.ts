import { colourNameOf } from './colour-words.ts';
import type { LabD65 } from './lab.ts';
import { type Field, fieldsOf, type Measures, measuresOf, shareWithin10Of, WITHIN } from './measures.ts';
import type { Swatch } from './palette.ts';
import { reasonOf } from './reading-reasons.ts';
import { DEFAULT_THRESHOLDS, type ReadingThresholds, type ReadingWord } from './reading-thresholds.ts';

/** How a work reads on a wall: advice from measured colours, never a ruling on taste. */
export interface Reading {
  readonly word: ReadingWord;
  /** One or two sentences, without figures. */
  readonly reason: string;
  /** The field to lay beside the wall's patch: the largest that is the wall's own colour, else the main field. */
  readonly patch: LabD65;
  readonly patchName: string;
  readonly body: Measures;
  readonly edge: Measures;
  /** Share, 0..1, of the body within ΔE00 10 of the wall. */
  readonly shareWithin10: number;
  /** The colour of some length of the outline that is nearest to the wall. */
  readonly weakestEdge: Measures & { readonly lab: LabD65 };
}

// A stretch shorter than this does not open an outline.
const STRETCH = 0.15;

/**
 * How colours of a picture (CIELAB D65 swatches of body and edge, in any order) read on a wall.
 * An empty edge is taken from the body; `framed` has the words speak of a frame (see `framedColoursOf`).
 * RangeError when the body is empty: nothing opaque reads on nothing.
 */
export function readingOn(
  colours: { readonly body: readonly Swatch[]; readonly edge: readonly Swatch[]; readonly framed?: boolean },
  wall: LabD65,
  thresholds: ReadingThresholds = DEFAULT_THRESHOLDS,
): Reading {
  if (colours.body.length === 0) throw new RangeError('readingOn: body has 0 swatches, needs at least 1');
  const bodyFields = fieldsOf(colours.body, wall);
  const edgeFields = colours.edge.length === 0 ? bodyFields : fieldsOf(colours.edge, wall);
  const body = measuresOf(bodyFields, wall);
  const edge = measuresOf(edgeFields, wall);
  const shareWithin10 = shareWithin10Of(bodyFields);
  const rimWithin10 = shareWithin10Of(edgeFields);
  const weakest = weakestOf(edgeFields);
  const patch = (bodyFields.find((field) => field.deltaE < WITHIN) ?? bodyFields[0]!).lab;
  const word = wordOf(body.deltaE, edge.deltaE, shareWithin10, rimWithin10, thresholds);
  const framed = colours.framed === true && colours.edge.length > 0;
  let reason: string | null = null;
  return {
    word,
    // Put into words when it is read: of hundreds of works across a desk, few reasons ever are.
    get reason() {
      reason ??= reasonOf({
        word,
        wall,
        bodyFields,
        edgeFields,
        body,
        edge,
        shareWithin10,
        rimWithin10,
        thresholds,
        framed,
      });
      return reason;
    },
    patch,
    get patchName() {
      return colourNameOf(patch);
    },
    body,
    edge,
    shareWithin10,
    weakestEdge: { ...measuresOf([{ ...weakest, share: 1 }], wall), lab: weakest.lab },
  };
}

/** The word for distances of body and edge (mean ΔE00) and for the shares of both within ΔE00 10 of the wall. */
export function wordOf(body: number, edge: number, share: number, rim: number, t: ReadingThresholds): ReadingWord {
  if (share > t.lostShare && edge < t.lostEdge && body < t.weakMean) return 'lost';
  if (share > t.weakShare || edge < t.weakEdge || body < t.weakMean) return 'weak';
  const clear = body >= t.carriesMean && edge >= t.carriesEdge;
  return clear && share < t.carriesShare && rim < t.carriesRim ? 'carries' : 'holds';
}

function weakestOf(fields: readonly Field[]): Field {
  const long = fields.filter((field) => field.share >= STRETCH);
  return (long.length > 0 ? long : fields.slice(0, 1)).reduce((least, field) =>
    field.deltaE < least.deltaE ? field : least,
  );
}
