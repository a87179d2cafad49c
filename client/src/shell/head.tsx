/** The head: what show this is, how it is saved, the building to go about by, the ways, and who is here. */
import { DEFAULT_SETTINGS } from '@enfilade/shared/schema';
import { useEffect, useState } from 'react';
import { useEntity, useShow } from '../sync/hooks.ts';
import type { View } from '../view-address.ts';
import { isStage } from './current-view.ts';
import { HelpCard } from './help-card.tsx';
import { useLastSaid } from './live-region.tsx';
import { type Fold, useCaptionOpen, useFold, useRoomyHead } from './media.ts';
import { MyView } from './my-view.tsx';
import { OwnSettings } from './own-settings.tsx';
import { People } from './people.tsx';
import { SavingWords } from './saving-words.tsx';
import { Strip } from './strip.tsx';
import { UndoCommands } from './undo.tsx';
import { Ways } from './ways.tsx';
import './head.css';

const STRIP: Record<Fold, { heightPx: number; widestPx: number }> = {
  wide: { heightPx: 87, widestPx: 330 },
  tablet: { heightPx: 62, widestPx: 240 },
  narrow: { heightPx: 48, widestPx: 200 },
};

export function Head({ view }: { readonly view: View }) {
  const show = useShow();
  const fold = useFold();
  const roomy = useRoomyHead();
  const title = (useEntity('settings', 'title') as string | undefined) ?? DEFAULT_SETTINGS.title;
  const museum = (useEntity('settings', 'museum') as string | undefined) ?? DEFAULT_SETTINGS.museum;
  const said = useLastSaid();
  const [open, setOpen] = useState(false);
  const [help, setHelp] = useState(false);
  const [caption, setCaption] = useCaptionOpen();
  // Going somewhere folds the head's sheet away again.
  // biome-ignore lint/correctness/useExhaustiveDependencies: the view is the occasion, not a value read
  useEffect(() => setOpen(false), [view]);

  const helpCommand = (
    <button type="button" className="head-help" onClick={() => setHelp(true)}>
      Keys and marks
    </button>
  );
  return (
    <header className={`head head-${fold}`}>
      <div className="head-title">
        <h1>{title}</h1>
        <p className="t1">
          {[museum, fold === 'wide' ? 'the hang' : show.me.person.name].filter((part) => part !== '').join(' · ')}
        </p>
        <p className="head-acts t1">
          {show.may('hang') || show.may('checklist') || show.may('talk') ? <UndoCommands /> : null}
          <SavingWords />
          {said === null ? null : <span className="head-said">{said}</span>}
        </p>
      </div>
      <Strip view={view} {...STRIP[fold === 'wide' && !roomy ? 'tablet' : fold]} />
      {fold === 'wide' ? (
        <>
          <Ways view={view} />
          <div className="head-own">
            <MyView />
            {helpCommand}
          </div>
          <People view={view} />
        </>
      ) : (
        <div className="head-more">
          {fold === 'tablet' && isStage(view) ? (
            <button type="button" className="act" aria-expanded={caption} onClick={() => setCaption(!caption)}>
              Caption
            </button>
          ) : null}
          <button type="button" className="act" aria-expanded={open} onClick={() => setOpen(!open)}>
            {open ? 'Fold away' : 'Ways'}
          </button>
          {open ? (
            <div className="head-sheet card">
              <Ways view={view} />
              <People view={view} />
              <div className="head-own">
                <OwnSettings />
                {helpCommand}
              </div>
            </div>
          ) : null}
        </div>
      )}
      {help ? <HelpCard close={() => setHelp(false)} /> : null}
    </header>
  );
}
