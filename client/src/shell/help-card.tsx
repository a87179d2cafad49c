/** One card with every key and every mark. */
import { VIGNETTE_STATES } from '@enfilade/shared/judgements';
import { useEffect, useRef } from 'react';
import { KEYS } from '../stage/keys.ts';
import { ClashMark, ProposalMark } from '../talk/proposal-mark.tsx';
import { CautionMark, ReadingMark, StateMark } from './marks.tsx';
import { RingShapes } from './ring.tsx';
import './help-card.css';

const SHELL_KEYS: readonly { readonly keys: string; readonly what: string }[] = [
  { keys: 'Ctrl Z', what: 'undo your last act' },
  { keys: 'Ctrl Shift Z', what: 'redo it' },
  { keys: 'Tab', what: 'head, caption, wall, list, card, foot' },
  { keys: 'Arrows, in the strip', what: 'go from room to wall to room' },
  { keys: 'Arrows, on the divider', what: 'move it between the hang and the proposal; with shift farther' },
  { keys: 'Enter, in a field', what: 'set the number you typed' },
  { keys: 'Up, Down, in a field', what: 'one centimetre or half an inch more or less' },
  { keys: 'Escape, in a field', what: 'what stood there before' },
];

export function HelpCard({ close }: { readonly close: () => void }) {
  const dialog = useRef<HTMLDialogElement>(null);
  useEffect(() => {
    const node = dialog.current;
    node?.showModal();
    return () => node?.close();
  }, []);
  return (
    <dialog ref={dialog} className="help-card card" aria-labelledby="help-title" onClose={close}>
      <div className="help-top">
        <h2 id="help-title">Keys and marks</h2>
        <button type="button" onClick={close}>
          fold away
        </button>
      </div>
      <div className="help-columns">
        <table>
          <caption className="spoken">Keys</caption>
          <tbody>
            {[...KEYS, ...SHELL_KEYS].map(({ keys, what }) => (
              <tr key={keys + what}>
                <th scope="row">{keys}</th>
                <td>{what}</td>
              </tr>
            ))}
          </tbody>
        </table>
        <div>
          <h3>How a work reads on its wall</h3>
          <ul>
            {(['lost', 'weak', 'holds', 'carries'] as const).map((word) => (
              <li key={word}>
                <ReadingMark word={word} /> {word}
              </li>
            ))}
          </ul>
          <h3>Where a vignette stands</h3>
          <ul>
            {VIGNETTE_STATES.map((state) => (
              <li key={state}>
                <StateMark state={state} /> {state}
              </li>
            ))}
          </ul>
          <h3>Besides</h3>
          <ul>
            <li>
              <CautionMark /> a caution: someone or something can be hurt
            </li>
            <li>
              <ProposalMark state="open" sizePx={13} /> a proposal: laid over the hang, which stays as it is
            </li>
            <li>
              <ClashMark sizePx={14} /> a clash: two acts on one thing, to be settled
            </li>
            <li>
              <span className="unk help-hatch" aria-hidden="true" /> hatched: estimated, or not known
            </li>
            <li>
              <svg width="13" height="15" viewBox="0 0 13 15" aria-hidden="true">
                <path d="M6.5 5V14" stroke="#111" strokeWidth={2} />
                <circle cx={6.5} cy={3.5} r={3} fill="#111" />
              </svg>{' '}
              a nail over a thing: pinned, it stays when others are arranged or make room
            </li>
            <li>
              <svg className="help-remark" viewBox="-18 -13 31 26" width="22" height="18" aria-hidden="true">
                <RingShapes name="A B" pattern="plain" />
                <path d="M-15.5 -9V9" stroke="#111" strokeWidth={4} />
              </svg>{' '}
              somebody’s ring beside a thing: a remark on it; with a bar: not read
            </li>
          </ul>
          <p className="t1">A screen is no proof: judge a colour from a drawdown on the wall, under its lamp.</p>
        </div>
      </div>
    </dialog>
  );
}
