/** With whose eyes walls are looked at, as a choice; with how weak the cones are, where it is a matter of degree. */
import { useId } from 'react';
import { useStore } from '../selection.ts';
import { say } from './live-region.tsx';
import { EYE_WORDS, EYES, hasSeverity, type SeenBy, seenBy } from './seen-by.tsx';

export function SeenByChoice({ className }: { readonly className?: string }) {
  const id = useId();
  const { eye, severity } = useStore(seenBy);
  const take = (chosen: SeenBy): void => {
    seenBy.set({ eye: chosen, severity });
    say(chosen === 'grey' ? 'Walls are shown in lightness alone.' : `Walls are shown to ${chosen} eyes.`);
  };
  return (
    <fieldset className={className}>
      <legend>Seen by</legend>
      {EYES.map((one) => (
        <button
          key={one}
          type="button"
          className={one === eye ? 'cmd on' : 'cmd'}
          aria-pressed={one === eye}
          aria-label={`${one}, ${EYE_WORDS[one]}`}
          title={EYE_WORDS[one]}
          onClick={() => take(one)}
        >
          {one}
        </button>
      ))}
      {hasSeverity(eye) ? (
        <span className="seen-by-degree">
          <label htmlFor={id}>how weak</label>
          <input
            id={id}
            type="range"
            min={0}
            max={1}
            step={0.05}
            value={severity}
            aria-valuetext={`${Math.round(severity * 100)} of 100, where 100 is without them`}
            onChange={(event) => seenBy.set({ eye, severity: Number(event.target.value) })}
          />
        </span>
      ) : null}
    </fieldset>
  );
}
