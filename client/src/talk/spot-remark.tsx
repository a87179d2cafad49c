/** A remark on a spot: the spot is pressed on the stage or typed as two numbers, then the words are written. */
import { wordOf } from '@enfilade/shared/proposals';
import { remark } from '@enfilade/shared/remarks';
import { LAYOUT_FLOOR, type SurfaceId } from '@enfilade/shared/schema';
import { capital, shortSurfaceName, surfaceName } from '@enfilade/shared/surface-names';
import { lengthFrom } from '@enfilade/space/lengths';
import { type FormEvent, useEffect, useId, useState } from 'react';
import { act } from '../cards/acting.ts';
import { lengthText, usePreferences } from '../preferences.ts';
import { useStore } from '../selection.ts';
import { say } from '../shell/live-region.tsx';
import { useHang, useShow } from '../sync/hooks.ts';
import { RemarkForm } from './remark-form.tsx';
import { aboutText } from './remark-words.ts';
import { leaveSpot, type Spotted, spotAsked, spotTaken } from './spot-asked.ts';
import './spot-remark.css';

/** `surfaces`: where the spot may lie, the one meant first in front. */
export function SpotRemark({ surfaces }: { readonly surfaces: readonly SurfaceId[] }) {
  const hang = useHang();
  const { judgements } = useShow();
  const { unit } = usePreferences();
  const asked = useStore(spotAsked);
  const taken = useStore(spotTaken);
  // Whoever faces something else asks for nothing any more.
  const key = surfaces.join();
  // biome-ignore lint/correctness/useExhaustiveDependencies: the surfaces are the occasion
  useEffect(() => leaveSpot, [key]);
  if (!hang.may('talk')) return null;
  if (taken !== null) {
    const about = { kind: 'spot', ...taken } as const;
    return (
      <>
        <p className="t1 spot-where">{aboutText(judgements, about, unit)}</p>
        <RemarkForm
          label="A remark on this spot"
          done="say it"
          asks
          take={(text, askedOf) => {
            const said = { about, text, ...(askedOf === null ? {} : { asked: askedOf }) };
            if (act(hang, remark(said, wordOf(hang.me.person, new Date())), 'said')) leaveSpot();
          }}
          leave={leaveSpot}
        />
      </>
    );
  }
  if (asked !== null) return <SpotForm surfaces={surfaces} />;
  return (
    <p className="remark-commands">
      <button
        type="button"
        onClick={() => {
          spotAsked.set(surfaces);
          say('Press the spot, or type its two numbers');
        }}
      >
        remark on a spot…
      </button>
    </p>
  );
}

function SpotForm({ surfaces }: { readonly surfaces: readonly SurfaceId[] }) {
  const { documents, judgements } = useShow();
  const { unit } = usePreferences();
  const id = useId();
  const [surface, setSurface] = useState(surfaces[0] ?? LAYOUT_FLOOR);
  const [x, setX] = useState('');
  const [y, setY] = useState('');
  const [wrong, setWrong] = useState<string | null>(null);
  const most = extentOf(surface, judgements);
  const wall = judgements.where.wallOf(surface) !== null;
  const take = (event: FormEvent): void => {
    event.preventDefault();
    const read = [lengthFrom(x, unit), lengthFrom(y, unit)];
    const issue = read.find((one) => one.mm === undefined)?.issue;
    const [xMm, yMm] = read.map((one) => Math.round(one.mm ?? 0)) as [number, number];
    if (issue !== undefined) setWrong(`'${String(issue.value)}' ${issue.what}`);
    else if (most !== null && (xMm < 0 || xMm > most[0] || yMm > most[1] || (yMm < 0 && !wall))) {
      setWrong(`it is ${lengthText(most[0], unit)} by ${lengthText(most[1], unit)}`);
    } else {
      const spot: Spotted = { surface, xMm, yMm };
      spotAsked.set(null);
      spotTaken.set(spot);
    }
  };
  return (
    <form
      className="remark-form spot-form"
      onSubmit={take}
      onKeyDown={(event) => {
        if (event.key !== 'Escape') return;
        event.stopPropagation();
        leaveSpot();
      }}
    >
      <p className="cap">Press the spot, or type where it is.</p>
      {surfaces.length < 2 ? null : (
        <label className="spot-field">
          <span>On</span>
          <select value={surface} onChange={(event) => setSurface(event.target.value)}>
            {surfaces.map((one) => (
              <option key={one} value={one}>
                {one.endsWith(':floor') ? 'Floor' : capital(shortSurfaceName(documents, one))}
              </option>
            ))}
          </select>
        </label>
      )}
      <label className="spot-field" htmlFor={`${id}-x`}>
        <span>
          {surface === LAYOUT_FLOOR ? 'Across' : wall ? 'From left corner' : 'From left wall'}, {unit}
        </span>
        <input
          id={`${id}-x`}
          // biome-ignore lint/a11y/noAutofocus: the form opens by a press on its command, and is there to be typed in
          autoFocus
          inputMode="decimal"
          value={x}
          aria-invalid={wrong !== null}
          aria-describedby={`${id}-wrong`}
          onChange={(event) => setX(event.target.value)}
        />
      </label>
      <label className="spot-field" htmlFor={`${id}-y`}>
        <span>
          {wall || surface === LAYOUT_FLOOR ? 'Up' : 'From entrance wall'}, {unit}
        </span>
        <input
          id={`${id}-y`}
          inputMode="decimal"
          value={y}
          aria-invalid={wrong !== null}
          aria-describedby={`${id}-wrong`}
          onChange={(event) => setY(event.target.value)}
        />
      </label>
      <p id={`${id}-wrong`} className="t1 b" role="alert">
        {wrong === null ? '' : `${surfaceName(documents, surface)}: ${wrong}`}
      </p>
      <p className="remark-commands">
        <button type="submit" disabled={x.trim() === '' || y.trim() === ''}>
          this spot
        </button>
        <button type="button" onClick={leaveSpot}>
          leave it
        </button>
      </p>
    </form>
  );
}

/** How far a surface goes, mm; null where it has no edge. */
function extentOf(
  surface: SurfaceId,
  judgements: ReturnType<typeof useShow>['judgements'],
): readonly [number, number] | null {
  const wall = judgements.where.wallOf(surface);
  if (wall !== null) return [wall.lengthMm, wall.heightMm];
  const room = judgements.where.roomOf(surface);
  return room === null ? null : [room.widthMm, room.depthMm];
}
