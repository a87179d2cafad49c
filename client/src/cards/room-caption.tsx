/** Beside a fold-out: the room, its walls where they are not captioned on the board, its carriers and its lists. */
import { lrvText } from '@enfilade/shared/paint-records';
import type { RoomId } from '@enfilade/shared/schema';
import { capital, shortSurfaceName } from '@enfilade/shared/surface-names';
import { lengthText, sizeText } from '@enfilade/space/lengths';
import { usePreferences } from '../preferences.ts';
import { useStore } from '../selection.ts';
import { StateMark } from '../shell/marks.tsx';
import { STRIP_SIDES } from '../shell/strip-plan.ts';
import { wallsCaptioned } from '../stage/captioned.ts';
import { useShow } from '../sync/hooks.ts';
import { aboutText } from '../talk/remark-words.ts';
import { RemarksBlock } from '../talk/remarks-block.tsx';
import { SpotRemark } from '../talk/spot-remark.tsx';
import { toAddress } from '../view-address.ts';
import { ListFold } from './list-fold.tsx';
import { ReadingCounts } from './reading-counts.tsx';
import { vignettesOn } from './vignettes-on.ts';
import './stage-caption.css';

export function RoomCaption({ roomId }: { readonly roomId: RoomId }) {
  const show = useShow();
  const { documents, judgements } = show;
  const { unit } = usePreferences();
  const captioned = useStore(wallsCaptioned);
  const room = documents.get('rooms', roomId);
  if (room === undefined) return null;
  const fall = Math.max(...room.cornersMm) - Math.min(...room.cornersMm);
  const overhead = judgements.where.directlyOn(`${roomId}:ceiling`).size;
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
        {overhead === 0 ? '' : ` (${overhead} from it)`}
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
                    {paint.name}, LRV {lrvText(paint)}
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
