/** How HTTP requests are read and answered. */
import type { IncomingMessage, ServerResponse } from 'node:http';
import { Readable } from 'node:stream';
import { pipeline } from 'node:stream/promises';
import type { Refusal } from '@enfilade/shared/protocol';

const SECURITY: Record<string, string> = {
  'content-security-policy': [
    "default-src 'self'",
    // Compiles the difference kernel's module, whose bytes the page itself brought; a script from a text stays refused.
    "script-src 'self' 'wasm-unsafe-eval'",
    "img-src 'self' blob: data:",
    "worker-src 'self' blob:",
    "frame-src 'self' blob:",
    "style-src 'self'",
    "object-src 'none'",
    "base-uri 'none'",
    "form-action 'self'",
    "frame-ancestors 'self'",
  ].join('; '),
  'referrer-policy': 'no-referrer',
  'x-content-type-options': 'nosniff',
  'cross-origin-opener-policy': 'same-origin',
  'cross-origin-resource-policy': 'same-origin',
};

export interface Answer {
  readonly status: number;
  readonly type: string;
  /** Parts that come one after another are sent as they come. */
  readonly body: string | Uint8Array | AsyncIterable<Uint8Array>;
  readonly headers?: Readonly<Record<string, string>>;
}

export const IMMUTABLE = 'private, max-age=31536000, immutable';

export function json(status: number, body: unknown): Answer {
  return { status, type: 'application/json; charset=utf-8', body: JSON.stringify(body) };
}

export function refusal(status: number, what: string, where: string): Answer {
  return json(status, { what, where } satisfies Refusal);
}

export function page(status: number, title: string, text: string): Answer {
  const body = `<!doctype html><html lang="en"><meta charset="utf-8"><meta name="viewport" content="width=device-width"><title>${title}</title><body><h1>${title}</h1><p>${text}</p></body></html>`;
  return { status, type: 'text/html; charset=utf-8', body };
}

export function send(request: IncomingMessage, response: ServerResponse, answer: Answer): void {
  if (response.headersSent || response.destroyed) return;
  const { body } = answer;
  const headers = { 'content-type': answer.type, 'cache-control': 'no-store', ...SECURITY, ...answer.headers };
  if (typeof body !== 'string' && !(body instanceof Uint8Array)) {
    response.writeHead(answer.status, headers);
    // Broken off where a part fails: a file that is not whole must not look so.
    pipeline(Readable.from(request.method === 'HEAD' ? [] : body, { objectMode: false }), response).catch(() =>
      response.destroy(),
    );
    return;
  }
  const bytes = typeof body === 'string' ? Buffer.from(body) : body;
  response.writeHead(answer.status, { ...headers, 'content-length': bytes.length });
  response.end(request.method === 'HEAD' ? undefined : bytes);
}

/** A browser sends where a page came from; it must be this server. Other programs send nothing, and need the cookie too. */
export function isSameOrigin(request: IncomingMessage, alsoAllowed: readonly string[] = []): boolean {
  const { origin, host } = request.headers;
  if (origin === undefined) return request.headers['sec-fetch-site'] !== 'cross-site';
  if (alsoAllowed.includes(origin)) return true;
  try {
    return host !== undefined && new URL(origin).host === new URL(`http://${host}`).host;
  } catch {
    return false;
  }
}

/** The body as text, or null when it is longer than `bytesAtMost` or is not UTF-8. */
export async function bodyOf(request: IncomingMessage, bytesAtMost: number): Promise<string | null> {
  const chunks: Buffer[] = [];
  let bytes = 0;
  for await (const chunk of request as AsyncIterable<Buffer>) {
    bytes += chunk.length;
    if (bytes > bytesAtMost) return null;
    chunks.push(chunk);
  }
  try {
    return new TextDecoder('utf-8', { fatal: true }).decode(Buffer.concat(chunks));
  } catch {
    return null;
  }
}
