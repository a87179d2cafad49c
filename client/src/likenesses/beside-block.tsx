/** On a thing's card, folded: what goes with it, and what echoes it. Nothing is looked for until one of them is opened. */
import type { Echo } from '@enfilade/grouping/echoes';
import { objectOfPiece, type PieceId } from '@enfilade/shared/schema';
import { declinedSuggestions, suggestionKey } from '@enfilade/shared/suggestions';
import { CardGroup, useGroup } from '../cards/card-group.tsx';
import { useRoots, useShow } from '../sync/hooks.ts';
import type { View } from '../view-address.ts';
import { EchoOne } from './beside-one.tsx';
import { GoesWith } from './goes-with.tsx';
import { type Asked, useBeside, useEchoes } from './use-beside.ts';
import './beside-block.css';

const GOES = 'What goes with this';
const ECHOES = 'Echoes';

interface BlockProps {
  readonly pieceId: PieceId;
  readonly view: View;
}

export function BesideBlock({ pieceId, view }: BlockProps) {
  const id = objectOfPiece(pieceId);
  const [goes] = useGroup(GOES);
  const [heard] = useGroup(ECHOES);
  const beside = useBeside(id, goes);
  const echoes = useEchoes(id, heard);
  return (
    <>
      <CardGroup name={GOES} brief="sets, a focal work">
        {beside.kind === 'ready' ? (
          <GoesWith pieceId={pieceId} view={view} beside={beside.is} />
        ) : (
          <Waiting asked={beside} what="Looking for sets among the checklist" />
        )}
      </CardGroup>
      <CardGroup name={ECHOES} brief="unlike, yet answering">
        {echoes.kind === 'ready' ? (
          <Echoes pieceId={pieceId} view={view} echoes={echoes.is} />
        ) : (
          <Waiting asked={echoes} what="Looking through the checklist" />
        )}
      </CardGroup>
    </>
  );
}

function Waiting({ asked, what }: { readonly asked: Asked<unknown>; readonly what: string }) {
  if (asked.kind === 'failed') return <p className="t1">Nothing could be looked for: {asked.what}.</p>;
  if (asked.kind === 'stopped') {
    return (
      <p className="t1">
        Stopped; nothing was kept.{' '}
        <button type="button" onClick={asked.again}>
          look again
        </button>
      </p>
    );
  }
  if (asked.kind !== 'working' || asked.share === 0) return <p className="t1 q">{what}…</p>;
  return (
    <p className="t1">
      {what} <progress aria-label={what} value={asked.share} max={1} />{' '}
      <button type="button" onClick={asked.stop}>
        stop
      </button>
    </p>
  );
}

function Echoes({ pieceId, view, echoes }: BlockProps & { readonly echoes: readonly Echo[] }) {
  const { documents } = useShow();
  useRoots('declinedSuggestions', 'places', 'memberOf', 'vignettes');
  const id = objectOfPiece(pieceId);
  const away = declinedSuggestions(documents);
  const left = echoes.filter((echo) => !away.has(suggestionKey('echo', [id, echo.id])));
  if (left.length === 0) {
    return (
      <p className="t1 q">
        {echoes.length === 0
          ? 'Nothing of another kind or time is near it in colour or outline.'
          : 'What echoed it was declined.'}
      </p>
    );
  }
  return (
    <div className="beside">
      {left.map((echo) => (
        <EchoOne key={echo.id} pieceId={pieceId} view={view} echo={echo} />
      ))}
    </div>
  );
}
