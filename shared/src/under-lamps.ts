/** The show's judgements for eyes settled to a lamp: its paints and its works as they look there, and how they then read. */
import type { FramedColours } from '@enfilade/colour/frames';
import type { LabD65 } from '@enfilade/colour/lab';
import type { Light } from '@enfilade/colour/lights';
import { seenUnder } from '@enfilade/colour/seen';
import type { ShowDocuments } from './documents.ts';
import { Judgements, type PictureFacts } from './judgements.ts';
import { colourSurfaceOf, paintUnder } from './paints-under.ts';
import type { PieceId, SurfaceId } from './schema.ts';

/** Judgements under a light: whatever is said of a colour is said of it there. */
export class JudgementsUnder extends Judgements {
  readonly light: Light;
  private readonly seen = new WeakMap<FramedColours, FramedColours>();

  constructor(documents: ShowDocuments, pictures: PictureFacts, light: Light) {
    super(documents, pictures);
    this.light = light;
  }

  override paintOf(surface: SurfaceId): ReturnType<Judgements['paintOf']> {
    const paint = super.paintOf(surface);
    const record = paint === null ? undefined : this.documents.get('deck', paint.id);
    return paint === null || record === undefined ? null : { ...paint, lab: paintUnder(record, this.light) };
  }

  override coloursOf(pieceId: PieceId): FramedColours | null {
    const colours = super.coloursOf(pieceId);
    if (colours === null) return null;
    const known = this.seen.get(colours);
    if (known !== undefined) return known;
    const under = <S extends { readonly lab: LabD65 }>(swatch: S): S => {
      return { ...swatch, lab: seenUnder(colourSurfaceOf(swatch.lab), this.light) };
    };
    const seen = { ...colours, body: colours.body.map(under), edge: colours.edge.map(under) };
    this.seen.set(colours, seen);
    return seen;
  }
}

const made = new WeakMap<ShowDocuments, WeakMap<Light, JudgementsUnder>>();

/** One and the same for the same show and light, so that what it has worked out is kept. */
export function judgementsUnder(documents: ShowDocuments, pictures: PictureFacts, light: Light): JudgementsUnder {
  const ofShow = made.get(documents) ?? new WeakMap<Light, JudgementsUnder>();
  made.set(documents, ofShow);
  const judgements = ofShow.get(light) ?? new JudgementsUnder(documents, pictures, light);
  ofShow.set(light, judgements);
  return judgements;
}
