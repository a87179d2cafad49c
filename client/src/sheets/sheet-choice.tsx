/** Which sheet of a spreadsheet is read; those hidden in the file only where a person asks for them. */
import { useId } from 'react';
import type { Bringing } from './use-bringing.ts';

export function SheetChoice({ bringing }: { readonly bringing: Bringing }) {
  const id = useId();
  const { reading } = bringing;
  if (reading.kind !== 'read' || reading.sheets.length < 2) return null;
  return (
    <p className="bi-sheet">
      <label htmlFor={id}>Sheet read</label>
      <select id={id} value={reading.sheet ?? ''} onChange={(event) => bringing.readSheet(event.target.value)}>
        {reading.sheets.map(({ name, hidden }) => (
          <option key={name} value={name}>
            {hidden ? `${name} (hidden in the file)` : name}
          </option>
        ))}
      </select>
    </p>
  );
}
