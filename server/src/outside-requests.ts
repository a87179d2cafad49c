/**
 * Requests to addresses that a person gave: of the public network alone, looked at anew at every redirection, bounded in
 * bytes and time. They carry nothing of ours: no cookie, no credentials, no name of the show.
 */
import { type IncomingMessage, request as requestPlain } from 'node:http';
import { request as requestTls } from 'node:https';
import { isIP } from 'node:net';
import { Readable } from 'node:stream';
import { isPublicAddress, lookupPublic, NotPublic } from './public-addresses.ts';

/** Why nothing came of it; the message is a sentence for the person. */
export class OutsideRefused extends Error {}

export interface OutsideOptions {
  readonly accept: string;
  readonly bytesAtMost: number;
  /** From the first name looked up to the last byte. */
  readonly msAtMost: number;
  /** Which IP addresses may be called; tests alone give another. */
  readonly mayCall?: (address: string) => boolean;
}

const REDIRECTIONS = 5;
const REDIRECTED = new Set([301, 302, 303, 307, 308]);

/** @throws OutsideRefused; so does the stream where it grows too long, or too slow. */
export async function openOutside(address: string, options: OutsideOptions): Promise<Readable> {
  const signal = AbortSignal.timeout(options.msAtMost);
  let url = addressFrom(address, null, options);
  for (let hop = 0; hop <= REDIRECTIONS; hop++) {
    const answer = await answerOf(url, options, signal);
    const { statusCode = 0, headers } = answer;
    if (REDIRECTED.has(statusCode)) {
      answer.destroy();
      url = addressFrom(headers.location ?? '', url, options);
      continue;
    }
    if (statusCode !== 200) {
      answer.destroy();
      throw new OutsideRefused(`${url.host} answered with ${statusCode}.`);
    }
    if (!/^(identity)?$/.test(headers['content-encoding'] ?? '')) {
      answer.destroy();
      throw new OutsideRefused(`${url.host} answered in a packed form that was not asked for.`);
    }
    return Readable.from(bounded(answer, url, options));
  }
  throw new OutsideRefused(`${url.host} sends from one address to the next without end.`);
}

/** A web address that may be called as far as can be told before its name is looked up. */
function addressFrom(text: string, from: URL | null, { mayCall = isPublicAddress }: OutsideOptions): URL {
  let url: URL;
  try {
    url = new URL(text, from ?? undefined);
  } catch {
    throw new OutsideRefused('This is no web address.');
  }
  if (url.protocol !== 'https:' && url.protocol !== 'http:') throw new OutsideRefused('Only web addresses are called.');
  if (from?.protocol === 'https:' && url.protocol === 'http:') {
    throw new OutsideRefused(`${from.host} sends on to an address without encryption; it was not followed.`);
  }
  if (url.username !== '' || url.password !== '') {
    throw new OutsideRefused('An address with a name and password in it is not called.');
  }
  const port = url.port === '' ? null : Number(url.port);
  if (port !== null && port !== 80 && port !== 443 && port < 1024) {
    throw new OutsideRefused(`Port ${port} is none that pages are served from; it was not called.`);
  }
  const literal = url.hostname.replace(/^\[|\]$/g, '');
  if (isIP(literal) !== 0 && !mayCall(literal)) throw inside(url);
  return url;
}

function inside(url: URL): OutsideRefused {
  return new OutsideRefused(`${url.hostname} lies inside a private network or on this machine; it was not called.`);
}

function answerOf(url: URL, options: OutsideOptions, signal: AbortSignal): Promise<IncomingMessage> {
  const ask = url.protocol === 'https:' ? requestTls : requestPlain;
  return new Promise((answered, failed) => {
    const asked = ask(url, {
      agent: false,
      lookup: lookupPublic(options.mayCall),
      signal,
      maxHeaderSize: 16 << 10,
      headers: { accept: options.accept, 'accept-encoding': 'identity', 'user-agent': 'Enfilade' },
    });
    asked.on('error', (error) => {
      if (error instanceof NotPublic) failed(inside(url));
      else if (signal.aborted) failed(tooSlow(url));
      else failed(new OutsideRefused(`${url.host} cannot be reached.`));
    });
    asked.on('response', answered);
    asked.end();
  });
}

function tooSlow(url: URL): OutsideRefused {
  return new OutsideRefused(`${url.host} took too long.`);
}

async function* bounded(answer: IncomingMessage, url: URL, { bytesAtMost }: OutsideOptions): AsyncGenerator<Buffer> {
  let bytes = 0;
  try {
    for await (const chunk of answer as AsyncIterable<Buffer>) {
      bytes += chunk.length;
      if (bytes > bytesAtMost) {
        throw new OutsideRefused(`${url.host} sent more than ${Math.round(bytesAtMost / (1 << 20))} MB.`);
      }
      yield chunk;
    }
  } catch (error) {
    if (error instanceof OutsideRefused) throw error;
    throw error instanceof Error && error.name === 'AbortError'
      ? tooSlow(url)
      : new OutsideRefused(`${url.host} broke off.`);
  } finally {
    answer.destroy();
  }
}
