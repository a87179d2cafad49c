/** A page with the stage on it: caption left, card right, supply along the foot; folded one under the other if narrow. */
import { lazy, Suspense } from 'react';
import { CandidateDrawer } from '../cards/candidate-drawer.tsx';
import { Card } from '../cards/card.tsx';
import { PaintDrawer } from '../cards/paint-drawer.tsx';
import { StageCaption } from '../cards/stage-caption.tsx';
import { selection, useStore } from '../selection.ts';
import type { View } from '../view-address.ts';
import { Fault } from './fault.tsx';
import { useFoot } from './foot.ts';
import { type Fold, useCaptionOpen, useFold } from './media.ts';
import { Rail } from './rail.tsx';
import './stage-page.css';

const stageModule = import('../stage/stage.tsx');
const Stage = lazy(() => stageModule.then((m) => ({ default: m.Stage })));

/** What the caption and the card lie over, px: the stage keeps its drawing clear of it. */
const INSETS: Record<Fold, { left: number; right: number; top: number; bottom: number }> = {
  wide: { left: 262, right: 274, top: 26, bottom: 30 },
  tablet: { left: 92, right: 264, top: 20, bottom: 44 },
  narrow: { left: 96, right: 16, top: 14, bottom: 40 },
};

export function StagePage({ view }: { readonly view: View }) {
  const fold = useFold();
  const foot = useFoot();
  const chosen = useStore(selection);
  const [open] = useCaptionOpen();
  return (
    <>
      <main id="main" className={`stage-page stage-${fold}`} tabIndex={-1}>
        {fold === 'wide' || (fold === 'tablet' && open) ? (
          <aside className="caption-column" aria-label="Caption">
            <StageCaption view={view} />
          </aside>
        ) : null}
        <div className="stage-box">
          <Fault what="The stage">
            <Suspense fallback={null}>
              <Stage view={view} insets={INSETS[fold]} />
            </Suspense>
          </Fault>
        </div>
        {chosen.length > 0 ? (
          <aside className="card-column" aria-label="Card">
            <Fault what="This card" key={chosen.join()}>
              <Card view={view} />
            </Fault>
          </aside>
        ) : null}
        {fold === 'narrow' ? (
          <aside className="caption-under" aria-label="Caption">
            <StageCaption view={view} />
          </aside>
        ) : null}
      </main>
      <footer className="foot">
        {foot.kind === 'deck' ? (
          <PaintDrawer surface={foot.surface} />
        ) : foot.kind === 'candidates' ? (
          <CandidateDrawer task={foot.task} />
        ) : (
          <Rail view={view} />
        )}
      </footer>
    </>
  );
}
