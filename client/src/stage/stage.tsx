/** The stage in its box: two Konva layers, one for what rests and one for what moves, and the hands and keys on it. */
import type Konva from 'konva';
import { type ReactNode, useEffect, useId, useRef, useState } from 'react';
import { Stage as KonvaStage, Layer, Shape } from 'react-konva';
import { usePreferences } from '../preferences.ts';
import { useShow } from '../sync/hooks.ts';
import { TalkOnStage } from '../talk/talk-on-stage.tsx';
import type { View } from '../view-address.ts';
import type { Insets } from './camera.ts';
import { openStage } from './carry.ts';
import { Gestures } from './gestures.ts';
import { installProbe } from './probe.ts';
import { pressKey } from './stage-keys.ts';
import { StageMachine } from './stage-machine.ts';
import { StageNotes } from './stage-notes.tsx';
import { tonesFrom } from './tones.ts';
import './stage.css';

interface StageProps {
  readonly view: View;
  /** CSS px that caption and card lie over: the drawing is fitted into what they leave. */
  readonly insets: Insets;
  /** What is laid over the drawing. */
  readonly over?: (machine: StageMachine) => ReactNode;
  /** Told of the machine once it shows its view; null when it goes. */
  readonly opened?: (machine: StageMachine | null) => void;
  /** Only looked at: what is carried in from the rail goes to another stage. */
  readonly looking?: boolean;
  /** Another stage beside it has the keyboard. */
  readonly beside?: boolean;
}

export function Stage({ view, insets, over, opened, looking = false, beside = false }: StageProps) {
  const show = useShow();
  const { unit, surround } = usePreferences();
  const keysId = useId();
  const box = useRef<HTMLDivElement>(null);
  const rest = useRef<Konva.Layer>(null);
  const hot = useRef<Konva.Layer>(null);
  const [machine, setMachine] = useState<StageMachine | null>(null);
  const [size, setSize] = useState<{ width: number; height: number } | null>(null);

  useEffect(() => {
    const element = box.current;
    if (element === null) return;
    const made = new StageMachine(show);
    const gestures = new Gestures(made, element);
    const keydown = (event: KeyboardEvent) => {
      if (event.target === element && pressKey(made, gestures, event)) event.preventDefault();
    };
    element.addEventListener('keydown', keydown);
    if (!looking) {
      openStage({ machine: made, gestures, element });
      installProbe(made, element);
    }
    const measure = () => setSize({ width: element.clientWidth, height: element.clientHeight });
    const observer = new ResizeObserver(measure);
    observer.observe(element);
    measure();
    setMachine(made);
    return () => {
      observer.disconnect();
      if (!looking) openStage(null);
      element.removeEventListener('keydown', keydown);
      gestures.stop();
      made.stop();
    };
  }, [show, looking]);

  const { left, right, top, bottom } = insets;
  useEffect(() => {
    if (machine === null || size === null) return;
    machine.setWindow(size, { left, right, top, bottom });
  }, [machine, size, left, right, top, bottom]);

  const address = view.sheet === 'room' ? view.roomId : view.sheet === 'wall' ? view.surface : '';
  // biome-ignore lint/correctness/useExhaustiveDependencies: a view is its sheet and what it is about
  useEffect(() => {
    machine?.setView(view);
  }, [machine, view.sheet, address]);

  // biome-ignore lint/correctness/useExhaustiveDependencies: the surround changes what the tokens say
  useEffect(() => {
    if (machine === null || box.current === null) return;
    const element = box.current;
    machine.painter.setLook(tonesFrom(element), unit);
    // Text on the canvas is drawn again once its letters are there.
    void document.fonts.ready.then(() => machine.painter.setLook(tonesFrom(element), unit));
  }, [machine, unit, surround]);

  const ready = machine !== null && size !== null;
  useEffect(() => {
    if (!ready || machine === null || rest.current === null || hot.current === null) return;
    const [restLayer, hotLayer] = [rest.current, hot.current];
    machine.painter.mount({
      dpr: restLayer.getCanvas().getPixelRatio(),
      drawRest: () => restLayer.drawScene(),
      mendRest: (mend) => mendOn(restLayer, mend),
      drawHot: () => hotLayer.drawScene(),
    });
  }, [ready, machine]);

  useEffect(() => {
    if (!ready || machine === null) return;
    opened?.(machine);
    return () => opened?.(null);
  }, [ready, machine, opened]);

  return (
    <>
      <div
        ref={box}
        className="stage"
        role="application"
        aria-label={labelOf(view)}
        aria-describedby={keysId}
        aria-hidden={beside}
        tabIndex={beside ? -1 : 0}
      >
        <p id={keysId} className="spoken">
          Arrows move what is selected by one centimetre, with shift by ten. Enter opens its card, Delete puts it back,
          comma and full stop turn it, plus and minus go nearer and farther, zero shows the whole. All keys are on the
          help card; everything here is also in the list of this surface.
        </p>
        {ready ? (
          <KonvaStage width={size.width} height={size.height} listening={false} aria-hidden="true">
            <Layer ref={rest} listening={false}>
              <Shape
                listening={false}
                perfectDrawEnabled={false}
                sceneFunc={(context) => paint(context, machine, 'rest')}
              />
            </Layer>
            <Layer ref={hot} listening={false}>
              <Shape
                listening={false}
                perfectDrawEnabled={false}
                sceneFunc={(context) => paint(context, machine, 'hot')}
              />
            </Layer>
          </KonvaStage>
        ) : null}
      </div>
      {ready && over !== undefined ? over(machine) : null}
      {ready ? (
        <div style={{ display: 'contents' }} inert={beside}>
          <StageNotes machine={machine} />
          <TalkOnStage machine={machine} box={box} view={view} looking={looking} />
        </div>
      ) : null}
    </>
  );
}

const LABELS: Partial<Record<View['sheet'], string>> = {
  room: 'The room laid flat: its plan and its four walls',
  wall: 'The wall as faced',
  layout: 'The layout floor',
};

function labelOf(view: View): string {
  if (view.sheet === 'wall' && view.surface.endsWith(':ceiling')) return 'The ceiling, seen from below';
  return LABELS[view.sheet] ?? 'Stage';
}

/** Draws on a layer's canvas without clearing it first, as Konva would. */
function mendOn(layer: Konva.Layer, mend: (ctx: CanvasRenderingContext2D) => boolean): boolean {
  const ctx = layer.getCanvas().getContext()._context;
  ctx.save();
  ctx.setTransform(1, 0, 0, 1, 0, 0);
  const done = mend(ctx);
  ctx.restore();
  return done;
}

/** Konva's context scales by the pixel ratio; we draw in device pixels ourselves, to fall on whole ones. */
function paint(context: Konva.Context, machine: StageMachine, layer: 'rest' | 'hot'): void {
  const ctx = context._context;
  ctx.save();
  ctx.setTransform(1, 0, 0, 1, 0, 0);
  if (layer === 'rest') machine.painter.paintRest(ctx);
  else machine.painter.paintHot(ctx);
  ctx.restore();
}
