/** What of the collection looks like a thing, or answers it though unlike: by palettes, outlines, sizes and what is known. */
import { deltaE2000 } from '@enfilade/colour/differences';
import type { Look } from '@enfilade/grouping/columns';
import { echoesOf } from '@enfilade/grouping/echoes';
import { type Features, featuresOf, meanColour } from '@enfilade/grouping/features';
import { apartIn, columnWeights, mixedDistance } from '@enfilade/grouping/mixed-distance';
import type { GroupingRecord } from '@enfilade/grouping/records';
import { outlineDistance } from '@enfilade/grouping/silhouette';
import { dateFrom } from '@enfilade/records/dates';
import { dimensionsFrom } from '@enfilade/records/dimensions';
import { outerSizeOf } from '@enfilade/records/outer-size';
import type { Collection } from './collection.ts';
import type { CollectionRow } from './database.ts';
import type { Images } from './images.ts';

/** A thing to look from, of the collection or of the checklist. */
export interface LookedFrom {
  readonly id: string;
  readonly type: string;
  readonly maker: string;
  readonly date: string;
  readonly dimensions: string;
  readonly picture: string;
}

export interface Alike {
  readonly row: CollectionRow;
  readonly words: string;
}

const FOUND = 24;
/** So many that are nearest at a first glance are compared closely: what one look may take of the server's time. */
const CLOSELY = 1200;
/** What looking weighs; common practice, no source: colour and outline before what a catalogue says. */
const WEIGHTS: Readonly<Record<Look, number>> = { colour: 2, shape: 1.5, size: 0.7, use: 1, age: 0.3 };
/** Apart by less than this of a look's range, two things are said to be alike in it. Own rule. */
const ALIKE = 0.15;
const WORDS: Readonly<Record<Look, string>> = {
  colour: 'like in colour',
  shape: 'like in outline',
  size: 'of a size',
  use: 'of one kind',
  age: 'of one time',
};

interface Seen {
  readonly row: CollectionRow;
  readonly record: GroupingRecord;
}

export class CollectionLooks {
  private readonly collection: Collection;
  private readonly images: Images;
  private pool: Promise<readonly Seen[]> | null = null;
  private poolOf = -1;

  constructor(collection: Collection, images: Images) {
    this.collection = collection;
    this.images = images;
  }

  /** The nearest first; nothing where the thing's picture is not known. */
  async find(from: LookedFrom, by: 'likeness' | 'echo'): Promise<readonly Alike[]> {
    const own = this.recordOf(from);
    if (own.palette === undefined) return [];
    const pool = (await this.poolNow()).filter(
      ({ row, record }) => record.id !== own.id && row.picture !== from.picture,
    );
    const near = nearestAtAGlance(own, by === 'echo' ? pool.filter(({ record }) => isApart(own, record)) : pool);
    if (near.length === 0) return [];
    const rows = new Map(near.map(({ row, record }) => [record.id, row]));
    const features = featuresOf([own, ...near.map(({ record }) => record)]);
    const found = by === 'echo' ? echoes(own.id, features) : likenesses(own.id, features);
    const pictures = new Set<string>();
    return found
      .flatMap(({ id, words }) => {
        const row = rows.get(id);
        // Two records of one drawing are one answer.
        if (row === undefined || pictures.has(row.picture ?? '')) return [];
        pictures.add(row.picture ?? '');
        return [{ row, words }];
      })
      .slice(0, FOUND);
  }

  private poolNow(): Promise<readonly Seen[]> {
    if (this.pool === null || this.poolOf !== this.collection.version) {
      this.poolOf = this.collection.version;
      this.pool = this.seen().catch((error: unknown) => {
        this.pool = null;
        throw error;
      });
    }
    return this.pool;
  }

  private async seen(): Promise<readonly Seen[]> {
    return (await this.collection.pictured()).map((row) => {
      const { type, maker, date, dimensions, picture } = row;
      return { row, record: this.recordOf({ id: row.key, type, maker, date, dimensions, picture: picture ?? '' }) };
    });
  }

