/** Hang the selected around a focal work: which, how loose, what gap; candidates are then laid along the foot. */
import type { PieceId } from '@enfilade/shared/schema';
import { useId, useState } from 'react';
import { openCandidates } from '../shell/foot.ts';
import { useShow } from '../sync/hooks.ts';
import { haloTaskOf } from './halo-tasks.ts';
import { largestOf } from './hang-targets.ts';
import { LengthField } from './length-field.tsx';
import { FocalChoice } from './vignette-form.tsx';

/** The slider's five stops, even to loose. */
const LOOSENESS_WORDS = ['even', 'nearly even', 'easy', 'loose', 'very loose'] as const;

const HALO_GAP_MM = 60;

export function HaloForm(props: { pieceIds: readonly PieceId[]; wall: string; leave: () => void }) {
  const { pieceIds, wall, leave } = props;
  const { judgements } = useShow();
  const id = useId();
  const [focal, setFocal] = useState<PieceId | null>(
    largestOf(pieceIds, (pieceId) => {
      const size = judgements.sizeOf(pieceId);
      return size === null ? 0 : size.widthMm * size.heightMm;
    }),
  );
  const [stop, setStop] = useState(2);
  const [gapMm, setGapMm] = useState(HALO_GAP_MM);
  const unsized = pieceIds.filter((pieceId) => judgements.sizeOf(pieceId)?.known === false).length;
  const ask = (): void => {
    if (focal === null) return;
    const task = haloTaskOf(judgements, {
      wall,
      focal,
      pieceIds: pieceIds.filter((pieceId) => pieceId !== focal),
      gapMm,
      looseness: stop / (LOOSENESS_WORDS.length - 1),
    });
    if (task !== null) openCandidates(task);
  };
  return (
    <div className="vignette-form halo-form">
      <FocalChoice label="Around" pieces={pieceIds} focal={focal} choose={setFocal} />
      <LengthField
        label="Least gap"
        mm={gapMm}
        leastMm={0}
        mostMm={2000}
        take={(mm) => {
          setGapMm(mm);
          return null;
        }}
      />
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
      {unsized === 0 ? null : <p>{unsized} of them have no known size and are taken at a stand-in size, hatched.</p>}
      <p className="vignette-form-commands">
        <button type="button" className="act main" onClick={ask} disabled={focal === null || pieceIds.length < 2}>
          Show ways
        </button>
        <button type="button" className="act" onClick={leave}>
          leave it
        </button>
      </p>
    </div>
  );
}
