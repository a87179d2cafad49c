/** A photograph for a record of the collection that has none, from this device: sent, then set. What fails says so. */
import type { CollectionRecord } from '@enfilade/shared/collection';
import type { Refusal } from '@enfilade/shared/protocol';
import { mayBringIn } from '@enfilade/shared/seats';
import { useState } from 'react';
import { say } from '../shell/live-region.tsx';
import { useShow } from '../sync/hooks.ts';
import { PhotographButton, SENDING_MS } from './photograph-it.tsx';

interface PhotographRecordProps {
  readonly record: CollectionRecord;
  readonly done: (record: CollectionRecord) => void;
  readonly quiet?: boolean;
}

export function PhotographRecord({ record, done, quiet = false }: PhotographRecordProps) {
  const { base, me, pictures } = useShow();
  const [said, setSaid] = useState<string | null>(null);
  if (!mayBringIn(me.person.role)) return null;
  const title = record.title || record.number;
  const take = async (file: File): Promise<void> => {
    setSaid('Sending…');
    try {
      const sent = await pictures.send(file, AbortSignal.timeout(SENDING_MS));
      if (!('sha256' in sent)) return setSaid(sent.what);
      const answer = await fetch(`${base}/collection/photograph`, {
        method: 'POST',
        headers: { 'content-type': 'application/json' },
        body: JSON.stringify({ number: record.number, picture: sent.sha256 }),
        signal: AbortSignal.timeout(SENDING_MS),
      });
      const body = (await answer.json()) as CollectionRecord | Refusal;
      if ('what' in body) return setSaid(body.what);
      setSaid(null);
      say(`${title} has its picture`);
      done(body);
    } catch {
      setSaid('It did not arrive. Take it again when the connection is back.');
    }
  };
  return <PhotographButton title={title} take={(file) => void take(file)} said={said} quiet={quiet} />;
}