  private recordOf({ id, type, maker, date, dimensions, picture }: LookedFrom): GroupingRecord {
    const facts = this.images.factsOf(picture);
    const palette = facts?.body.map(({ lab, share }) => ({ ...lab, share }));
    const silhouette = facts?.silhouette;
    const { earliest, latest } = dateFrom(date);
    const size = outerSizeOf({ dimensions: dimensionsFrom(dimensions) });
    return {
      id,
      ...(type === '' ? {} : { type }),
      ...(maker === '' || /^unknown$/i.test(maker) ? {} : { maker }),
      ...(earliest === null ? {} : { earliestYear: earliest.year }),
      ...(latest === null ? {} : { latestYear: latest.year }),
      ...(size === null ? {} : { heightMm: size.heightMm, widthMm: size.widthMm }),
      ...(size?.depthMm ? { depthMm: size.depthMm } : {}),
      ...(palette === undefined || palette.length === 0 ? {} : { palette }),
      ...(silhouette === undefined ? {} : { silhouette }),
    };
  }
}

/** Of another kind or maker, or far in time: what an echo is sought among. */
function isApart(own: GroupingRecord, other: GroupingRecord): boolean {
  return own.type !== other.type || own.maker !== other.maker;
}

function nearestAtAGlance(own: GroupingRecord, pool: readonly Seen[]): readonly Seen[] {
  if (pool.length <= CLOSELY) return pool;
  const mean = meanColour(own.palette ?? []) ?? [0, 0, 0];
  const ranked = pool.map((one) => {
    const colour = meanColour(one.record.palette ?? []);
    const far = colour === undefined ? 1 : Math.hypot(...colour.map((v, at) => v - (mean[at] ?? 0))) / 60;
    const { silhouette } = one.record;
    const shape = own.silhouette && silhouette ? outlineDistance(own.silhouette, silhouette) / 0.7 : 0.5;
    return { one, far: Math.min(far, 2 * shape) + 0.3 * (far + shape) };
  });
  return ranked
    .sort((a, b) => a.far - b.far)
    .slice(0, CLOSELY)
    .map(({ one }) => one);
}

function echoes(id: string, features: Features): { id: string; words: string }[] {
  const found = echoesOf([id], features, { difference: deltaE2000, count: 2 * FOUND });
  return found.map(({ id: other, apart, colour, outline }) => {
    const near = [colour && 'in colour', outline && 'in outline'].filter(Boolean).join(' and ');
    return { id: other, words: `${apart.join(', ')}; yet near ${near}` };
  });
}

function likenesses(id: string, { ids, columns }: Features): { id: string; words: string }[] {
  const weights = columnWeights(columns, WEIGHTS);
  const distance = mixedDistance(columns, weights);
  const own = ids.indexOf(id);
  return ids
    .map((other, row) => ({ id: other, row, far: distance(own, row) }))
    .filter(({ row }) => row !== own)
    .sort((a, b) => a.far - b.far || (a.id < b.id ? -1 : 1))
    .slice(0, 2 * FOUND)
    .map((found) => ({ id: found.id, words: alikeIn(columns, own, found.row) }));
}

function alikeIn(columns: Features['columns'], own: number, row: number): string {
  const apart = new Map<Look, number[]>();
  for (const column of columns) {
    const far = apartIn(column, own, row);
    if (far >= 0) apart.set(column.look, [...(apart.get(column.look) ?? []), far]);
  }
  const looks = (Object.keys(WORDS) as Look[]).filter((look) => {
    const known = apart.get(look) ?? [];
    return known.length > 0 && known.reduce((sum, far) => sum + far, 0) / known.length <= ALIKE;
  });
  return looks.length === 0 ? 'near in all' : looks.map((look) => WORDS[look]).join(', ');
}
