/** The column beside the stage: what is being faced, its paint, its vignettes, and all that is on it as a list. */
import { lrvOf } from '@enfilade/colour/spaces';
import { LAYOUT_FLOOR, type RoomId, type SurfaceId, surfaceParts } from '@enfilade/shared/schema';
import { capital, shortSurfaceName } from '@enfilade/shared/surface-names';
import { lengthText, sizeText } from '@enfilade/space/lengths';
import { usePreferences } from '../preferences.ts';
import { useStore } from '../selection.ts';
import { StateMark } from '../shell/marks.tsx';
import { STRIP_SIDES } from '../shell/strip-plan.ts';
import { wallsCaptioned } from '../stage/captioned.ts';
import { usePictures, useShow } from '../sync/hooks.ts';
import { useRestingRoots } from '../sync/resting-roots.ts';
import { aboutText } from '../talk/remark-words.ts';
import { RemarksBlock } from '../talk/remarks-block.tsx';
import { SpotRemark } from '../talk/spot-remark.tsx';
import { toAddress, type View } from '../view-address.ts';
import { CeilingCaption } from './ceiling-caption.tsx';
import { ListFold } from './list-fold.tsx';
import { PaintLine } from './paint-line.tsx';
import { ReadingCounts } from './reading-counts.tsx';
import { VignetteCaption } from './vignette-caption.tsx';
import { vignettesOn } from './vignettes-on.ts';
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
      {here.map((vignette) => (
        <VignetteCaption key={vignette.id} here={vignette} alone={false} />
      ))}
      <RemarksBlock
        about={{ kind: 'wall', surface }}
        what="this wall"
        command="remark on the wall…"
        also={(about) => about.kind === 'spot' && about.surface === surface}
      />
      <SpotRemark surfaces={[surface]} />
      <ListFold surface={surface} words="All on this wall, as a list" />
    </div>
  );
}

function RoomCaption({ roomId }: { readonly roomId: RoomId }) {
  const show = useShow();
  const { documents, judgements } = show;
  const { unit } = usePreferences();
  const captioned = useStore(wallsCaptioned);
  const room = documents.get('rooms', roomId);
  if (room === undefined) return null;
  const fall = Math.max(...room.cornersMm) - Math.min(...room.cornersMm);
  const carriers = [...judgements.where.directlyOn(`${roomId}:floor`)].filter(
    (pieceId) => judgements.where.levelsOf(pieceId).length > 0,
  );
  return (
    <div className="stage-caption">
      <p className="t1">Fold-out: the plan, its four walls laid flat</p>
      <h1>{room.name}</h1>
      <p className="t1">
        {sizeText(room.widthMm, room.depthMm, null, unit)}, walls {lengthText(room.heightMm, unit).replace(/\.0$/, '')}.
        {fall > 0 ? ` The floor falls ${lengthText(fall, unit)}.` : ''}
      </p>
      <p className="t1">
        <a href={toAddress({ sheet: 'wall', surface: `${roomId}:ceiling` })}>ceiling</a>
        {show.may('rooms') ? (
          <>
            {', '}
            <a href={toAddress({ sheet: 'measure', roomId })}>measure</a>
          </>
        ) : null}
      </p>
      {captioned ? null : (
        <ul className="room-walls">
          {STRIP_SIDES.map((side) => {
            const surface = `${roomId}:${side}`;
            const paint = judgements.paintOf(surface);
            return (
              <li key={side}>
                <h2>
                  <a href={toAddress({ sheet: 'wall', surface })}>{capital(shortSurfaceName(documents, surface))}</a>
                </h2>
                {paint === null ? null : (
                  <p className="t1">
                    {paint.name}, LRV {Math.round(lrvOf(paint.lab))}
                  </p>
                )}
                {vignettesOn(judgements, surface).map(({ id, vignette }) => {
                  const state = judgements.standingOf(id)?.state ?? 'drafted';
                  return (
                    <p key={id} className="t1 room-vignette">
                      <StateMark state={state} sizePx={11} />
                      <span>
                        {vignette.name}, {state}
                      </span>
                    </p>
                  );
                })}
                <ReadingCounts surface={surface} only="lost" />
              </li>
            );
          })}
        </ul>
      )}
      {carriers.length === 0 ? null : (
        <>
          <p className="t1 b">Carriers</p>
          {carriers.map((pieceId) => {
            const load = judgements.where.loadOf(pieceId).length;
            return (
              <p className="t1" key={pieceId}>
                {judgements.nameOf(pieceId)}: {load === 0 ? 'bare' : `${load} on it`}
              </p>
            );
          })}
        </>
      )}
      <RoomRemarks roomId={roomId} />
      <ListFold surface={`${roomId}:floor`} words="All on this floor, as a list" />
    </div>
  );
}

/** Remarks on a room's floor, and on its walls and spots on them, each under the name of its surface. */
function RoomRemarks({ roomId }: { readonly roomId: RoomId }) {
  const { judgements, documents } = useShow();
  const { unit } = usePreferences();
  const floor = `${roomId}:floor`;
  const surfaces = [floor, ...STRIP_SIDES.map((side) => `${roomId}:${side}`)];
  return (
    <>
      <RemarksBlock
        about={{ kind: 'wall', surface: floor }}
        what={`the floor of the ${documents.get('rooms', roomId)?.name ?? 'room'}`}
        command="remark on the floor…"
        also={(about) => (about.kind === 'wall' || about.kind === 'spot') && surfaces.includes(about.surface)}
        headOf={(about) => <p className="t1 it">{aboutText(judgements, about, unit)}</p>}
      />
      <SpotRemark surfaces={surfaces} />
    </>
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
