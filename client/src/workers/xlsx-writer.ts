/** The page's side of writing a workbook; the signal ends the worker. */

/** Null where it was stopped or did not succeed. */
export function writeXlsx(
  table: readonly (readonly string[])[],
  sheet: string,
  signal: AbortSignal,
): Promise<Uint8Array<ArrayBuffer> | null> {
  const worker = new Worker(new URL('./write-xlsx.ts', import.meta.url), { type: 'module' });
  return new Promise<Uint8Array<ArrayBuffer> | null>((done) => {
    signal.addEventListener('abort', () => done(null));
    worker.onerror = () => done(null);
    worker.onmessage = ({ data }: MessageEvent<Uint8Array<ArrayBuffer>>) => done(data);
    worker.postMessage({ table, sheet });
  }).finally(() => worker.terminate());
}
