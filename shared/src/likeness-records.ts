/**
 * What likeness is sought in, out of a record and its picture's facts: one row a record, for the pieces of one record are
 * alike by being of it. What is not known is left out. Pure.
 */
import type { GroupingRecord, Silhouette } from '@enfilade/grouping/records';
import { dateFrom } from '@enfilade/records/dates';
import { makerFrom } from '@enfilade/records/makers';
import { materialsFrom } from '@enfilade/records/materials';
import type { Judgements } from './judgements.ts';
import type { ImageFacts } from './protocol.ts';
import type { MuseumObject, ObjectId } from './schema.ts';
import type { TrueSize } from './true-size.ts';

/** What the texts of a record say, without its picture and size. */
type Said = Pick<GroupingRecord, 'type' | 'materials' | 'maker' | 'from' | 'earliestYear' | 'latestYear'> & {
  readonly worked: readonly string[];
  readonly titleWords: readonly string[];
};

const said = new WeakMap<MuseumObject, Said>();

// Common practice, no source: a word fewer titles have names one thing, not a kind.
const TITLES_AT_LEAST = 3;
// A photograph cut by nobody shows the whole thing where it has the thing's own proportions, this near (as a logarithm).
const SAME_PROPORTION = 0.04;
const LEFT_OUT = new Set(
  'about above after along also among another before below beside between from into like near other over part set some than that their them this through under unknown untitled upon various view views when with within without'.split(
    ' ',
  ),
);

/** The rows of a pool, in the order of `objectIds`; ids of no record are left out. */
export function likenessRecordsOf(judgements: Judgements, objectIds: Iterable<ObjectId>): GroupingRecord[] {
  const { documents } = judgements;
  const pool = [...objectIds].flatMap((id) => {
    const object = documents.get('objects', id);
    return object === undefined ? [] : [{ id, object, texts: textsOf(object) }];
  });
  const titles = new Map<string, number>();
  for (const { texts } of pool) for (const word of texts.titleWords) titles.set(word, (titles.get(word) ?? 0) + 1);
  return pool.map(({ id, object, texts }) => {
    const { worked, titleWords, ...known } = texts;
    const size = sizeOf(judgements, id, object.count);
    const picture = pictureOf(judgements, id, object.count);
    const tags = [...worked, ...titleWords.filter((word) => (titles.get(word) ?? 0) >= TITLES_AT_LEAST)];
    return {
      id,
      ...known,
      ...(tags.length > 0 ? { tags } : {}),
      ...size,
      ...(picture === undefined ? {} : pictured(picture, size)),
    };
  });
}

function textsOf(object: MuseumObject): Said {
  const known = said.get(object);
  if (known !== undefined) return known;
  const { materials, worked } = materialsFrom(object.medium ?? '');
  const maker = makerFrom(object.maker ?? '').makers.find(({ unknown }) => !unknown);
  const { earliest, latest, flags } = dateFrom(object.dateText ?? '');
  const type = object.type?.trim() ?? '';
  const open = flags.includes('open start') || flags.includes('open end');
  const texts: Said = {
    ...(type === '' ? {} : { type }),
    ...(materials.length > 0 ? { materials } : {}),
    // What is after somebody, or of their circle, is not by them.
    ...(maker === undefined || maker.name === '' || maker.qualifiers.length > 0 ? {} : { maker: maker.name }),
    from: originOf(object),
    ...(earliest === null || open ? {} : { earliestYear: earliest.year }),
    ...(latest === null || open ? {} : { latestYear: latest.year }),
    worked,
    titleWords: titleWordsOf(object, [type, ...materials].join(' ').toLowerCase()),
  };
  said.set(object, texts);
  return texts;
}

/** Who lends it, or where else it comes from, as one says "from". */
export function originOf({ lender, source }: MuseumObject): string {
  if (lender !== '') return lender;
  if (source === 'artist') return 'the artist';
  return source === 'bought' ? 'what was bought' : 'the museum’s own';
}

/** Words of a title that its type and stuff do not say already. */
function titleWordsOf({ title }: MuseumObject, saidAlready: string): string[] {
  const words = title.toLowerCase().match(/[\p{L}][\p{L}’'-]{3,}/gu) ?? [];
  return [...new Set(words)].filter((word) => !LEFT_OUT.has(word) && !saidAlready.includes(word.replace(/s$/, '')));
}

type Size = Pick<GroupingRecord, 'heightMm' | 'widthMm' | 'depthMm'>;

/** The size of a record; of one that counts several, the middle of its pieces'. A depth of 0 is one not recorded. */
function sizeOf(judgements: Judgements, id: ObjectId, count: number): Size {
  const sizes = Array.from({ length: count }, (_, n) => judgements.sizeOf(`${id}#${n + 1}`)).filter(
    (size): size is TrueSize => size?.known === true,
  );
  const middle = (of: (size: TrueSize) => number): number | undefined => {
    const values = sizes
      .map(of)
      .filter((mm) => mm > 0)
      .sort((a, b) => a - b);
    return values[values.length >> 1];
  };
  const [heightMm, widthMm, depthMm] = [
    middle((size) => size.heightMm),
    middle((size) => size.widthMm),
    middle((size) => size.depthMm),
  ];
  return {
    ...(heightMm === undefined ? {} : { heightMm }),
    ...(widthMm === undefined ? {} : { widthMm }),
    ...(depthMm === undefined ? {} : { depthMm }),
  };
}

/** The picture of a record, else of the first of its pieces that has one. */
function pictureOf(judgements: Judgements, id: ObjectId, count: number): ImageFacts | undefined {
  for (let n = 1; n <= count; n++) {
    const facts = judgements.pictureOf(`${id}#${n}`);
    if (facts !== undefined) return facts;
  }
  return undefined;
}

function pictured(facts: ImageFacts, size: Size): Pick<GroupingRecord, 'palette' | 'silhouette'> {
  const silhouette = silhouetteIn(facts, size);
  return {
    ...(facts.body.length === 0 ? {} : { palette: facts.body.map(({ lab, share }) => ({ ...lab, share })) }),
    ...(silhouette === undefined ? {} : { silhouette }),
  };
}

/** The thing's outline, where the picture shows it: its ground is left out, a person says so, or it fills the picture. */
function silhouetteIn({ silhouette, cutOut }: ImageFacts, { heightMm, widthMm }: Size): Silhouette | undefined {
  if (silhouette === undefined || cutOut === undefined) return undefined;
  if (cutOut.how !== 'whole' || cutOut.choice === 'whole') return silhouette;
  if (heightMm === undefined || widthMm === undefined) return undefined;
  return Math.abs(Math.log((silhouette.aspect * heightMm) / widthMm)) <= SAME_PROPORTION ? silhouette : undefined;
}
