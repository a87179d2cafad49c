/** Two stages that show the same part of their drawings: whichever is moved, the other goes with it. */
import type { Camera } from '../stage/camera.ts';
import type { StageMachine } from '../stage/stage-machine.ts';

/** The second takes the first's view at once. Returns the way out of step. */
export function keepInStep(first: StageMachine, second: StageMachine): () => void {
  const given = new Map<StageMachine, Camera>();
  const follow = (leader: StageMachine, other: StageMachine) => () => {
    const now = leader.shownAt.get();
    const last = given.get(leader);
    // What it was given comes back as its own word: it is no news.
    if (last !== undefined && alike(last, now)) return;
    given.delete(leader);
    give(other, now);
  };
  const give = (to: StageMachine, camera: Camera): void => {
    if (alike(to.camera, camera)) return;
    given.set(to, camera);
    const factor = camera.scale / to.camera.scale;
    if (Math.abs(factor - 1) > 1e-9) to.zoom(factor, 0, 0);
    to.pan(camera.x - to.camera.x, camera.y - to.camera.y);
  };
  give(second, first.camera);
  const ways = [first.shownAt.subscribe(follow(first, second)), second.shownAt.subscribe(follow(second, first))];
  return () => {
    for (const leave of ways) leave();
  };
}

function alike(a: Camera, b: Camera): boolean {
  return Math.abs(a.x - b.x) <= 1 && Math.abs(a.y - b.y) <= 1 && Math.abs(a.scale / b.scale - 1) < 1e-6;
}
