/** One way to ask: which kind of arrangement, and the few settings it needs; ways are then laid along the foot. */
import { type KindOffered, kindsFor, partCounts } from '@enfilade/shared/arrange-kinds';
import type { ArrangeKind, ArrangeWish } from '@enfilade/shared/arrange-task';
import { KIND_WORDS } from '@enfilade/shared/arrangement-words';
import { type PieceId, type SurfaceId, surfaceParts } from '@enfilade/shared/schema';
import { capital } from '@enfilade/shared/surface-names';
import { useEffect, useId, useRef, useState } from 'react';
import { openCandidates } from '../shell/foot.ts';
import { useRoots, useShow } from '../sync/hooks.ts';
import { largestOf } from './hang-targets.ts';
import { LengthField } from './length-field.tsx';
import { FocalChoice } from './vignette-form.tsx';
import './arrange-form.css';

/** The slider's five stops, even to loose. */
const LOOSENESS_WORDS = ['even', 'nearly even', 'easy', 'loose', 'very loose'] as const;

/** Gaps to begin with (mm): practice of the trade, no source; a line takes the show's own. */
const GAPS: Readonly<Record<Exclude<ArrangeKind, 'line'>, number>> = {
  halo: 60,
  salon: 60,
  double: 100,
  pendants: 180,
  massed: 20,
  carrier: 60,
  plinths: 950,
};

interface FormProps {
  readonly pieceIds: readonly PieceId[];
  readonly wall: SurfaceId | null;
  /** The room one is in; null on the layout floor. */
  readonly roomId: string | null;
  readonly leave: () => void;
}

export function ArrangeForm({ pieceIds, wall, roomId, leave }: FormProps) {
  const { judgements } = useShow();
  useRoots('places', 'objects', 'pieces', 'pinned');
  const id = useId();
  const { possible, not } = kindsFor(judgements, { pieceIds, wall, roomId });
  const [chosen, setChosen] = useState<ArrangeKind | null>(null);
  const offered = possible.find(({ kind }) => kind === chosen) ?? possible[0];
  const form = useRef<HTMLDivElement>(null);
  useEffect(() => {
    form.current?.scrollIntoView({ block: 'nearest' });
  }, []);
  return (
    <div ref={form} className="vignette-form arrange-form">
      <fieldset className="arrange-kinds">
        <legend>Arrange them</legend>
        {possible.map(({ kind }) => (
          <label key={kind}>
            <input type="radio" name={`${id}-kind`} checked={kind === offered?.kind} onChange={() => setChosen(kind)} />{' '}
            {KIND_WORDS[kind]}
          </label>
        ))}
      </fieldset>
      {not.length === 0 ? null : (
        <details className="arrange-not" open={possible.length === 0}>
          <summary>{possible.length === 0 ? 'None is possible here' : `${not.length} not possible here`}</summary>
          <ul>
            {not.map(({ kind, why }) => (
              <li key={kind}>
                <b>{capital(KIND_WORDS[kind])}.</b> {why}
              </li>
            ))}
          </ul>
        </details>
      )}
      {offered === undefined ? (
        <p className="vignette-form-commands">
          <button type="button" className="act" onClick={leave}>
            leave it
          </button>
        </p>
      ) : (
        <Settings key={offered.kind} {...{ offered, wall, roomId, leave }} />
      )}
    </div>
  );
}

