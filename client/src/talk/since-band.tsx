/** What changed since I was last here: said once at the door, walked through wall by wall, then put away. */
import { type Deed, netOf } from '@enfilade/shared/deeds';
import { markRead } from '@enfilade/shared/remarks';
import { useEffect, useState } from 'react';
import { lengthText, usePreferences } from '../preferences.ts';
import { choose } from '../selection.ts';
import { roomsInOrder } from '../shell/current-view.ts';
import { say } from '../shell/live-region.tsx';
import { useShow } from '../sync/hooks.ts';
import { useRestingRoots } from '../sync/resting-roots.ts';
import { go, THE_HANG } from '../view-address.ts';
import { isHere, useComingBack } from './being-here.ts';
import { deedSentence } from './deed-sentences.ts';
import { viewOfSurface, whenText } from './remark-words.ts';
import { type SinceStep, stepsOf } from './since-steps.ts';
import { historyFrom } from './use-history.ts';
import './since-band.css';

/** The reading mark under which a person's own "last here" is kept. */
const MARK = 'history';
/** What is changed before somebody's eyes is marked as seen at most so often, ms. */
const MARK_MS = 20_000;
/** Without news, a visit is marked again after so long, ms. */
const VISIT_MS = 10 * 60_000;
const SIDES = ['left', 'head', 'right', 'foot', 'floor', 'ceiling'] as const;

interface Since {
  readonly at: string;
  readonly deeds: readonly Deed[];
  readonly upTo: string;
}

export function SinceBand() {
  const show = useShow();
  const { unit } = usePreferences();
  const [since, setSince] = useState<Since | null>(null);
  const [step, setStep] = useState<number | null>(null);
  const [visit, setVisit] = useState(0);
  /** Nothing is left to be told: what changes now is seen as it happens. */
  const [here, setHere] = useState(false);
  const { me, judgements, documents, base } = show;
  const live = show.layerId === null;

  // biome-ignore lint/correctness/useExhaustiveDependencies: each visit asks anew
  useEffect(() => {
    if (!live) return;
    let left = false;
    const mark = documents.get('readMarks', `${me.person.id}/${MARK}`);
    void historyFrom(base, mark === undefined ? 'limit=1' : `limit=500&since=${encodeURIComponent(mark)}`)
      .then(({ deeds, upTo }) => {
        if (left) return;
        // Whoever comes for the first time has missed nothing.
        if (mark === undefined) show.note(markRead(me.person.id, MARK, upTo));
        const missed = mark !== undefined && stepsOf(netOf(deeds, me.person.id), judgements, []).length > 0;
        if (missed) setSince({ at: mark, deeds, upTo });
        setHere(!missed);
      })
      .catch(() => {});
    return () => {
      left = true;
    };
  }, [live, base, documents, judgements, me.person.id, show, visit]);

  useComingBack(() => {
    if (!here) return;
    setHere(false);
    setVisit(visit + 1);
  });
  const changed = useRestingRoots(MARK_MS, 'places', 'paints', 'memberOf', 'vignettes');
  // biome-ignore lint/correctness/useExhaustiveDependencies: a change is the occasion
  useEffect(() => {
    if (!live || !here || !isHere()) return;
    void historyFrom(base, 'limit=1')
      .then(({ deeds, upTo }) => {
        const mark = documents.get('readMarks', `${me.person.id}/${MARK}`);
        if (mark === undefined) return;
        const news = (deeds[0]?.at ?? '') > mark;
        if (news || Date.parse(upTo) - Date.parse(mark) > VISIT_MS) show.note(markRead(me.person.id, MARK, upTo));
      })
      .catch(() => {});
  }, [changed, live, here, base, documents, me.person.id, show]);

  if (since === null || !live) return null;
  const surfaces = ['layout', ...roomsInOrder(documents).flatMap((id) => SIDES.map((side) => `${id}:${side}`))];
  const steps = stepsOf(netOf(since.deeds, me.person.id), judgements, surfaces);
  const seen = (): void => {
    show.note(markRead(me.person.id, MARK, since.upTo));
    setSince(null);
    setStep(null);
    setHere(true);
    say('Seen');
  };
  if (steps.length === 0) return null;
  const to = (index: number): void => {
    const next = steps[index] as SinceStep;
    const view = next.surface === null ? null : viewOfSurface(next.surface);
    if (view !== null) go(view, THE_HANG);
    // The view's own change lets go of what was held; what is shown is taken up after it.
    setTimeout(() => choose(next.pieces.filter((id) => judgements.where.placeOf(id) !== null)));
    setStep(index);
  };
  const at = step === null ? null : (steps[Math.min(step, steps.length - 1)] ?? null);
  const words = { judgements, length: (mm: number) => `${lengthText(mm, unit)} ${unit}` };
  return (
    <section className="band since-band" aria-label="Changed since you were last here">
      {at === null ? (
        <p>
          <b className="b">{steps.length === 1 ? 'One thing changed' : `${steps.length} things changed`}</b> since you
          were here, {whenText(since.at)}.
        </p>
      ) : (
        <p>
          <b className="b">
            {(step ?? 0) + 1} of {steps.length}
          </b>{' '}
          {at.name} {deedSentence({ changes: at.changes, more: 0 }, words)}, {whenText(at.at)}.
        </p>
      )}
      <p className="since-commands">
        {step === null ? (
          <button type="button" onClick={() => to(0)}>
            walk through them
          </button>
        ) : (
          <>
            <button type="button" disabled={step === 0} onClick={() => to(step - 1)}>
              back
            </button>
            <button type="button" disabled={step >= steps.length - 1} onClick={() => to(step + 1)}>
              next
            </button>
          </>
        )}
        <button type="button" onClick={seen}>
          seen
        </button>
      </p>
    </section>
  );
}
