/** Values, storage and contacts, for the few who may read them: shown only where their document is held at all. */
import * as commands from '@enfilade/shared/commands';
import type { PrivateFacts } from '@enfilade/shared/schema';
import { useEntity, useShow } from '../sync/hooks.ts';
import { act } from './acting.ts';
import { CardGroup } from './card-group.tsx';
import { TypedField } from './typed-field.tsx';

const FIELDS: readonly (readonly [label: string, field: Exclude<keyof PrivateFacts, 'removed'>])[] = [
  ['Value', 'value'],
  ['Storage', 'storage'],
  ['Contact', 'contact'],
  ['Price', 'price'],
];

export function PrivateBlock({ objectId }: { readonly objectId: string }) {
  const show = useShow();
  const facts = useEntity('values', objectId);
  if (show.documents.doc('private') === undefined) return null;
  const frozen = !show.may('private');
  return (
    <CardGroup name="Not for every seat" brief="value, storage, contact">
      <p className="t1 q">Lead, curator and registrar alone read this.</p>
      <div className="record-fields typed-wide">
        {FIELDS.filter(([, field]) => !frozen || facts?.[field]).map(([label, field]) => (
          <TypedField
            key={field}
            label={label}
            text={facts?.[field] ?? null}
            words
            frozen={frozen}
            take={(typed) =>
              act(show, commands.correctPrivate(objectId, { [field]: typed }), `${label.toLowerCase()} set`)
                ? null
                : 'cannot be set just now'
            }
          />
        ))}
      </div>
    </CardGroup>
  );
}
