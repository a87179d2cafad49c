/** One drag, from taking hold to letting go: live on the hot layer and in presence, one act at the end. */
import * as commands from '@enfilade/shared/commands';
import type { PieceId, Place } from '@enfilade/shared/schema';
import { ontoPanel } from '@enfilade/space/fold-out';
import { say } from '../shell/live-region.tsx';
import { toDrawingPoint } from './camera.ts';
import { droppedAt } from './drop-targets.ts';
import type { Dropped } from './dropping.ts';
import { gapsAbout } from './gaps.ts';
import { type Grip, gripOf, placesOf } from './grip.ts';
import { RoomForHand } from './making-room.ts';
import { type ScenePanel, surfaceAt } from './panels.ts';
import { itemsOf, type SceneItem } from './scene-items.ts';
import type { StageMachine } from './stage-machine.ts';

/** How near to the centre line counts as meant, CSS px. */
const REACH_PX = 7;

export class DragSession {
  readonly grip: Grip;
  private readonly machine: StageMachine;
  private readonly moving: ReadonlySet<PieceId>;
  private panel: ScenePanel | null;
  private places: Map<PieceId, Place> | null = null;
  private known: { panel: ScenePanel; version: number; items: SceneItem[] } | null = null;
  private readonly grabbedItem: SceneItem | null;
  private readonly room: RoomForHand;

  /** On the stage: `item` is what the pointer took hold of at a window point. From the rail: null. */
  constructor(machine: StageMachine, selected: readonly PieceId[], item: SceneItem | null, px: number, py: number) {
    this.machine = machine;
    const { X, Y } = toDrawingPoint(machine.camera, px, py);
    const first = item?.pieceId ?? (selected[0] as PieceId);
    let offset = { xMm: 0, yMm: 0 };
    if (item !== null) {
      const at = ontoPanel(item.panel, X, Y);
      offset = { xMm: at.xMm - item.xMm, yMm: at.yMm - item.yMm };
    }
    const start = item === null ? null : { panel: item.panel, xMm: item.xMm, yMm: item.yMm };
    const made = gripOf(machine.resting, first, selected, start, offset);
    if (item !== null && made.grabbed !== first) {
      // The carrier is what moves: held where it is, under the pointer as it stands.
      const carrier = machine.scene?.itemsOf(made.grabbed).find((its) => its.panel === item.panel);
      if (carrier !== undefined) {
        const at = ontoPanel(item.panel, X, Y);
        this.grip = {
          ...made,
          start: { panel: item.panel, xMm: carrier.xMm, yMm: carrier.yMm },
          offset: { xMm: at.xMm - carrier.xMm, yMm: at.yMm - carrier.yMm },
        };
      } else this.grip = made;
    } else this.grip = made;
    this.room = new RoomForHand(machine.show);
    this.panel = item?.panel ?? null;
    this.grabbedItem = item;
    const moving = new Set<PieceId>();
    for (const pieceId of this.grip.pieces) {
      moving.add(pieceId);
      for (const load of machine.show.judgements.where.loadOf(pieceId)) moving.add(load);
    }
    this.moving = moving;
    const former = [...this.grip.pieces].flatMap((id) => machine.scene?.itemsOf(id) ?? []);
    machine.setHot({ former, hovered: null });
  }

  /** The pointer is at a window point now. `freely`: settle on nothing. */
  move(px: number, py: number, freely: boolean): void {
    const { machine, grip } = this;
    const { scene } = machine;
    if (scene === null) return;
    const { X, Y } = toDrawingPoint(machine.camera, px, py);
    const size = machine.resting.sizeOf(grip.grabbed);
    const under = surfaceAt(scene.frame, X, Y)?.panel ?? this.stillOver(X, Y);
    if (size === null || under === null) {
      this.hover(X, Y);
      return;
    }
    this.panel = under;
    const at = ontoPanel(under, X, Y);
    const offset = this.offsetOn(under);
    const dropped = droppedAt(machine.resting, {
      panel: under,
      xMm: at.xMm - offset.xMm,
      yMm: at.yMm - offset.yMm,
      size,
      levelsMm: machine.resting.levelsOf(grip.grabbed),
      from: grip.from.get(grip.grabbed) ?? null,
      items: this.restingOn(under),
      centreLineMm: scene.frame.centreLineMm,
      reachMm: freely ? 0 : REACH_PX / machine.camera.scale,
    });
    this.take(under, dropped);
  }

