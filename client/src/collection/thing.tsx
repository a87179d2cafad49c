/** One thing of the collection: its picture, what is known of it, what is said of it, and the ways on from it. */
import type { CollectionRecord } from '@enfilade/shared/collection';
import { useState } from 'react';
import { Picture } from '../shell/picture.tsx';
import { usePictures, useShow } from '../sync/hooks.ts';
import { toAddress } from '../view-address.ts';
import { PhotographRecord } from './photograph-record.tsx';
import { Saying, type Standing } from './saying.tsx';

interface ThingProps {
  readonly record: CollectionRecord;
  readonly standing: Standing;
  /** Why it is shown: what it shares with the thing looked from. */
  readonly why?: string;
}

export function Thing({ record: told, standing, why }: ThingProps) {
  // Photographed here, it is shown at once as it will be told.
  const [photographed, setPhotographed] = useState<CollectionRecord | null>(null);
  const record = told.picture === null && photographed !== null ? photographed : told;
  const { number, title, date, medium, shown } = record;
  return (
    <li className={record.picture === null ? 'co-thing co-thing-bare' : 'co-thing'}>
      <ThingPicture record={record} longestPx={148} />
      <h3 className="co-title">{title}</h3>
      <p className="t1 co-facts">
        {[number, date, medium].filter(Boolean).join('; ')}
        <br />
        {shownText(shown)}
      </p>
      {why === undefined ? null : <p className="it co-why">{why}</p>}
      <Saying record={record} standing={standing} />
      {record.picture === null ? (
        <PhotographRecord record={record} done={setPhotographed} quiet />
      ) : (
        <p className="t1 co-ways">
          <a href={toAddress({ sheet: 'collection', part: 'like', of: 'number', id: number })}>
            like it<span className="spoken">: {title}</span>
          </a>
          <a href={toAddress({ sheet: 'collection', part: 'echo', of: 'number', id: number })}>
            echoes<span className="spoken"> of {title}</span>
          </a>
        </p>
      )}
    </li>
  );
}

export function ThingPicture({ record, longestPx }: { readonly record: CollectionRecord; readonly longestPx: number }) {
  const { pictures } = useShow();
  usePictures();
  const { picture } = record;
  if (picture === null) return <span className="co-no-picture t1">not photographed</span>;
  const { widthPx, heightPx } = pictures.get(picture) ?? { widthPx: 1, heightPx: 1 };
  const scale = longestPx / Math.max(widthPx, heightPx);
  return (
    <span className="co-picture">
      <Picture sha256={picture} widthPx={Math.round(widthPx * scale)} heightPx={Math.round(heightPx * scale)} />
    </span>
  );
}

export function shownText(shown: string | null): string {
  if (shown === '') return 'not known when it was last shown';
  return shown === null ? 'never shown' : `last shown ${shown.slice(0, 4)}`;
}
