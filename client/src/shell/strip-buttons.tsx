/** The strip's rooms and walls as buttons laid over its drawing: one stop of the Tab key, arrows go on from there. */
import type { SurfaceId } from '@enfilade/shared/schema';
import { shortSurfaceName } from '@enfilade/shared/surface-names';
import { type KeyboardEvent, useRef, useState } from 'react';
import { vignettesOn } from '../cards/vignettes-on.ts';
import { useShow } from '../sync/hooks.ts';
import { go, type View } from '../view-address.ts';
import { roomOfView } from './current-view.ts';
import { STRIP_SIDES, type StripPlan, wallSpanOf } from './strip-plan.ts';

interface StripButton {
  readonly key: string;
  readonly label: string;
  readonly current: boolean;
  readonly view: View;
  readonly style: { left: number; top: number; width: number; height: number };
}

/** A wall's band is thinner than a finger or a pointer likes: it is pressed within this many px. */
const PRESS_PX = 13;

export function StripButtons(props: {
  plan: StripPlan;
  view: View;
  pxPerMm: number;
  left: number;
  top: number;
  thick: number;
}) {
  const { plan, view, pxPerMm, left, top } = props;
  const { judgements, documents } = useShow();
  const holder = useRef<HTMLDivElement>(null);
  const [stop, setStop] = useState<string | null>(null);

  const wallLabel = (surface: SurfaceId, roomName: string): string => {
    const paint = judgements.paintOf(surface);
    const states = vignettesOn(judgements, surface).map(
      ({ id, vignette }) => `${vignette.name}, ${judgements.standingOf(id)?.state ?? 'drafted'}`,
    );
    const about = [paint === null ? 'unpainted' : paint.name, ...states].join('; ');
    return `${roomName}, ${shortSurfaceName(documents, surface)}: ${about}`;
  };

  const buttons: StripButton[] = plan.rooms.flatMap((at) => {
    const area = (xMm: number, yMm: number, widthMm: number, heightMm: number) => ({
      left: left + xMm * pxPerMm,
      top: top + yMm * pxPerMm,
      width: widthMm * pxPerMm,
      height: heightMm * pxPerMm,
    });
    const room: StripButton = {
      key: at.roomId,
      label: `${at.room.name}, fold-out`,
      current: view.sheet === 'room' && view.roomId === at.roomId,
      view: { sheet: 'room', roomId: at.roomId },
      style: area(at.leftMm, at.topMm, at.room.widthMm, at.room.depthMm),
    };
    const walls = STRIP_SIDES.map((side): StripButton => {
      const surface = `${at.roomId}:${side}`;
      const long = side === 'head' || side === 'foot' ? at.room.widthMm : at.room.depthMm;
      const span = wallSpanOf(at, side, 0, long, PRESS_PX / pxPerMm);
      return {
        key: surface,
        label: wallLabel(surface, at.room.name),
        current: view.sheet === 'wall' && view.surface === surface,
        view: { sheet: 'wall', surface },
        style: area(span.xMm, span.yMm, span.widthMm, span.heightMm),
      };
    });
    return [room, ...walls];
  });

  const stopAt =
    buttons.find(({ key }) => key === stop) ??
    buttons.find(({ current }) => current) ??
    buttons.find((button) => roomOfView(button.view) === roomOfView(view)) ??
    buttons[0];

  const onKeyDown = (event: KeyboardEvent): void => {
    const step = { ArrowRight: 1, ArrowDown: 1, ArrowLeft: -1, ArrowUp: -1 }[event.key];
    if (step === undefined) return;
    event.preventDefault();
    const index = buttons.findIndex(({ key }) => key === stopAt?.key);
    const next = buttons[(index + step + buttons.length) % buttons.length];
    setStop(next?.key ?? null);
    holder.current?.querySelector<HTMLButtonElement>(`[data-key="${next?.key}"]`)?.focus();
  };

  return (
    <div ref={holder} className="strip-buttons" onKeyDown={onKeyDown} role="toolbar" aria-label="Rooms and walls">
      {buttons.map((button) => (
        <button
          key={button.key}
          type="button"
          className="bare"
          data-key={button.key}
          aria-label={button.label}
          title={button.label}
          aria-current={button.current ? 'page' : undefined}
          tabIndex={button.key === stopAt?.key ? 0 : -1}
          style={button.style}
          onFocus={() => setStop(button.key)}
          onClick={() => go(button.view)}
        />
      ))}
    </div>
  );
}
