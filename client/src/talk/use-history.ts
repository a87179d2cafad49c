/** The history as the server tells it, page by page. */
import type { Deed, HistoryAnswer } from '@enfilade/shared/deeds';
import { useCallback, useEffect, useState } from 'react';
import { useShow } from '../sync/hooks.ts';

export interface History {
  readonly deeds: readonly Deed[];
  readonly older: boolean;
  readonly trouble: string | null;
  readonly more: () => void;
}

export interface HistoryNow extends HistoryAnswer {
  /** Up to when it tells: the server's time, to the second, or its newest deed's. ISO 8601. */
  readonly upTo: string;
}

export async function historyFrom(base: string, query: string): Promise<HistoryNow> {
  const answer = await fetch(`${base}/history?${query}`);
  if (!answer.ok) throw new Error('The history could not be fetched.');
  const history = (await answer.json()) as HistoryAnswer;
  const newest = history.deeds[0]?.at ?? '';
  const now = new Date(answer.headers.get('date') ?? 0).toISOString();
  return { ...history, upTo: [newest, now].sort().at(-1) ?? now };
}

/** `version`: whatever changes when there may be something new. */
export function useHistoryPages(version: number): History {
  const { base } = useShow();
  const [deeds, setDeeds] = useState<readonly Deed[]>([]);
  const [older, setOlder] = useState(false);
  const [trouble, setTrouble] = useState<string | null>(null);
  const fetchPage = useCallback(
    async (before: number | null) => {
      try {
        const page = await historyFrom(base, before === null ? 'limit=100' : `limit=100&before=${before}`);
        setTrouble(null);
        setOlder((known) => (before === null && known ? known : page.older));
        setDeeds((known) => {
          // Newest page: replace what it covers, keep what is older and already here.
          const last = page.deeds.at(-1)?.n ?? 0;
          return before === null ? [...page.deeds, ...known.filter(({ n }) => n < last)] : [...known, ...page.deeds];
        });
      } catch {
        setTrouble('The history could not be fetched; it is on the server, and is shown when the connection is back.');
      }
    },
    [base],
  );
  // biome-ignore lint/correctness/useExhaustiveDependencies: a change is the occasion to look again
  useEffect(() => {
    const timer = setTimeout(() => void fetchPage(null), 400);
    return () => clearTimeout(timer);
  }, [fetchPage, version]);
  const oldest = deeds.at(-1)?.n;
  return {
    deeds,
    older,
    trouble,
    more: () => {
      if (oldest !== undefined) void fetchPage(oldest);
    },
  };
}
