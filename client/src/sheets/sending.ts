/** Sends pictures two at a time; one that is refused or does not arrive is told, and the rest goes on. */
import type { PictureStore } from '../sync/picture-store.ts';

export interface SendingState {
  readonly done: number;
  readonly of: number;
  readonly now: string;
  readonly secondsLeft: number | null;
}

export interface Sent {
  /** SHA-256 by file. */
  readonly hashes: ReadonlyMap<File, string>;
  readonly refused: readonly { readonly fileName: string; readonly what: string }[];
  /** Sentences on files of which only a part was taken. */
  readonly told: readonly string[];
}

const AT_ONCE = 2;

/** @throws the signal's AbortError when stopped; what has arrived stays in `hashes` and is not sent again. */
export async function sendPictures(
  pictures: PictureStore,
  files: readonly File[],
  hashes: Map<File, string>,
  signal: AbortSignal,
  tell: (state: SendingState) => void,
): Promise<Sent> {
  const refused: { fileName: string; what: string }[] = [];
  const told: string[] = [];
  const waiting = files.filter((file) => !hashes.has(file));
  const began = Date.now();
  let next = 0;
  let done = 0;
  const say = (now: string): void => {
    const each = (Date.now() - began) / Math.max(1, done);
    const secondsLeft = done < 3 ? null : Math.round((each * (waiting.length - done)) / 1000);
    tell({ done, of: waiting.length, now, secondsLeft });
  };
  const lane = async (): Promise<void> => {
    while (next < waiting.length) {
      signal.throwIfAborted();
      const file = waiting[next++] as File;
      say(file.name);
      try {
        const answer = await pictures.send(file, signal);
        if ('sha256' in answer) {
          hashes.set(file, answer.sha256);
          const { pages = 1 } = answer;
          if (pages > 1) told.push(`${file.name} holds ${pages} pictures; its first is shown.`);
        } else refused.push({ fileName: file.name, what: answer.what });
      } catch (error) {
        if (signal.aborted) throw error;
        refused.push({
          fileName: file.name,
          what: 'it did not arrive; bring it in again when the connection is back.',
        });
      }
      done += 1;
      say(file.name);
    }
  };
  await Promise.all(Array.from({ length: AT_ONCE }, lane));
  return { hashes, refused, told };
}

/** 'about 40 seconds more', 'about 3 minutes more'. */
export function timeLeftText(seconds: number | null): string {
  if (seconds === null) return 'just begun';
  if (seconds < 10) return 'a few seconds more';
  if (seconds < 90) return `about ${Math.round(seconds / 10) * 10} seconds more`;
  return `about ${Math.round(seconds / 60)} minutes more`;
}
