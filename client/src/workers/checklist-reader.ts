/** The page's side of the checklist worker: one file at a time, its headings mendable; forgetting ends the worker. */
import type { ChecklistField } from '@enfilade/records/checklist-headings';
import type {
  ChecklistAnswer,
  ChecklistQuestion,
  MatchAnswer,
  ReadAnswer,
  SourceAnswer,
  ToCollection,
  WindowAnswer,
} from './checklist-task.ts';
import type { NamedPicture } from './match-in-collection.ts';
import type { Collected } from './send-to-collection.ts';

export type ReadingState =
  | { readonly kind: 'none' }
  | { readonly kind: 'reading'; readonly fileName: string; readonly what: string; readonly share: number | null }
  | { readonly kind: 'failed'; readonly fileName: string; readonly what: string }
  | ({ readonly fileName: string } & ReadAnswer);

/** What the worker tells, each where it belongs. */
export interface Told {
  reading(state: ReadingState): void;
  /** How far the rows are read again under a mended heading; null: they are. */
  mending(work: { readonly what: string; readonly share: number | null } | null): void;
  source(source: SourceAnswer): void;
  window(rows: WindowAnswer): void;
  matched(numbers: MatchAnswer['numbers']): void;
  collected(state: Collected): void;
}

export class ChecklistReader {
  private readonly told: Told;
  private readonly museum: () => string;
  private worker: Worker | null = null;
  private file: File | null = null;
  private isMending = false;

  /** `museum`: its own name. */
  constructor(told: Told, museum: () => string) {
    this.told = told;
    this.museum = museum;
  }

  /** `sheet`: the one a person asked for; null: the likeliest. */
  read(file: File, sheet: string | null = null): void {
    this.worker?.terminate();
    this.worker = null;
    this.file = file;
    this.isMending = false;
    this.told.reading({ kind: 'reading', fileName: file.name, what: 'opening', share: null });
    this.ask({ kind: 'read', file, sheet, museum: this.museum() });
  }

  readSheet(sheet: string): void {
    if (this.file !== null) this.read(this.file, sheet);
  }

  mend(mapping: readonly (ChecklistField | null)[]): void {
    if (this.file === null) return;
    this.isMending = true;
    this.ask({ kind: 'mend', mapping });
  }

  /** Asks for the cells of a row as the source has them. */
  source(line: number): void {
    this.ask({ kind: 'source', line });
  }

  /** Asks for rows beyond those of the reading. */
  window(from: number): void {
    this.ask({ kind: 'window', from });
  }

  /** Asks which records of the collection, or rows of the file, pictures show. */
  match(base: string, pictures: readonly NamedPicture[]): void {
    this.ask({ kind: 'match', base, pictures });
  }

  /** Sends the rows to the collection, or what is left of them. */
  collect(what: ToCollection): void {
    this.ask({ kind: 'collect', ...what });
  }

  stopCollecting(): void {
    this.ask({ kind: 'stop collecting' });
  }

  forget(): void {
    this.worker?.terminate();
    this.worker = null;
    this.file = null;
    this.isMending = false;
    this.told.mending(null);
    this.told.reading({ kind: 'none' });
  }

  private ask(question: ChecklistQuestion): void {
    this.worker ??= this.started();
    this.worker.postMessage(question);
  }

  private started(): Worker {
    const worker = new Worker(new URL('./read-checklist.ts', import.meta.url), { type: 'module' });
    const fileName = this.file?.name ?? '';
    worker.onmessage = ({ data }: MessageEvent<ChecklistAnswer>) => {
      switch (data.kind) {
        case 'source':
          return this.told.source(data);
        case 'window':
          return this.told.window(data);
        case 'matched':
          return this.told.matched(data.numbers);
        case 'collected':
          return this.told.collected(data.state);
        case 'progress':
          if (this.isMending) return this.told.mending(data);
          return this.told.reading({ ...data, kind: 'reading', fileName });
        default:
          this.isMending = false;
          this.told.mending(null);
          return this.told.reading({ fileName, ...data });
      }
    };
    worker.onerror = () => this.told.reading({ kind: 'failed', fileName, what: 'The reading stopped unexpectedly.' });
    return worker;
  }
}
