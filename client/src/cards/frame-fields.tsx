/** What a work is framed in and how wide that is, chosen by who keeps the checklist, and what comes of it. */
import { chosenFrameOf } from '@enfilade/shared/frames';
import { FRAME_KINDS, type FrameFact, type FrameKind, type MuseumObject, type PieceId } from '@enfilade/shared/schema';
import type { TrueSize } from '@enfilade/shared/true-size';
import { lengthText, sizeText } from '@enfilade/space/lengths';
import { useId } from 'react';
import { type Unit, usePreferences } from '../preferences.ts';
import { useShow } from '../sync/hooks.ts';
import { type RecordProps, useCorrect } from './correcting.ts';
import { LengthField } from './length-field.tsx';

const KIND_WORDS: Readonly<Partial<Record<FrameKind, string>>> = {
  none: 'no frame',
  'from the picture': 'as in the picture',
};

/** Wider mouldings than this are not made; it is more likely a size of the whole. Common practice, no source. */
const WIDEST_MM = 400;

export function FrameFields({ pieceId, object, frozen }: RecordProps) {
  const correct = useCorrect(pieceId);
  const id = useId();
  const frame = object.frame ?? null;
  const chosen = chosenFrameOf(frame);
  const set = (next: FrameFact | null) => correct({ frame: next }, 'frame');
  return (
    <>
      <div className="typed-field">
        <label className="typed-label" htmlFor={id}>
          Framed in
        </label>
        {frozen ? (
          <span id={id} className={`typed-value typed-frozen${frame === null ? ' unk' : ''}`}>
            {frame === null ? 'not said' : (KIND_WORDS[frame.kind] ?? frame.kind)}
          </span>
        ) : (
          <select
            id={id}
            className={`record-kind${frame === null ? ' unk' : ''}`}
            value={frame?.kind ?? ''}
            onChange={(event) => {
              const kind = event.target.value as FrameKind | '';
              set(kind === '' ? null : { kind, widthMm: chosen?.widthMm ?? 0 });
            }}
          >
            <option value="">not said</option>
            {FRAME_KINDS.map((kind) => (
              <option key={kind} value={kind}>
                {KIND_WORDS[kind] ?? kind}
              </option>
            ))}
          </select>
        )}
      </div>
      {chosen === null ? null : (
        <LengthField
          label="Wide, as faced"
          mm={chosen.widthMm > 0 ? chosen.widthMm : null}
          frozen={frozen}
          leastMm={1}
          mostMm={WIDEST_MM}
          take={(widthMm) => set({ kind: chosen.kind, widthMm })}
          {...(chosen.widthMm > 0 ? {} : { hint: 'it is drawn once its width is known' })}
        />
      )}
      <FrameEffect pieceId={pieceId} object={object} />
    </>
  );
}

function FrameEffect({ pieceId, object }: { readonly pieceId: PieceId; readonly object: MuseumObject }) {
  const { judgements } = useShow();
  const { unit } = usePreferences();
  const text = effectText(object, judgements.sizeOf(pieceId), unit);
  const forAll = object.count > 1 ? ` It is that of all ${object.count} pieces.` : '';
  return (
    <p className="t1 q" aria-live="polite">
      {text}
      {forAll}
    </p>
  );
}

function effectText({ frame }: MuseumObject, size: TrueSize | null, unit: Unit): string {
  if (!frame) return 'Its picture’s own edge is taken for what meets the wall.';
  if (frame.kind === 'none') return 'Its own edge meets the wall.';
  if (frame.kind === 'from the picture') {
    return 'The photograph shows the frame, so none is drawn round it; the picture’s edge meets the wall.';
  }
  const meets = 'This colour meets the wall.';
  if (!(frame.widthMm > 0) || !size?.known) return meets;
  if (size.basis !== 'with its frame') return `${meets} It lies within the ${size.basis} size.`;
  return `${meets} It goes round the size as written: ${sizeText(size.heightMm, size.widthMm, null, unit)} in all.`;
}

export function FrameBrief({ object }: { readonly object: MuseumObject }) {
  const { unit } = usePreferences();
  const { frame } = object;
  if (!frame) return <span className="unk">not said</span>;
  const words = KIND_WORDS[frame.kind] ?? frame.kind;
  const width = chosenFrameOf(frame)?.widthMm ?? 0;
  return width > 0 ? `${words}, ${lengthText(width, unit)}` : words;
}
