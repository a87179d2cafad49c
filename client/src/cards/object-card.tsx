/** The index card of the selected thing: its record, where it is in numbers, how it reads, what to be careful of. */
import * as commands from '@enfilade/shared/commands';
import { type MuseumObject, objectOfPiece, type PieceId, pieceNumberOf, type Source } from '@enfilade/shared/schema';
import { onName } from '@enfilade/shared/surface-names';
import type { TrueSize } from '@enfilade/shared/true-size';
import { sizeText } from '@enfilade/space/lengths';
import type { ReactNode } from 'react';
import { BesideBlock } from '../likenesses/beside-block.tsx';
import { usePreferences } from '../preferences.ts';
import { choose } from '../selection.ts';
import { placeOnStage } from '../shell/stage-hand.ts';
import { useEntity, usePictures, useRoots, useShow } from '../sync/hooks.ts';
import { RemarksBlock } from '../talk/remarks-block.tsx';
import type { View } from '../view-address.ts';
import { act } from './acting.ts';
import { CardGroup, useGroup } from './card-group.tsx';
import { CautionsBlock } from './cautions-block.tsx';
import { FootingBlock } from './footing-block.tsx';
import { FrameBrief, FrameFields } from './frame-fields.tsx';
import { HardwareFields } from './hardware-fields.tsx';
import { IdentityFields } from './identity-fields.tsx';
import { LabelBlock } from './label-block.tsx';
import { LightBlock } from './light-block.tsx';
import { LoanBlock } from './loan-block.tsx';
import { PhotographBrief, PhotographFields } from './photograph-fields.tsx';
import { PinCommand } from './pin-command.tsx';
import { PlaceFields } from './place-fields.tsx';
import { PrivateBlock } from './private-block.tsx';
import { ReadingBlock } from './reading-block.tsx';
import { RecordFold } from './record-fold.tsx';
import { SizeFields } from './size-fields.tsx';
import './object-card.css';

const FROM: Record<Source, string> = {
  collection: 'The museum’s own',
  loan: 'On loan',
  artist: 'From the artist',
  bought: 'Bought for the show',
};

function whereFrom(object: MuseumObject): string {
  return object.lender === '' ? FROM[object.source] : `Lent by ${object.lender.replace(/^The /, 'the ')}`;
}

/** 'Unknown, c. 1840. Oil on canvas. 66 × 86 × 6 framed': what is recorded, in a label's order. */
function aboutText(object: MuseumObject, size: TrueSize | null, unit: 'cm' | 'in'): ReactNode {
  const who = [object.maker, object.dateText].filter(Boolean).join(', ');
  const words = [who, object.medium].filter(Boolean).join('. ');
  const basis = size === null || !size.known || size.basis === 'overall' ? '' : ` ${size.basis}`;
  return (
    <>
      {words === '' ? null : `${words}. `}
      {size?.known ? (
        <span className={size.certain ? undefined : 'unk'}>
          {sizeText(size.heightMm, size.widthMm, size.depthMm > 0 ? size.depthMm : null, unit)}
          {basis}
        </span>
      ) : (
        <span className="unk">size not known</span>
      )}
    </>
  );
}

