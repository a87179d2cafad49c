/** A small true picture of a thing: the 256 px one, over its miniature from the atlas until it has come. */
import { ATLAS_CELL_PX, ATLAS_COLUMNS } from '@enfilade/shared/protocol';
import { useState } from 'react';
import { usePictures, useShow } from '../sync/hooks.ts';
import './picture.css';

interface PictureProps {
  readonly sha256: string | null;
  readonly widthPx: number;
  readonly heightPx: number;
  /** The miniature is enough: no larger picture is fetched. */
  readonly small?: boolean;
}

/** Decorative: what it shows is named beside it. */
export function Picture({ sha256, widthPx, heightPx, small = false }: PictureProps) {
  const { pictures } = useShow();
  usePictures();
  const [come, setCome] = useState<string | null>(null);
  if (sha256 === null) return <span className="picture picture-none" style={{ width: widthPx, height: heightPx }} />;
  const facts = pictures.get(sha256);
  const style: React.CSSProperties = { width: widthPx, height: heightPx };
  const url = small ? null : pictures.urlOf(sha256, 256);
  // Nothing of the miniature shows through a cut-out once the picture itself has come.
  if (facts !== undefined && (url === null || come !== url)) {
    // A miniature is fitted and centred in its cell; shown as large as the picture will be.
    const fit = ATLAS_CELL_PX / Math.max(facts.widthPx, facts.heightPx);
    const scale = Math.max(widthPx / (facts.widthPx * fit), heightPx / (facts.heightPx * fit));
    const cell = ATLAS_CELL_PX * scale;
    const column = facts.cell.index % ATLAS_COLUMNS;
    const row = Math.floor(facts.cell.index / ATLAS_COLUMNS);
    style.backgroundImage = `url(${pictures.atlasUrl(facts.cell.page)})`;
    style.backgroundSize = `${cell * ATLAS_COLUMNS}px auto`;
    style.backgroundPosition = `${-(column * cell + (cell - widthPx) / 2)}px ${-(row * cell + (cell - heightPx) / 2)}px`;
  }
  if (url === null && facts !== undefined) return <span className="picture" style={style} />;
  return (
    <span className="picture" style={style}>
      <img
        src={url ?? pictures.urlOf(sha256, 256)}
        alt=""
        draggable={false}
        decoding="async"
        onLoad={() => setCome(url)}
        onError={(event) => {
          event.currentTarget.hidden = true;
        }}
      />
    </span>
  );
}
