/** Why a question to the collection has no answer, and asking it again. */
import type { Told } from './asking.ts';

export function Trouble({ told }: { readonly told: Told<unknown> }) {
  if (told.trouble === null) return null;
  return (
    <p className="co-trouble" role="alert">
      {told.trouble}{' '}
      <button type="button" onClick={told.again}>
        ask again
      </button>
    </p>
  );
}
