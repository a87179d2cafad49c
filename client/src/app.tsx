/** The whole page: head, bands, then a stage with its caption, card and foot, or a sheet. */
import { DEFAULT_SETTINGS } from '@enfilade/shared/schema';
import { lazy, Suspense, useEffect, useMemo } from 'react';
import { usePreferences } from './preferences.ts';
import { choose } from './selection.ts';
import { useActWords } from './shell/act-words.ts';
import { isStage, viewName, viewOf } from './shell/current-view.ts';
import { Fault } from './shell/fault.tsx';
import { closeFoot } from './shell/foot.ts';
import { Head } from './shell/head.tsx';
import { LaidLayer } from './shell/laid-layer.tsx';
import { LiveRegion } from './shell/live-region.tsx';
import { useOpeningOnLost } from './shell/lost-works.ts';
import { Opening } from './shell/opening.tsx';
import { Bands, ViewerBand } from './shell/saving-words.tsx';
import { SeatClosed } from './shell/seat-closed.tsx';
import { EyeFilter } from './shell/seen-by.tsx';
import { StagePage } from './shell/stage-page.tsx';
import { useUndoKeys } from './shell/undo.tsx';
import { useEntity, useRoots, useSaving, useShow } from './sync/hooks.ts';
import { BothSidesBand } from './talk/both-sides-band.tsx';
import { AlongBand, useGoingAlong } from './talk/going-along.tsx';
import { ProposalBand } from './talk/proposal-band.tsx';
import { SinceBand } from './talk/since-band.tsx';
import { StateBand } from './talk/state-band.tsx';
import { toAddress, useAddress, type View } from './view-address.ts';
import './app.css';

const BringIn = lazy(() => import('./sheets/bring-in.tsx').then((m) => ({ default: m.BringIn })));
const TakeOut = lazy(() => import('./sheets/take-out.tsx').then((m) => ({ default: m.TakeOut })));
const Collection = lazy(() => import('./collection/collection-page.tsx').then((m) => ({ default: m.CollectionPage })));
const OneThing = lazy(() => import('./collection/one-thing.tsx').then((m) => ({ default: m.OneThing })));
const ColourDesk = lazy(() => import('./sheets/colour-desk.tsx').then((m) => ({ default: m.ColourDesk })));
const Deck = lazy(() => import('./deck/deck-page.tsx').then((m) => ({ default: m.DeckPage })));
const Samples = lazy(() => import('./deck/samples-page.tsx').then((m) => ({ default: m.SamplesPage })));
const Likenesses = lazy(() => import('./likenesses/likenesses-page.tsx').then((m) => ({ default: m.LikenessesPage })));
const Measure = lazy(() => import('./sheets/measure.tsx').then((m) => ({ default: m.Measure })));
const Seats = lazy(() => import('./sheets/seats.tsx').then((m) => ({ default: m.Seats })));
const VignetteList = lazy(() => import('./sheets/vignette-list.tsx').then((m) => ({ default: m.VignetteList })));
const Proposals = lazy(() => import('./sheets/proposals.tsx').then((m) => ({ default: m.Proposals })));
const Remarks = lazy(() => import('./sheets/remarks.tsx').then((m) => ({ default: m.Remarks })));
const Waiting = lazy(() => import('./sheets/waiting.tsx').then((m) => ({ default: m.Waiting })));
const HistoryPage = lazy(() => import('./sheets/history.tsx').then((m) => ({ default: m.HistoryPage })));
const Loans = lazy(() => import('./sheets/loans.tsx').then((m) => ({ default: m.Loans })));
const Cautions = lazy(() => import('./sheets/cautions.tsx').then((m) => ({ default: m.Cautions })));
const PaintSchedule = lazy(() => import('./deck/paint-schedule.tsx').then((m) => ({ default: m.PaintSchedulePage })));
const Paper = lazy(() => import('./sheets/paper.tsx').then((m) => ({ default: m.Paper })));

