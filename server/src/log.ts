/** Structured lines. What goes in is chosen where it is logged: never a token, a cookie, a name or a document's content. */
import { type DestinationStream, destination, type Level, type Logger, pino } from 'pino';

/** A log into a file, each line on the disk's side before the next; or into any stream. */
export function logTo(target: string | DestinationStream, level: Level = 'info'): Logger {
  return pino({ base: null, level }, typeof target === 'string' ? destination({ dest: target, sync: true }) : target);
}
