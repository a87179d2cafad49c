/** The show's checklist as a IIIF manifest. Source: IIIF Presentation API 3.0; sizes by its physical dimension service. */
import type { Judgements } from './judgements.ts';
import type { ImageFacts } from './protocol.ts';
import { DEFAULT_SETTINGS, type MuseumObject, type ObjectId, pieceIdOf } from './schema.ts';

/** The longest side of the pictures that are served. */
const SERVED_PX = 1024;

type LanguageMap = Readonly<Record<string, readonly string[]>>;
const words = (text: string): LanguageMap => ({ none: [text] });

/**
 * One canvas for each record that has a picture, in the order of their numbers. `base`: the address of a seat,
 * `https://museum.example/seat/<id>`; its pictures open wherever that seat is open. Sizes stand there only where they are sure.
 */
export function showManifest(judgements: Judgements, base: string): object {
  const { documents } = judgements;
  const compare = new Intl.Collator('en', { numeric: true }).compare;
  const items = [...documents.all('objects')]
    .sort(([, a], [, b]) => compare(a.number, b.number))
    .flatMap(([id, object]) => {
      const picture = judgements.pictureOf(pieceIdOf(id, 1));
      return picture === undefined ? [] : [canvasOf(judgements, base, { id, object, picture })];
    });
  const title = String(documents.get('settings', 'title') ?? DEFAULT_SETTINGS.title);
  const museum = String(documents.get('settings', 'museum') ?? DEFAULT_SETTINGS.museum);
  return {
    '@context': 'http://iiif.io/api/presentation/3/context.json',
    id: `${base}/manifest.json`,
    type: 'Manifest',
    label: words(title),
    ...(museum === '' ? {} : { requiredStatement: { label: words('Museum'), value: words(museum) } }),
    items,
  };
}

interface Pictured {
  readonly id: ObjectId;
  readonly object: MuseumObject;
  readonly picture: ImageFacts;
}

function canvasOf(judgements: Judgements, base: string, { id, object, picture }: Pictured): object {
  const { widthPx, heightPx, sha256 } = picture;
  const canvas = `${base}/manifest.json/canvas/${encodeURIComponent(id)}`;
  const scale = Math.min(1, SERVED_PX / Math.max(widthPx, heightPx));
  const [width, height] = [widthPx, heightPx].map((px) => Math.max(1, Math.round(px * scale)));
  const size = judgements.sizeOf(pieceIdOf(id, 1));
  const physical =
    size?.known && size.certain
      ? {
          service: [
            {
              '@context': 'http://iiif.io/api/annex/services/physdim/1/context.json',
              profile: 'http://iiif.io/api/annex/services/physdim',
              physicalScale: size.widthMm / 10 / widthPx,
              physicalUnits: 'cm',
            },
          ],
        }
      : {};
  return {
    id: canvas,
    type: 'Canvas',
    label: words(object.title === '' ? object.number : object.title),
    width: widthPx,
    height: heightPx,
    metadata: metadataOf(object),
    ...(object.creditLine
      ? { requiredStatement: { label: words('Credit line'), value: words(object.creditLine) } }
      : {}),
    ...physical,
    items: [
      {
        id: `${canvas}/page`,
        type: 'AnnotationPage',
        items: [
          {
            id: `${canvas}/painting`,
            type: 'Annotation',
            motivation: 'painting',
            target: canvas,
            body: { id: `${base}/images/${sha256}/1024.webp`, type: 'Image', format: 'image/webp', width, height },
          },
        ],
      },
    ],
  };
}

function metadataOf(object: MuseumObject): readonly object[] {
  const said: readonly (readonly [label: string, value: string | undefined])[] = [
    ['Accession No', object.number],
    ['Object Name', object.type],
    ['Maker', object.maker],
    ['Date', object.dateText],
    ['Medium', object.medium],
    ['Dimensions', object.dimensionsText],
    ['Framed Dimensions', object.framedText],
    ['Count', object.count > 1 ? String(object.count) : undefined],
    ['Lender', object.lender],
    ['Notes', object.notes],
  ];
  return said.flatMap(([label, value]) => (value ? [{ label: words(label), value: words(value) }] : []));
}
