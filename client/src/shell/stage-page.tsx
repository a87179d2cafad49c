/** A page with the stage on it: caption left, card right, supply along the foot; folded one under the other if narrow. */
import { lazy, memo, Suspense } from 'react';
import { CandidateDrawer } from '../cards/candidate-drawer.tsx';
import { Card } from '../cards/card.tsx';
import { PaintDrawer } from '../cards/paint-drawer.tsx';
import { StageCaption as WholeCaption } from '../cards/stage-caption.tsx';
import { selection, useStore } from '../selection.ts';
import { ShowContext, useShow } from '../sync/hooks.ts';
import { ArrangingHere } from '../talk/arranging-here.tsx';
import { useHangLookedAt } from '../talk/hang-looked-at.ts';
import { type InProposal, proposalFoot, proposalView, useInProposal } from '../talk/in-proposal.ts';
import { besideHang, useInState } from '../talk/in-state.ts';
import { ProposalCaption } from '../talk/proposal-caption.tsx';
import { ProposalEffects } from '../talk/proposal-effects.tsx';
import { ProposalFoot } from '../talk/proposal-foot.tsx';
import { ProposalsHere } from '../talk/proposals-here.tsx';
import { ProposeCommand } from '../talk/propose-form.tsx';
import { StateSince } from '../talk/state-since.tsx';
import type { View } from '../view-address.ts';
import { Fault } from './fault.tsx';
import { useFoot } from './foot.ts';
import { type Fold, useCaptionOpen, useFold } from './media.ts';
import { Rail as WholeRail } from './rail.tsx';
import './stage-page.css';

const stageModule = import('../stage/stage.tsx');
const Stage = lazy(() => stageModule.then((m) => ({ default: m.Stage })));
const StateStage = lazy(() => import('../talk/state-stage.tsx').then((m) => ({ default: m.StateStage })));
const ProposalStage = lazy(() => import('../talk/proposal-stage.tsx').then((m) => ({ default: m.ProposalStage })));

/** They follow the show themselves, each at its own pace; the page drawn again does not draw them again. */
const StageCaption = memo(WholeCaption);
const Rail = memo(WholeRail);

/** What the caption and the card lie over, px: the stage keeps its drawing clear of it. */
const INSETS: Record<Fold, { left: number; right: number; top: number; bottom: number }> = {
  wide: { left: 262, right: 274, top: 26, bottom: 30 },
  tablet: { left: 92, right: 264, top: 20, bottom: 44 },
  narrow: { left: 96, right: 16, top: 14, bottom: 40 },
};

export function StagePage({ view }: { readonly view: View }) {
  const fold = useFold();
  const chosen = useStore(selection);
  const [open] = useCaptionOpen();
  const show = useShow();
  const inside = useInProposal();
  const how = useStore(proposalView);
  const inState = useInState();
  const beside = useStore(besideHang) && inState !== null;
  const still = useHangLookedAt(beside || (inside !== null && (how === 'as is' || how === 'side by side')));
  // Looking at the hang from a proposal, its caption and cards are the hang's too.
  const seen = inside !== null && how === 'as is' && still !== null ? still : show;
  const caption = (
    <>
      {inside === null ? null : <ProposalCaption inside={inside} />}
      <ShowContext value={seen}>
        <StageCaption view={view} />
      </ShowContext>
      <ArrangingHere />
      {show.layerId === null ? <ProposalsHere view={view} /> : null}
      {show.layerId === null ? <ProposeCommand view={view} /> : null}
    </>
  );
  return (
    <>
      <main id="main" className={`stage-page stage-${fold}`} tabIndex={-1}>
        {fold === 'wide' || (fold === 'tablet' && open) ? (
          <aside className="caption-column" aria-label="Caption" key={inside?.id}>
            {caption}
          </aside>
        ) : null}
        <div className="stage-box">
          <Fault what="The stage">
            <Suspense fallback={null}>
              {inState !== null ? (
                <StateStage view={view} insets={INSETS[fold]} still={still} />
              ) : inside === null ? (
                <Stage view={view} insets={INSETS[fold]} />
              ) : (
                <ProposalStage view={view} insets={INSETS[fold]} inside={inside} still={still} />
              )}
            </Suspense>
          </Fault>
        </div>
        {chosen.length > 0 ? (
          <aside className="card-column" aria-label="Card">
            <Fault what="This card" key={chosen.join()}>
              <ShowContext value={seen}>
                <Card view={view} />
              </ShowContext>
            </Fault>
          </aside>
        ) : inState !== null ? (
          <aside className="card-column" aria-label="Since then">
            <StateSince inside={inState} />
          </aside>
        ) : inside === null ? null : (
          <aside className="card-column" aria-label="The proposal">
            <ProposalEffects inside={inside} />
          </aside>
        )}
        {fold === 'narrow' ? (
          <aside className="caption-under" aria-label="Caption">
            {caption}
          </aside>
        ) : null}
      </main>
      <footer className="foot">
        <Foot view={view} inside={inside} />
      </footer>
    </>
  );
}

function Foot({ view, inside }: { readonly view: View; readonly inside: InProposal | null }) {
  const foot = useFoot();
  const chosen = useStore(proposalFoot);
  // A proposal that ends under somebody's hand takes the deck and the candidates with it.
  const closed = inside !== null && !inside.shown.may('hang');
  if (foot.kind === 'deck' && !closed) return <PaintDrawer surface={foot.surface} />;
  if (foot.kind === 'candidates' && !closed)
    return <CandidateDrawer key={JSON.stringify(foot.asked)} asked={foot.asked} />;
  return inside !== null && (closed || chosen === 'moves') ? <ProposalFoot inside={inside} /> : <Rail view={view} />;
}
