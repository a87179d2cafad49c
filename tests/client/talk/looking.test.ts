import * as fc from 'fast-check';
import { expect, test } from 'vitest';
import { type Camera, fitted, panned, toScreenPoint, zoomed } from '../../../client/src/stage/camera.ts';
import type { StageMachine } from '../../../client/src/stage/stage-machine.ts';
import { lookAt, lookingOf } from '../../../client/src/talk/looking.ts';

const WALL = { minX: 0, minY: 0, maxX: 6000, maxY: 3600 };

/** A stage's window on a wall, without what is drawn in it. */
function windowOn(width: number, height: number) {
  const size = { width, height };
  const insets = { left: 262, right: 274, top: 26, bottom: 30 };
  const whole = fitted(WALL, size, insets);
  const stage = {
    size,
    insets,
    camera: whole as Camera,
    viewport: {
      get untouched() {
        return stage.camera === whole;
      },
    },
    zoom(factor: number, x: number, y: number) {
      stage.camera = zoomed(stage.camera, factor, x, y);
    },
    pan(dx: number, dy: number) {
      stage.camera = panned(stage.camera, dx, dy, WALL, size);
    },
    fit() {
      stage.camera = whole;
    },
  };
  return stage;
}

const machine = (stage: ReturnType<typeof windowOn>) => stage as unknown as StageMachine;

test('law: whoever goes along sees all that is looked at, about the same middle, in a window of any size', () => {
  const sizes = fc.record({ width: fc.integer({ min: 900, max: 2000 }), height: fc.integer({ min: 300, max: 1200 }) });
  const onWall = fc.double({ min: 0.2, max: 0.8, noNaN: true });
  const moves = fc.tuple(fc.double({ min: 1.1, max: 6, noNaN: true }), onWall, onWall);
  fc.assert(
    fc.property(sizes, sizes, moves, (a, b, [factor, x, y]) => {
      const [leader, follower] = [windowOn(a.width, a.height), windowOn(b.width, b.height)];
      const at = toScreenPoint(leader.camera, x * WALL.maxX, y * WALL.maxY);
      leader.zoom(factor, at.x, at.y);
      const said = lookingOf(machine(leader));
      expect(said).not.toBeNull();
      lookAt(machine(follower), said);
      const seen = lookingOf(machine(follower));
      const [X, Y, width, height] = said as readonly number[];
      const [theirX, theirY, theirWidth, theirHeight] = seen as readonly number[];
      // Cameras stand on whole pixels, and what is said is in whole mm.
      const slackMm = 2 + 2 / follower.camera.scale;
      expect(Math.abs((theirX ?? 0) - (X ?? 0))).toBeLessThanOrEqual(slackMm);
      expect(Math.abs((theirY ?? 0) - (Y ?? 0))).toBeLessThanOrEqual(slackMm);
      expect(theirWidth).toBeGreaterThanOrEqual((width ?? 0) - slackMm);
      expect(theirHeight).toBeGreaterThanOrEqual((height ?? 0) - slackMm);
    }),
    { seed: 20260513, numRuns: 300 },
  );
});

test('story: whoever looks at the whole is followed to the whole, as large as each window has it', () => {
  const [leader, follower] = [windowOn(1440, 700), windowOn(1024, 560)];
  follower.zoom(3, 500, 200);
  lookAt(machine(follower), lookingOf(machine(leader)));
  expect(follower.viewport.untouched).toBe(true);
});
