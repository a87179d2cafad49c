/** One line of the list of cautions: what it says, of which pieces, and a press away each of them with its acceptance. */

import { acceptingOf } from '@enfilade/shared/accepted';
import { capital } from '@enfilade/shared/surface-names';
import { useState } from 'react';
import { AcceptCaution, AcceptForm } from '../cards/accept-caution.tsx';
import { choose } from '../selection.ts';
import { CautionMark } from '../shell/marks.tsx';
import { useShow } from '../sync/hooks.ts';
import { viewOfSurface } from '../talk/remark-words.ts';
import { go, THE_HANG } from '../view-address.ts';
import type { Alike } from './alike.ts';

/** So many pieces are listed without a press. */
const SHOWN = 2;

export function AlikeCautions({ alike: { what, ask, source, of } }: { readonly alike: Alike }) {
  const { judgements, me } = useShow();
  const [accepting, setAccepting] = useState(false);
  const [open, setOpen] = useState(false);
  const listed = open || of.length <= SHOWN ? of : [];
  const accepted = of.filter((one) => one.accepted !== null).length;
  const left = of.filter((one) => one.accepted === null);
  const how = left[0] === undefined ? null : acceptingOf(left[0].caution, me.person.role);
  const state = accepted === 0 ? '' : accepted === of.length ? ', all accepted' : `, ${accepted} accepted`;
  return (
    <li className="caution-row">
      <CautionMark />
      <div>
        <p className="caution-what">
          {capital(what)} Ask {ask}.
        </p>
        <p className="t1">
          {capital(source)}.{' '}
          {of.length <= SHOWN ? null : (
            <button type="button" aria-expanded={open} onClick={() => setOpen(!open)}>
              {of.length} pieces{state}
              <span className="spoken">: {what}</span>
            </button>
          )}{' '}
          {how === null || left.length < 2 || accepting ? null : (
            <button type="button" onClick={() => setAccepting(true)}>
              accept all {left.length}…<span className="spoken"> {what}</span>
            </button>
          )}
        </p>
        {accepting && how !== null && left.length > 0 ? (
          <AcceptForm standing={left} onWord={how === 'a conservator’s word'} close={() => setAccepting(false)} />
        ) : null}
        <ul>
          {listed.map((standing) => {
            const { pieceId, caution } = standing;
            const name = judgements.nameOf(pieceId);
            const there = (): void => {
              const surface = judgements.where.surfaceOf(pieceId);
              go((surface === null ? null : viewOfSurface(surface)) ?? { sheet: 'layout' }, THE_HANG);
              choose([pieceId]);
            };
            return (
              <li key={standing.digest} className="caution-piece">
                <span>
                  <button type="button" className="serif" onClick={there}>
                    {name}
                  </button>
                  {of.length > 1 && caution.what !== what ? <span className="t1"> {caution.what}</span> : null}
                </span>
                <span className="t1">
                  <AcceptCaution standing={standing} name={name} />
                </span>
              </li>
            );
          })}
        </ul>
      </div>
    </li>
  );
}
