/** The page's side of the checklist worker: one file at a time, its headings mendable; forgetting ends the worker. */
import type { ChecklistField } from '@enfilade/records/checklist-headings';
import type { ChecklistAnswer, ChecklistQuestion, ReadAnswer, SourceAnswer } from './checklist-task.ts';

export type ReadingState =
  | { readonly kind: 'none' }
  | { readonly kind: 'reading'; readonly fileName: string; readonly what: string; readonly share: number | null }
  | { readonly kind: 'failed'; readonly fileName: string; readonly what: string }
  | ({ readonly fileName: string } & ReadAnswer);

export class ChecklistReader {
  private readonly tell: (state: ReadingState) => void;
  private readonly tellSource: (source: SourceAnswer) => void;
  private worker: Worker | null = null;
  private file: File | null = null;

  constructor(tell: (state: ReadingState) => void, tellSource: (source: SourceAnswer) => void) {
    this.tell = tell;
    this.tellSource = tellSource;
  }

  /** `sheet`: the one a person asked for; null: the likeliest. */
  read(file: File, sheet: string | null = null): void {
    this.worker?.terminate();
    this.file = file;
    const fileName = file.name;
    this.tell({ kind: 'reading', fileName, what: 'opening', share: null });
    const worker = new Worker(new URL('./read-checklist.ts', import.meta.url), { type: 'module' });
    this.worker = worker;
    worker.onmessage = ({ data }: MessageEvent<ChecklistAnswer>) => {
      if (data.kind === 'source') this.tellSource(data);
      else if (data.kind === 'progress') this.tell({ ...data, kind: 'reading', fileName });
      else this.tell({ fileName, ...data });
    };
    worker.onerror = () => this.tell({ kind: 'failed', fileName, what: 'The reading stopped unexpectedly.' });
    worker.postMessage({ kind: 'read', file, sheet } satisfies ChecklistQuestion);
  }

  readSheet(sheet: string): void {
    if (this.file !== null) this.read(this.file, sheet);
  }

  mend(mapping: readonly (ChecklistField | null)[]): void {
    this.worker?.postMessage({ kind: 'mend', mapping } satisfies ChecklistQuestion);
  }

  /** Asks for the cells of a row as the source has them. */
  source(line: number): void {
    this.worker?.postMessage({ kind: 'source', line } satisfies ChecklistQuestion);
  }

  forget(): void {
    this.worker?.terminate();
    this.worker = null;
    this.file = null;
    this.tell({ kind: 'none' });
  }
}
