/** Beside a ceiling seen from below: how high it is, its paint, and all that hangs from it. */
import { type SurfaceId, surfaceParts } from '@enfilade/shared/schema';
import { shortSurfaceName } from '@enfilade/shared/surface-names';
import { lengthText } from '@enfilade/space/lengths';
import { usePreferences } from '../preferences.ts';
import { useShow } from '../sync/hooks.ts';
import { RemarksBlock } from '../talk/remarks-block.tsx';
import { SpotRemark } from '../talk/spot-remark.tsx';
import { toAddress } from '../view-address.ts';
import { ListFold } from './list-fold.tsx';
import { PaintLine } from './paint-line.tsx';
import { VignetteCaption } from './vignette-caption.tsx';
import { vignettesOn } from './vignettes-on.ts';

export function CeilingCaption({ surface }: { readonly surface: SurfaceId }) {
  const { documents, judgements } = useShow();
  const { unit } = usePreferences();
  const roomId = surfaceParts(surface)?.roomId ?? '';
  const room = documents.get('rooms', roomId);
  if (room === undefined) return null;
  const bare = judgements.where.directlyOn(surface).size === 0;
  return (
    <div className="stage-caption">
      <p className="t1">
        <a href={toAddress({ sheet: 'room', roomId })}>{room.name}</a>, ceiling
      </p>
      <h1>Ceiling</h1>
      <p className="t1">
        Seen from below, the {shortSurfaceName(documents, `${roomId}:head`)} at its foot.{' '}
        {lengthText(room.heightMm, unit).replace(/\.0$/, '')} {unit} up.
      </p>
      <PaintLine surface={surface} />
      {bare ? <p className="cap">Nothing hangs from it. Take something from the rail.</p> : null}
      {vignettesOn(judgements, surface).map((here) => (
        <VignetteCaption key={here.id} here={here} alone={false} />
      ))}
      <RemarksBlock
        about={{ kind: 'wall', surface }}
        what="this ceiling"
        command="remark on the ceiling…"
        also={(about) => about.kind === 'spot' && about.surface === surface}
      />
      <SpotRemark surfaces={[surface]} />
      <ListFold surface={surface} words="All on this ceiling, as a list" />
    </div>
  );
}
