/**
 * IIIF manifests that people bring in, from a file or an address. Held in memory for as long as they are being brought in,
 * so that of all addresses only those are ever called that a person gave, and those of pictures their manifest names.
 */
import { randomUUID } from 'node:crypto';
import type { IncomingMessage } from 'node:http';
import { iiifTableFrom, pictureAddressOf } from '@enfilade/records/iiif-manifest';
import type { PictureSource } from '@enfilade/records/imported-table';
import type { ManifestAnswer } from '@enfilade/shared/protocol';
import { type Answer, bodyOf, json, refusal } from './answers.ts';
import type { Images } from './images.ts';
import { OutsideRefused, openOutside } from './outside-requests.ts';
import { PictureRefused } from './picture-ingest.ts';

const MANIFEST_BYTES = 10 << 20;
const MANIFEST_MS = 20_000;
const PICTURE_MS = 60_000;
/** Twice the largest that is shown, so that a wall print is still sharp; the full picture may be gigabytes. */
const PICTURE_PX = 2048;
const HELD_AT_MOST = 40;

interface Held {
  readonly personId: string;
  /** Of each row of its table. */
  readonly pictures: readonly (readonly PictureSource[])[];
}

export class Manifests {
  private readonly held = new Map<string, Held>();
  private readonly images: Images;
  private readonly pictureBytes: number;
  private readonly mayCall: ((address: string) => boolean) | undefined;

  constructor(images: Images, pictureBytes: number, mayCall?: (address: string) => boolean) {
    this.images = images;
    this.pictureBytes = pictureBytes;
    this.mayCall = mayCall;
  }

  /** `POST manifests`: the manifest itself. */
  async take(request: IncomingMessage, personId: string): Promise<Answer> {
    const text = await bodyOf(request, MANIFEST_BYTES);
    if (text === null) return refusal(413, 'A manifest is at most 10 MB of text. Nothing was kept.', 'manifest');
    return this.hold(text, personId);
  }

  /** `POST manifests/fetch`: `{address}`. */
  async fetch(address: unknown, personId: string): Promise<Answer> {
    if (typeof address !== 'string' || address.length > 4000) {
      return refusal(400, 'No address was given. Nothing was fetched.', 'address');
    }
    try {
      const accept = 'application/ld+json, application/json;q=0.9';
      const answer = await this.open(address, { accept, bytesAtMost: MANIFEST_BYTES, msAtMost: MANIFEST_MS });
      const chunks: Buffer[] = [];
      for await (const chunk of answer) chunks.push(chunk as Buffer);
      return this.hold(new TextDecoder().decode(Buffer.concat(chunks)), personId);
    } catch (error) {
      if (error instanceof OutsideRefused) return refusal(422, `${error.message} Nothing was fetched.`, 'address');
      throw error;
    }
  }

  /** `POST manifests/<id>/pictures/<row>/<n>`: fetched at the size needed and taken as any other picture. */
  async picture(id: string, row: string, n: string, personId: string): Promise<Answer> {
    const held = this.held.get(id);
    const source = held?.personId === personId ? held.pictures[Number(row)]?.[Number(n)] : undefined;
    if (source === undefined) return refusal(404, 'That manifest does not name this picture.', 'picture');
    const name = `picture ${Number(n) + 1} of row ${Number(row) + 1}`;
    try {
      const bytes = await this.open(pictureAddressOf(source, PICTURE_PX), {
        accept: 'image/jpeg, image/png, image/webp, image/tiff',
        bytesAtMost: this.pictureBytes,
        msAtMost: PICTURE_MS,
      });
      return json(200, await this.images.add(bytes, name));
    } catch (error) {
      if (error instanceof OutsideRefused || error instanceof PictureRefused) return refusal(422, error.message, name);
      throw error;
    }
  }

  private open(
    address: string,
    options: { readonly accept: string; readonly bytesAtMost: number; readonly msAtMost: number },
  ): ReturnType<typeof openOutside> {
    return openOutside(address, { ...options, ...(this.mayCall === undefined ? {} : { mayCall: this.mayCall }) });
  }

  private hold(text: string, personId: string): Answer {
    let read: unknown;
    try {
      read = JSON.parse(text);
    } catch {
      return refusal(422, 'What came is no JSON, so no IIIF manifest. Nothing was kept.', 'manifest');
    }
    const { cells, pictures, issues } = iiifTableFrom(read);
    if (cells.length === 0) {
      return refusal(422, `${issues[0]?.what ?? 'This is no IIIF manifest.'} Nothing was kept.`, 'manifest');
    }
    const id = randomUUID();
    this.held.set(id, { personId, pictures });
    const [oldest] = this.held.keys();
    if (this.held.size > HELD_AT_MOST && oldest !== undefined) this.held.delete(oldest);
    return json(200, { id, text } satisfies ManifestAnswer);
  }
}