export function App() {
  const show = useShow();
  const saving = useSaving();
  if (saving.kind === 'closed' && saving.discard !== undefined) return <SeatClosed saving={saving} />;
  return saving.kind === 'opening' && !show.arrived ? (
    <Opening />
  ) : (
    <LaidLayer>
      <OpenShow />
    </LaidLayer>
  );
}

function OpenShow() {
  const { documents, presence } = useShow();
  useRoots('rooms');
  useUndoKeys();
  useActWords();
  useOpeningOnLost();
  useGoingAlong();
  const { surround } = usePreferences();
  const address = useAddress();
  // The same view object while the address names the same page, so that a room's change is no change of page.
  const key = toAddress(viewOf(documents, address));
  // biome-ignore lint/correctness/useExhaustiveDependencies: the key stands for the view
  const view = useMemo(() => viewOf(documents, address), [key]);
  // What the artist may do follows at once.
  useEntity('settings', 'artistProposesOnly');
  const title = (useEntity('settings', 'title') as string | undefined) ?? DEFAULT_SETTINGS.title;
  const name = viewName(documents, view);

  useEffect(() => {
    document.documentElement.dataset.surround = String(surround);
  }, [surround]);
  useEffect(() => {
    document.title = `${name}: ${title}`;
  }, [name, title]);
  useEffect(() => {
    presence.say({ at: key.slice(1) });
    closeFoot();
    if (!isStage(view)) choose([]);
  }, [presence, key, view]);

  return (
    <div className={isStage(view) || view.sheet === 'colour' ? 'app app-stage' : 'app'}>
      <button type="button" className="skip" onClick={skipToMain}>
        Skip to the {isStage(view) ? 'wall' : 'page'}
      </button>
      <Head view={view} />
      <section className="app-bands" aria-label="Notices">
        <Bands />
        {isStage(view) || view.sheet === 'colour' ? <ProposalBand view={view} /> : null}
        <ViewerBand />
        <StateBand view={view} />
        <BothSidesBand />
        <AlongBand />
        <SinceBand />
      </section>
      {isStage(view) ? <StagePage view={view} /> : <SheetPage view={view} />}
      <LiveRegion />
      <EyeFilter />
    </div>
  );
}

/** The address after # names the page, so the way past the head moves the focus itself. */
function skipToMain(): void {
  const main = document.getElementById('main');
  const target = main?.querySelector<HTMLElement>('[role="application"]') ?? main;
  target?.focus();
}

function SheetPage({ view }: { readonly view: View }) {
  return (
    <main id="main" className="sheet-page" tabIndex={-1}>
      <Fault what="This page" key={view.sheet}>
        <Suspense fallback={<p className="cap sheet-wait">Fetching the page…</p>}>
          {view.sheet === 'bring-in' ? <BringIn into={view.into ?? null} /> : null}
          {view.sheet === 'take-out' ? <TakeOut /> : null}
          {view.sheet === 'collection' ? <Collection view={view} /> : null}
          {view.sheet === 'one-thing' ? <OneThing /> : null}
          {view.sheet === 'colour' ? <ColourDesk /> : null}
          {view.sheet === 'deck' ? <Deck paintId={view.paintId} /> : null}
          {view.sheet === 'samples' ? <Samples /> : null}
          {view.sheet === 'measure' ? <Measure roomId={view.roomId} /> : null}
          {view.sheet === 'likenesses' ? <Likenesses wish={view.wish} /> : null}
          {view.sheet === 'seats' ? <Seats /> : null}
          {view.sheet === 'vignettes' ? <VignetteList version={view.version} against={view.against} /> : null}
          {view.sheet === 'proposals' ? <Proposals /> : null}
          {view.sheet === 'remarks' ? <Remarks /> : null}
          {view.sheet === 'waiting' ? <Waiting /> : null}
          {view.sheet === 'history' ? <HistoryPage /> : null}
          {view.sheet === 'loans' ? <Loans /> : null}
          {view.sheet === 'cautions' ? <Cautions /> : null}
          {view.sheet === 'paint-schedule' ? <PaintSchedule /> : null}
          {view.sheet === 'paper' ? <Paper surface={view.surface} /> : null}
        </Suspense>
      </Fault>
    </main>
  );
}
