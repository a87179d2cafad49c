import { LAYOUT_FLOOR, type SurfaceId, surfaceParts } from '@enfilade/shared/schema';
import { capital, shortSurfaceName } from '@enfilade/shared/surface-names';
import { usePictures, useShow } from '../sync/hooks.ts';
import { useRestingRoots } from '../sync/resting-roots.ts';
import { RemarksBlock } from '../talk/remarks-block.tsx';
import { SpotRemark } from '../talk/spot-remark.tsx';
import { toAddress, type View } from '../view-address.ts';
import { ArrangeStart } from './arrange-start.tsx';
import { CautionCounts } from './caution-counts.tsx';
import { CeilingCaption } from './ceiling-caption.tsx';
import { ListFold } from './list-fold.tsx';
import { PaintLine } from './paint-line.tsx';
import { ReadingCounts } from './reading-counts.tsx';
import { RoomCaption } from './room-caption.tsx';
import { VignetteCaption } from './vignette-caption.tsx';
import { vignettesOn } from './vignettes-on.ts';
import { WallLabels } from './wall-labels.tsx';
import { WallLight } from './wall-light.tsx';
import './stage-caption.css';

/** A caption keeps up with others' hands within this (ms): its counts are of a whole wall. */
const REST_MS = 120;

export function StageCaption({ view }: { readonly view: View }) {
  useRestingRoots(
    REST_MS,
    'rooms',
    'openings',
    'places',
    'paints',
    'deck',
    'vignettes',
    'memberOf',
    'objects',
    'pieces',
    'signatures',
    'proposals',
    'proposed',
    'settings',
  );
  usePictures();
  if (view.sheet === 'room') return <RoomCaption roomId={view.roomId} />;
  if (view.sheet === 'wall' && view.surface.endsWith(':ceiling')) return <CeilingCaption surface={view.surface} />;
  if (view.sheet === 'wall') return <WallCaption surface={view.surface} />;
  if (view.sheet === 'layout') return <LayoutCaption />;
  return null;
}

function WallCaption({ surface }: { readonly surface: SurfaceId }) {
  const { documents, judgements } = useShow();
  const roomId = surfaceParts(surface)?.roomId ?? '';
  const room = documents.get('rooms', roomId);
  const here = vignettesOn(judgements, surface);
  const bare = judgements.where.directlyOn(surface).size === 0;
  const name = capital(shortSurfaceName(documents, surface));
  return (
    <div className="stage-caption">
      <p className="t1">
        <a href={toAddress({ sheet: 'room', roomId })}>{room?.name}</a>, {shortSurfaceName(documents, surface)}
      </p>
      {here.length === 0 ? <h1>{name}</h1> : <h1 className="spoken">{`${room?.name}, ${name}`}</h1>}
      <PaintLine surface={surface} />
      {bare ? <p className="cap">Bare. Take something from the rail.</p> : <ReadingCounts surface={surface} />}
      <CautionCounts surface={surface} />
      {here.map((vignette) => (
        <VignetteCaption key={vignette.id} here={vignette} alone={false} />
      ))}
      <div className="caption-row">
        <ArrangeStart key={surface} surface={surface} here={here} />
        <ListFold surface={surface} words="All on this wall, as a list" />
      </div>
      {bare ? null : <WallLight surface={surface} />}
      {bare ? null : <WallLabels surface={surface} />}
      <RemarksBlock
        about={{ kind: 'wall', surface }}
        what="this wall"
        command="remark on the wall…"
        also={(about) => about.kind === 'spot' && about.surface === surface}
      />
      <SpotRemark surfaces={[surface]} />
    </div>
  );
}

function LayoutCaption() {
  const { judgements } = useShow();
  const bare = judgements.where.directlyOn(LAYOUT_FLOOR).size === 0;
  return (
    <div className="stage-caption">
      <h1>Layout floor</h1>
      <p className="cap">
        {bare
          ? 'Bare. Lay things out here, at true size, before they meet a wall.'
          : 'At true size, before they meet a wall.'}
      </p>
      {vignettesOn(judgements, LAYOUT_FLOOR).map((here) => (
        <VignetteCaption key={here.id} here={here} alone={false} />
      ))}
      <RemarksBlock
        about={{ kind: 'wall', surface: LAYOUT_FLOOR }}
        what="the layout floor"
        command="remark on the floor…"
        also={(about) => about.kind === 'spot' && about.surface === LAYOUT_FLOOR}
      />
      <SpotRemark surfaces={[LAYOUT_FLOOR]} />
      <ListFold surface={LAYOUT_FLOOR} words="All on this floor, as a list" />
    </div>
  );
}
