/** The page's side of the checklist worker: one file at a time, its headings mendable; forgetting ends the worker. */
import type { ChecklistField } from '@enfilade/records/checklist-headings';
import type { ChecklistAnswer, ChecklistQuestion } from './checklist-task.ts';

export type ReadingState =
  | { readonly kind: 'none' }
  | { readonly kind: 'reading'; readonly fileName: string }
  | ({ readonly fileName: string } & ChecklistAnswer);

export class ChecklistReader {
  private readonly tell: (state: ReadingState) => void;
  private worker: Worker | null = null;

  constructor(tell: (state: ReadingState) => void) {
    this.tell = tell;
  }

  read(file: File): void {
    this.worker?.terminate();
    this.tell({ kind: 'reading', fileName: file.name });
    const worker = new Worker(new URL('./read-checklist.ts', import.meta.url), { type: 'module' });
    this.worker = worker;
    worker.onmessage = ({ data }: MessageEvent<ChecklistAnswer>) => this.tell({ fileName: file.name, ...data });
    worker.onerror = () =>
      this.tell({ kind: 'failed', fileName: file.name, what: 'The reading stopped unexpectedly.' });
    worker.postMessage({ kind: 'read', file } satisfies ChecklistQuestion);
  }

  mend(mapping: readonly (ChecklistField | null)[]): void {
    this.worker?.postMessage({ kind: 'mend', mapping } satisfies ChecklistQuestion);
  }

  forget(): void {
    this.worker?.terminate();
    this.worker = null;
    this.tell({ kind: 'none' });
  }
}