  private take(panel: ScenePanel, dropped: Dropped): void {
    const { machine, grip } = this;
    const { scene, show } = machine;
    if (scene === null) return;
    const wanted = placesOf(machine.resting, grip, panel, dropped);
    const made = dropped.place[0] === panel.surface ? this.room.placesAt(panel.surface, wanted) : null;
    this.places = made ? new Map(made) : wanted;
    machine.hands.takeMine(this.places);
    machine.lift();
    const item = itemsOf(scene.frame, machine.hot, grip.grabbed).find((its) => its.panel.surface === panel.surface);
    machine.setHot({
      free: null,
      settled: dropped.onCentreLine ? panel : null,
      gaps:
        item === undefined
          ? null
          : gapsAbout(show.judgements, scene, item, new Set([...this.moving, ...this.places.keys()])),
    });
    show.presence.say({ drag: [...this.places] });
  }

  /** Over nothing it could rest on: it follows the pointer, and would go back. */
  private hover(X: number, Y: number): void {
    const { machine } = this;
    this.places = null;
    machine.hands.takeMine(new Map(this.startPlaces()));
    machine.lift();
    const known = this.grabbedItem;
    machine.setHot({
      gaps: null,
      settled: null,
      free: known === null ? null : { ...known, X: X - this.grip.offset.xMm, Y: Y + this.grip.offset.yMm },
    });
    machine.show.presence.say({ drag: null });
  }

  private startPlaces(): [PieceId, Place][] {
    return [...this.grip.from].map(([pieceId, { place }]) => [pieceId, place]);
  }

  /** A little way off the last panel the thing is still meant for it. */
  private stillOver(X: number, Y: number): ScenePanel | null {
    const { panel, machine } = this;
    const size = machine.resting.sizeOf(this.grip.grabbed);
    if (panel === null || size === null) return null;
    const { xMm, yMm } = ontoPanel(panel, X, Y);
    const over = Math.max(150, Math.min(size.widthMm, size.heightMm) / 2);
    const near =
      xMm >= -over && xMm <= panel.widthMm + over && yMm >= panel.lowestMm - over && yMm <= panel.heightMm + over;
    return near ? panel : null;
  }

  /** Where it is held; on another panel no farther from its centre than its own edge there. */
  private offsetOn(panel: ScenePanel): { xMm: number; yMm: number } {
    const { grip, machine } = this;
    if (grip.start === null || grip.start.panel.surface === panel.surface) return grip.offset;
    const size = machine.resting.sizeOf(grip.grabbed);
    const halfX = (size?.widthMm ?? 0) / 2;
    const halfY =
      (panel.kind === 'floor' || panel.kind === 'ceiling' ? (size?.depthMm ?? 0) : (size?.heightMm ?? 0)) / 2;
    const kept = (value: number, half: number) => Math.max(-half, Math.min(half, value));
    return { xMm: kept(grip.offset.xMm, halfX), yMm: kept(grip.offset.yMm, halfY) };
  }

  private restingOn(panel: ScenePanel): SceneItem[] {
    const { machine, known } = this;
    if (known?.panel === panel && known.version === machine.version) return known.items;
    const items = (machine.scene?.withinPanel(panel) ?? []).filter(
      ({ pieceId }) => !this.moving.has(pieceId) && machine.resting.levelsOf(pieceId).length > 0,
    );
    this.known = { panel, version: machine.version, items };
    return items;
  }

  /** Lets go: one act, or nothing where it could rest nowhere. True when something was placed. */
  drop(): boolean {
    const { machine, places, grip } = this;
    let done = false;
    if (places !== null) {
      const { show } = machine;
      const what = grip.pieces.length === 1 ? show.judgements.nameOf(grip.grabbed) : `${grip.pieces.length} pieces`;
      const giving = places.size - grip.pieces.length;
      const room = giving > 0 ? `, ${giving} ${giving === 1 ? 'makes' : 'make'} room` : '';
      const name = `${grip.from.size > 0 ? 'move' : 'place'} ${what}${room}`;
      try {
        done = show.perform(commands.place(show.documents, places, name));
        if (!done) say('Not done: this cannot be written just now.');
      } catch (error) {
        say(error instanceof RangeError ? `Not done: ${error.message}.` : 'Not done.');
      }
    }
    this.end();
    return done;
  }

  /** Returns everything to where it was. */
  cancel(): void {
    this.end();
  }

  private end(): void {
    const { machine } = this;
    machine.hands.takeMine(new Map());
    machine.setHot({ former: [], free: null, gaps: null, settled: null });
    machine.lift();
    machine.show.presence.say({ drag: null });
  }
}
