/** What happened, said once: to those who listen, and briefly in the head to those who look. */
import { useEffect, useState } from 'react';
import { Store, useStore } from '../selection.ts';

interface Said {
  readonly text: string;
  readonly count: number;
}

const said = new Store<Said>({ text: '', count: 0 });

/** Says a sentence in the live region. The same sentence twice is said twice. */
export function say(text: string): void {
  said.set({ text, count: said.get().count + 1 });
}

/** How many sentences have been said: whoever waits to speak can tell whether another spoke first. */
export function sentencesSaid(): number {
  return said.get().count;
}

export function LiveRegion() {
  const { text, count } = useStore(said);
  return (
    <div className="spoken" role="status" aria-live="polite">
      {/* A space more on every other sentence, so that a repeated one is a change. */}
      {count % 2 === 0 ? text : `${text} `}
    </div>
  );
}

const SHOWN_MS = 6000;

/** The last thing said, for a short while; null after it. */
export function useLastSaid(): string | null {
  const { text, count } = useStore(said);
  const [shown, show] = useState(0);
  useEffect(() => {
    if (count === 0) return;
    show(count);
    const timer = setTimeout(() => show(0), SHOWN_MS);
    return () => clearTimeout(timer);
  }, [count]);
  return shown === count && text !== '' ? text : null;
}