export function ObjectCard({ pieceId, view }: { readonly pieceId: PieceId; readonly view: View }) {
  const show = useShow();
  const { judgements, documents } = show;
  const { unit } = usePreferences();
  const objectId = objectOfPiece(pieceId);
  const object = useEntity('objects', objectId);
  useRoots('places', 'pieces', 'rooms', 'openings', 'fixtures', 'paints', 'deck', 'settings', 'memberOf', 'vignettes');
  useRoots('pictureCuts');
  usePictures();
  const [record, toggleRecord] = useGroup('record');
  if (object === undefined) return null;
  const size = judgements.sizeOf(pieceId);
  const at = judgements.where.placeOf(pieceId);
  const surface = judgements.where.surfaceOf(pieceId);
  const frozen = !show.may('hang');
  const fixed = !show.may('checklist');
  const vignetteId = documents.get('memberOf', pieceId);
  const vignette = vignetteId === undefined ? undefined : documents.get('vignettes', vignetteId);
  const onWall = at !== null && judgements.where.wallOf(at[0]) !== null;
  const unplaced = judgements.piecesOf(objectId).filter((id) => judgements.where.placeOf(id) === null);
  return (
    <article className="card object-card" aria-label={`Card of ${judgements.nameOf(pieceId)}`}>
      <header>
        <p className="t1 q object-top">
          <span>
            {object.number}
            {object.count > 1 ? `, piece ${pieceNumberOf(pieceId)} of ${object.count}` : ''}
          </span>
          <button type="button" aria-expanded={record} onClick={toggleRecord}>
            record
          </button>
        </p>
        <h2>{object.title || object.number}</h2>
        <p className="t1 q">{aboutText(object, size, unit)}</p>
        <p className="t1 q">{whereFrom(object)}</p>
        {size?.note ? <p className="t1 q">{size.note}</p> : null}
      </header>
      {record ? (
        <>
          <hr className="rule" />
          <IdentityFields pieceId={pieceId} object={object} frozen={fixed} />
        </>
      ) : null}
      {onWall && surface !== null ? <ReadingBlock pieceId={pieceId} surface={surface} /> : null}
      <CautionsBlock pieceId={pieceId} />
      <hr className="rule" />
      {at === null ? (
        <UnplacedCommands pieceId={pieceId} unplaced={unplaced} view={view} frozen={frozen} />
      ) : (
        <>
          <p className="t1 q object-on">{onName(judgements, at[0])}</p>
          <PlaceFields pieceId={pieceId} at={at} frozen={frozen} />
          {frozen ? null : (
            <p className="object-commands">
              <button
                type="button"
                onClick={() =>
                  act(show, commands.unplace(documents, [pieceId]), `${judgements.nameOf(pieceId)} put back`)
                }
              >
                put back
              </button>
              <PinCommand pieceIds={[pieceId]} />
              {vignetteId === undefined || vignette === undefined ? null : (
                <button
                  type="button"
                  onClick={() =>
                    act(show, commands.leave(documents, [pieceId]), `taken out of ${vignette.name}; its place stays`)
                  }
                >
                  take out of {vignette.name}
                </button>
              )}
            </p>
          )}
        </>
      )}
      <CardGroup name="Size and weight" brief={<SizeBrief size={size} unit={unit} />}>
        <SizeFields pieceId={pieceId} object={object} frozen={fixed} />
      </CardGroup>
      <FootingBlock pieceId={pieceId} />
      <CardGroup name="Frame" brief={<FrameBrief object={object} />}>
        <FrameFields pieceId={pieceId} object={object} frozen={fixed} />
      </CardGroup>
      <CardGroup name="Photograph" brief={<PhotographBrief pieceId={pieceId} />}>
        <PhotographFields pieceId={pieceId} object={object} frozen={fixed} />
      </CardGroup>
      <CardGroup name="Hardware" brief={<HardwareBrief object={object} />}>
        <HardwareFields pieceId={pieceId} object={object} frozen={fixed} />
      </CardGroup>
      <RecordFold pieceId={pieceId} object={object} frozen={fixed} />
      <LabelBlock pieceId={pieceId} />
      <LightBlock pieceId={pieceId} />
      <LoanBlock objectId={objectId} />
      <BesideBlock pieceId={pieceId} view={view} />
      <PrivateBlock objectId={objectId} />
      <RemarksBlock about={{ kind: 'piece', pieceId }} what="this piece" />
    </article>
  );
}

function SizeBrief({ size, unit }: { readonly size: TrueSize | null; readonly unit: 'cm' | 'in' }) {
  if (!size?.known) return <span className="unk">not known</span>;
  return (
    <span className={size.certain ? undefined : 'unk'}>
      {sizeText(size.heightMm, size.widthMm, size.depthMm > 0 ? size.depthMm : null, unit)}
    </span>
  );
}

function HardwareBrief({ object }: { readonly object: MuseumObject }) {
  const hardware = useShow().judgements.hardwareOf(object);
  if (hardware === null) return <span className="unk">not known</span>;
  return hardware.kind === 'none' ? 'nothing' : hardware.kind;
}

function UnplacedCommands(props: { pieceId: PieceId; unplaced: readonly PieceId[]; view: View; frozen: boolean }) {
  const { pieceId, unplaced, view, frozen } = props;
  return (
    <>
      <p className="cap">{frozen ? 'Unplaced.' : 'Unplaced. Drag it onto the wall, or place it in the middle.'}</p>
      <p className="object-commands">
        {frozen ? null : (
          <button type="button" data-first-field="" onClick={() => void placeOnStage([pieceId], view)}>
            place
          </button>
        )}
        {unplaced.length > 1 ? (
          <button type="button" onClick={() => choose(unplaced)}>
            take all {unplaced.length}
          </button>
        ) : null}
      </p>
    </>
  );
}
