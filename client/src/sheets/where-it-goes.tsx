/** Where what was chosen goes: into the show's checklist, or into the museum's collection beside it. */
import type { Into } from './review.ts';

const PLACES: readonly (readonly [Into, string, string])[] = [
  ['checklist', 'into the checklist', 'What this show is made of; it stands unplaced along the foot of every wall.'],
  ['collection', 'into the collection', 'What the museum has, to be browsed beside the show; it is in no room.'],
];

export function WhereItGoes({ into, choose }: { readonly into: Into; readonly choose: (into: Into) => void }) {
  return (
    <fieldset className="bi-into">
      <legend>Where it goes</legend>
      {PLACES.map(([place, name, what]) => (
        <label key={place}>
          <input type="radio" name="bring-in-into" checked={into === place} onChange={() => choose(place)} />
          <span>
            <b className="b">{name}</b> <span className="t1">{what}</span>
          </span>
        </label>
      ))}
    </fieldset>
  );
}
