/** The page's side of unpacking a zip: its files as a list, with progress; a signal ends the worker. */
import type { ZipLeft } from '../importers/picture-zip.ts';
import type { ZipAnswer } from './zip-task.ts';

export interface Unpacked {
  readonly files: readonly File[];
  readonly left: readonly ZipLeft[];
  /** Why it broke off, as a sentence; null where it was unpacked to its end. What had come out by then is in `files`. */
  readonly broken: string | null;
}

export function unpackZip(
  zip: File,
  signal: AbortSignal,
  tell: (what: string, share: number | null) => void,
): Promise<Unpacked> {
  const worker = new Worker(new URL('./unpack-zip.ts', import.meta.url), { type: 'module' });
  const files: File[] = [];
  return new Promise<Unpacked>((done) => {
    signal.addEventListener('abort', () => done({ files: [], left: [], broken: 'Stopped; nothing of it was taken.' }));
    worker.onerror = () => done({ files, left: [], broken: 'The unpacking stopped unexpectedly.' });
    worker.onmessage = ({ data }: MessageEvent<ZipAnswer>) => {
      if (data.kind === 'progress') tell(data.what, data.share);
      else if (data.kind === 'file') files.push(data.file);
      else if (data.kind === 'done') done({ files, left: data.left, broken: null });
      else done({ files, left: [], broken: data.what });
    };
    worker.postMessage(zip);
  }).finally(() => worker.terminate());
}