function Settings({ offered, wall, roomId, leave }: Omit<FormProps, 'pieceIds'> & { readonly offered: KindOffered }) {
  const { judgements } = useShow();
  const { kind, pieceIds, carriers } = offered;
  const id = useId();
  const area = (pieceId: PieceId): number => {
    const size = judgements.sizeOf(pieceId);
    return size === null ? 0 : size.widthMm * size.heightMm;
  };
  const [focal, setFocal] = useState<PieceId | null>(kind === 'halo' ? largestOf(pieceIds, area) : null);
  const [stop, setStop] = useState(2);
  const [gapMm, setGapMm] = useState(kind === 'line' ? judgements.setting('gapMm') : GAPS[kind]);
  const [carrier, setCarrier] = useState<PieceId | null>(carriers[0] ?? null);
  const levels = carrier === null ? [] : judgements.where.levelsOf(carrier);
  const [level, setLevel] = useState<number | null>(null);
  const surface = kind === 'plinths' || wall === null ? `${roomId ?? surfaceParts(wall ?? '')?.roomId}:floor` : wall;
  const ask = (): void => {
    const wish: ArrangeWish = {
      ...{ kind, pieceIds, surface, gapMm },
      ...(focal === null ? {} : { focal }),
      ...(kind === 'halo' ? { looseness: stop / (LOOSENESS_WORDS.length - 1) } : {}),
      ...(carrier === null || carriers.length === 0 ? {} : { carrier }),
      ...(kind === 'massed' && level !== null && level < levels.length ? { level } : {}),
    };
    openCandidates(wish);
  };
  const mayFocus = kind === 'salon' || (kind === 'pendants' && pieceIds.length > 2);
  return (
    <>
      {kind === 'halo' || mayFocus ? (
        <FocalChoice
          label={kind === 'halo' ? 'Around' : 'In the middle'}
          pieces={pieceIds}
          focal={focal}
          choose={setFocal}
          mayBeNone={mayFocus}
        />
      ) : null}
      {carriers.length === 0 ? null : (
        <FocalChoice label={kind === 'massed' ? 'On' : 'Round'} pieces={carriers} focal={carrier} choose={setCarrier} />
      )}
      {kind === 'massed' && levels.length > 1 ? (
        <>
          <label htmlFor={`${id}-level`}>Level</label>
          <select
            id={`${id}-level`}
            className="focal-choice"
            value={level ?? ''}
            onChange={(event) => setLevel(event.target.value === '' ? null : Number(event.target.value))}
          >
            <option value="">all of them</option>
            {levels.map((heightMm, index) => (
              <option key={heightMm} value={index}>
                {index === 0 ? 'top' : `level ${index + 1}`}
              </option>
            ))}
          </select>
        </>
      ) : null}
      <LengthField
        label="Least gap"
        mm={gapMm}
        leastMm={0}
        mostMm={3000}
        take={(mm) => {
          setGapMm(mm);
          return null;
        }}
      />
      {kind === 'halo' ? (
        <>
          <label htmlFor={`${id}-loose`}>How loose: {LOOSENESS_WORDS[stop]}</label>
          <input
            id={`${id}-loose`}
            className="halo-loose"
            type="range"
            min={0}
            max={LOOSENESS_WORDS.length - 1}
            step={1}
            value={stop}
            aria-valuetext={LOOSENESS_WORDS[stop]}
            onChange={(event) => setStop(Number(event.target.value))}
          />
        </>
      ) : null}
      <Notes {...{ offered, carrier }} />
      <p className="vignette-form-commands">
        <button
          type="button"
          className="act main"
          onClick={ask}
          disabled={(kind === 'halo' && focal === null) || (carriers.length > 0 && carrier === null)}
        >
          Show ways
        </button>
        <button type="button" className="act" onClick={leave}>
          leave it
        </button>
      </p>
    </>
  );
}

/** What has to be known beforehand: who is of what part, whose size is not known, who is pinned. */
function Notes({ offered, carrier }: { readonly offered: KindOffered; readonly carrier: PieceId | null }) {
  const { judgements } = useShow();
  const { kind, pieceIds } = offered;
  const count = (of: (pieceId: PieceId) => boolean) => pieceIds.filter(of).length;
  const unsized = count((id) => judgements.sizeOf(id)?.known === false);
  const stands = kind === 'massed' || kind === 'plinths' || kind === 'carrier';
  const flat = kind === 'massed' || kind === 'plinths' ? count((id) => (judgements.sizeOf(id)?.depthMm ?? 0) === 0) : 0;
  const pinned = count((id) => judgements.isPinned(id));
  const parts = kind === 'carrier' && carrier !== null ? partCounts(judgements, carrier, pieceIds) : null;
  return (
    <>
      {parts === null ? null : (
        <p>
          {parts.on} on it, {parts.around} beside it, {parts.above} on the wall above: what is flat hangs.
        </p>
      )}
      {unsized === 0 ? null : <p>{unsized} of them have no known size and are taken at a stand-in size, hatched.</p>}
      {flat === 0 ? null : <p>{flat} of them have no depth on record and are taken to be as deep as they are wide.</p>}
      {pinned === 0 ? null : (
        <p>
          {pinned} of them {pinned === 1 ? 'is' : 'are'} pinned and {pinned === 1 ? 'stays' : 'stay'}.
        </p>
      )}
      {stands ? <p>Weight, tipping and ways out are not judged here: see the cautions on their cards.</p> : null}
    </>
  );
}
