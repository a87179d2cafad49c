/** The page's side of the checklist worker: one file at a time, its headings mendable; leaving ends the worker. */
import type { ChecklistField } from '@enfilade/records/checklist-headings';
import { useCallback, useEffect, useRef, useState } from 'react';
import type { ChecklistAnswer, ChecklistQuestion } from './checklist-task.ts';

export type ReadingState =
  | { readonly kind: 'none' }
  | { readonly kind: 'reading'; readonly fileName: string }
  | ({ readonly fileName: string } & ChecklistAnswer);

export interface ChecklistReader {
  readonly state: ReadingState;
  readonly read: (file: File) => void;
  readonly mend: (mapping: readonly (ChecklistField | null)[]) => void;
  readonly forget: () => void;
}

export function useChecklistReader(): ChecklistReader {
  const worker = useRef<Worker | null>(null);
  const [state, setState] = useState<ReadingState>({ kind: 'none' });
  const end = useCallback(() => {
    worker.current?.terminate();
    worker.current = null;
  }, []);
  useEffect(() => end, [end]);
  const read = useCallback(
    (file: File) => {
      end();
      setState({ kind: 'reading', fileName: file.name });
      const made = new Worker(new URL('./read-checklist.ts', import.meta.url), { type: 'module' });
      worker.current = made;
      made.onmessage = ({ data }: MessageEvent<ChecklistAnswer>) => setState({ fileName: file.name, ...data });
      made.onerror = () => setState({ kind: 'failed', fileName: file.name, what: 'The reading stopped unexpectedly.' });
      made.postMessage({ kind: 'read', file } satisfies ChecklistQuestion);
    },
    [end],
  );
  const mend = useCallback((mapping: readonly (ChecklistField | null)[]) => {
    worker.current?.postMessage({ kind: 'mend', mapping } satisfies ChecklistQuestion);
  }, []);
  const forget = useCallback(() => {
    end();
    setState({ kind: 'none' });
  }, [end]);
  return { state, read, mend, forget };
}
