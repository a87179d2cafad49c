/** Undo and redo of one's own acts, as words and as keys; what came of it is said. */
import { type Outcome, outcomeText } from '@enfilade/shared/acts';
import { useEffect } from 'react';
import { useHistory, useShow } from '../sync/hooks.ts';
import type { ShowSession } from '../sync/show-session.ts';
import { say } from './live-region.tsx';

function takeBack(show: ShowSession, word: 'undone' | 'redone'): void {
  const outcome: Outcome | undefined = word === 'undone' ? show.history.undo() : show.history.redo();
  if (outcome !== undefined) say(outcomeText(outcome, word));
}

/** Ctrl or Cmd with z; with shift, or with y, the other way. A text field keeps its own undo. */
export function useUndoKeys(): void {
  const show = useShow();
  useEffect(() => {
    const onKey = (event: KeyboardEvent): void => {
      if (!(event.ctrlKey || event.metaKey) || event.altKey) return;
      const target = event.target as HTMLElement | null;
      if (target?.closest('input, textarea, select, [contenteditable]')) return;
      const key = event.key.toLowerCase();
      if (key !== 'z' && key !== 'y') return;
      event.preventDefault();
      takeBack(show, key === 'y' || event.shiftKey ? 'redone' : 'undone');
    };
    addEventListener('keydown', onKey);
    return () => removeEventListener('keydown', onKey);
  }, [show]);
}

export function UndoCommands() {
  const show = useShow();
  const { undoable, redoable } = useHistory();
  return (
    <>
      <UndoButton word="Undo" would={undoable} press={() => takeBack(show, 'undone')} />
      <UndoButton word="Redo" would={redoable} press={() => takeBack(show, 'redone')} />
    </>
  );
}

function UndoButton(props: { word: string; would: string | undefined; press: () => void }) {
  const { word, would, press } = props;
  const about = would === undefined ? `${word}: nothing to ${word.toLowerCase()}` : `${word}: ${would}`;
  return (
    <button
      type="button"
      className="undo-command"
      title={about}
      aria-label={about}
      aria-disabled={would === undefined}
      onClick={() => {
        if (would !== undefined) press();
      }}
    >
      {word}
    </button>
  );
}
