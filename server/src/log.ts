/** Structured lines. What goes in is chosen where it is logged: never a token, a cookie, a name or a document's content. */
import { type DestinationStream, destination, type Level, type Logger, pino } from 'pino';

const LEVELS = ['error', 'warn', 'info', 'debug'] as const satisfies readonly Level[];

export function isLevel(text: string): text is (typeof LEVELS)[number] {
  return (LEVELS as readonly string[]).includes(text);
}

/** A log into an open file (1: the standard output), each line written before the next; or into any stream. */
export function logTo(target: number | DestinationStream, level: Level = 'info'): Logger {
  return pino({ base: null, level }, typeof target === 'number' ? destination({ fd: target, sync: true }) : target);
}
