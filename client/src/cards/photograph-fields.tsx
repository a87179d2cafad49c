/** What of a photograph was taken for the thing, how sure that is, and how far its colours are to be believed. */
import { hexFromLabD65 } from '@enfilade/colour/spaces';
import * as commands from '@enfilade/shared/commands';
import { PICTURE_CUTS, type PictureCut, pictureKeyOf } from '@enfilade/shared/picture-cuts';
import type { ImageFacts } from '@enfilade/shared/protocol';
import { objectOfPiece, type PieceId } from '@enfilade/shared/schema';
import { useId } from 'react';
import { Picture } from '../shell/picture.tsx';
import { useShow } from '../sync/hooks.ts';
import { act } from './acting.ts';
import type { RecordProps } from './correcting.ts';
import { beliefOf, briefOf, cutText, effectText, shareText } from './photograph-words.ts';
import './photograph-fields.css';

const WAYS: Readonly<Record<PictureCut, { readonly name: string; readonly said: string; readonly about: string }>> = {
  'leave out': {
    name: 'leave the ground out',
    said: 'its ground is left out',
    about: 'the thing alone',
  },
  keep: { name: 'keep the ground', said: 'its ground is kept', about: 'square round it' },
  whole: { name: 'whole photograph', said: 'the photograph is taken whole', about: 'to its very edge' },
};

const LONG_PX = 96;

export function PhotographFields({ pieceId, frozen }: RecordProps) {
  const show = useShow();
  const { judgements, documents } = show;
  const id = useId();
  const sha256 = judgements.photographOf(pieceId);
  const picture = judgements.pictureOf(pieceId);
  if (sha256 === null || picture === undefined) return <p className="t1 q">It has no photograph yet.</p>;
  const word = documents.get('pictureCuts', sha256);
  // Until the server has made a cut, the picture is shown as it was found.
  const made = picture.sha256 === pictureKeyOf(sha256, word);
  const say = (cut: PictureCut | null, said: string) => act(show, commands.cutPicture(sha256, cut), said);
  return (
    <div className="photograph">
      <Shown picture={picture} pieceId={pieceId} />
      <p aria-live="polite">{made ? cutText(picture.cutOut) : 'The picture is being cut anew.'}</p>
      {made ? <Sentences texts={picture.cutOut?.doubts ?? []} /> : null}
      {frozen ? null : (
        <fieldset className="photograph-ways">
          <legend>Its ground</legend>
          {PICTURE_CUTS.map((cut, at) => (
            <div key={cut}>
              <button
                type="button"
                className={word === cut ? 'cmd on' : 'cmd'}
                aria-pressed={word === cut}
                aria-describedby={`${id}-${at}`}
                onClick={() => say(word === cut ? null : cut, word === cut ? 'as it was found' : WAYS[cut].said)}
              >
                {WAYS[cut].name}
              </button>
              <span className="t1 q" id={`${id}-${at}`}>
                {WAYS[cut].about}
              </span>
            </div>
          ))}
        </fieldset>
      )}
      {made ? <CutEffect pieceId={pieceId} sha256={sha256} said={word !== undefined} /> : null}
      {picture.photograph === undefined ? null : <Belief {...picture.photograph} />}
    </div>
  );
}

/** What a person's word changes: how the work reads, and for how many records. */
function CutEffect({ pieceId, sha256, said }: { pieceId: PieceId; sha256: string; said: boolean }) {
  const { judgements, documents } = useShow();
  const now = judgements.readingOf(pieceId)?.word ?? null;
  const found = said ? (judgements.readingAsFound(pieceId)?.word ?? null) : now;
  const shown = new Set<string>();
  for (const [id, { picture }] of documents.all('objects')) if (picture === sha256) shown.add(id);
  for (const [id, { picture }] of documents.all('pieces')) if (picture === sha256) shown.add(objectOfPiece(id));
  const texts = [
    said ? effectText(now, found) : '',
    shown.size > 1 ? `${shown.size} records show this photograph.` : '',
  ];
  const text = texts.filter((part) => part !== '').join(' ');
  return text === '' ? null : <p className="t1 q">{text}</p>;
}

function Belief({ confidence, doubts }: NonNullable<ImageFacts['photograph']>) {
  return (
    <>
      <p>
        Its colours: {beliefOf(confidence)}, {shareText(confidence)}
      </p>
      <Sentences texts={doubts} />
    </>
  );
}

function Sentences({ texts }: { readonly texts: readonly string[] }) {
  if (texts.length === 0) return null;
  return (
    <ul className="photograph-doubts t1 q">
      {texts.map((text) => (
        <li key={text}>{text}</li>
      ))}
    </ul>
  );
}

export function PhotographBrief({ pieceId }: { readonly pieceId: PieceId }) {
  const { judgements } = useShow();
  const picture = judgements.pictureOf(pieceId);
  if (picture === undefined) return <span className="unk">none yet</span>;
  const colours = picture.photograph === undefined ? '' : `, colours ${beliefOf(picture.photograph.confidence)}`;
  return `${briefOf(picture.cutOut)}${colours}`;
}

/** The picture as it is shown now, on the paint of its wall: what is left of a ground is seen at once. */
function Shown({ picture, pieceId }: { readonly picture: ImageFacts; readonly pieceId: PieceId }) {
  const scale = LONG_PX / Math.max(picture.widthPx, picture.heightPx);
  const [widthPx, heightPx] = [picture.widthPx * scale, picture.heightPx * scale];
  const { judgements } = useShow();
  const surface = judgements.where.surfaceOf(pieceId);
  const paint = surface === null ? null : judgements.paintOf(surface);
  return (
    <div className="photograph-shown" style={paint === null ? undefined : { background: hexFromLabD65(paint.lab) }}>
      <Picture sha256={picture.sha256} widthPx={widthPx} heightPx={heightPx} />
    </div>
  );
}
