/** The show with a proposal or a kept state laid over its hang: every screen and command works in it as in the show. */
import type { Act } from '@enfilade/shared/acts';
import type { ShowDocuments } from '@enfilade/shared/documents';
import type { HangLayer } from '@enfilade/shared/hang-layer';
import { Judgements } from '@enfilade/shared/judgements';
import type { DocumentName } from '@enfilade/shared/seats';
import type { Saving, Sent, ShowSession, Told } from './show-session.ts';

export class LaidShow implements ShowSession {
  readonly documents: ShowDocuments;
  readonly judgements: Judgements;
  readonly layerId: string;
  readonly me: ShowSession['me'];
  readonly base: string;
  readonly history: ShowSession['history'];
  readonly pictures: ShowSession['pictures'];
  readonly presence: ShowSession['presence'];
  private readonly live: ShowSession;
  private readonly layer: HangLayer;
  private readonly writable: () => boolean;

  /** `writable`: whether this person may change the layer now (an open proposal, and a seat that may talk). */
  constructor(
    live: ShowSession,
    { id, layer, writable }: { readonly id: string; readonly layer: HangLayer; readonly writable: () => boolean },
  ) {
    this.live = live;
    this.layer = layer;
    this.layerId = id;
    this.writable = writable;
    this.me = live.me;
    this.base = live.base;
    this.history = live.history;
    this.pictures = live.pictures;
    this.presence = live.presence;
    this.documents = live.documents.laidOver(layer);
    this.judgements = new Judgements(this.documents, live.pictures);
  }

  get arrived(): boolean {
    return this.live.arrived;
  }

  get savingState(): Saving {
    return this.live.savingState;
  }

  get toldState(): Told | null {
    return this.live.toldState;
  }

  get bothSides(): ShowSession['bothSides'] {
    return this.live.bothSides;
  }

  settle(settled: ShowSession['bothSides'][number]): void {
    this.live.settle(settled);
  }

  /** The hang is the layer's here; every other document is the show's own. */
  may(document: DocumentName): boolean {
    return document === 'hang' ? this.writable() : this.live.may(document);
  }

  /** As in the show; what it changes of the hang is written into the layer. One list of undo holds both. */
  perform(act: Act): boolean {
    if (!this.writable()) return false;
    return this.live.perform({ name: act.name, changes: this.layer.changesFor(act.changes) });
  }

  note(act: Act): boolean {
    return this.live.note(act);
  }

  async send(): Promise<Sent> {
    return { ok: false, what: 'This is not the hang. Go back to the hang, then sign. Nothing was signed.' };
  }

  subscribe(listener: () => void): () => void {
    return this.live.subscribe(listener);
  }

  /** Stops following the show. */
  close(): void {
    this.documents.close();
  }
}
