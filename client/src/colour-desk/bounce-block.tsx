/** What the room with this paint on this wall throws on white mounts, wall by wall, and what that takes for granted. */
import { hexFromLabD65 } from '@enfilade/colour/spaces';
import type { DeskWall } from '@enfilade/shared/colour-desk';
import { roomBounceOf } from '@enfilade/shared/room-bounce';
import { useMemo } from 'react';
import { useShow } from '../sync/hooks.ts';
import { DeskFold } from './desk-fold.tsx';
import { useDeskLight } from './desk-light.tsx';
import type { PaintShown } from './paint-shown.ts';

interface BlockProps {
  readonly wall: DeskWall;
  readonly paint: PaintShown;
  readonly version: string;
}

export function BounceBlock({ wall, paint, version }: BlockProps) {
  const { judgements } = useShow();
  const { light } = useDeskLight();
  const { surface: face, roomId } = wall;
  // biome-ignore lint/correctness/useExhaustiveDependencies: the version stands for rooms and paints
  const bounce = useMemo(
    () => roomBounceOf(judgements, roomId, { light, tried: { surface: face, paint: paint.surface } }),
    [judgements, roomId, light, face, paint.surface, version],
  );
  if (bounce === null) return null;
  const most = bounce.mounts.reduce((worst, mount) => (mount.deltaE > worst.deltaE ? mount : worst));
  return (
    <DeskFold
      name="bounce"
      heading={`What ${paint.name} throws`}
      summary={
        most.deltaE < 1 ? (
          'White mounts stay white on every wall of the room.'
        ) : (
          <>
            Most on the {most.wallName}: a white mount {most.words}.
          </>
        )
      }
    >
      <table className="bounce">
        <caption className="spoken">A white mount on each wall of the room</caption>
        <thead>
          <tr>
            <td />
            <th scope="col">a white mount there</th>
            <th scope="col">
              ΔE<sub>00</sub>
            </th>
          </tr>
        </thead>
        <tbody>
          {bounce.mounts.map((mount) => (
            <tr key={mount.surface}>
              <th scope="row">
                <i style={{ background: hexFromLabD65(mount.mount) }} />
                {mount.wallName}
                {mount.surface === face ? <span className="spoken">, the wall {paint.name} is on</span> : null}
              </th>
              <td>{mount.words}</td>
              <td className="b">{mount.deltaE.toFixed(1)}</td>
            </tr>
          ))}
        </tbody>
      </table>
      <p className="t1">{bounce.assumptions.join(' ')}</p>
    </DeskFold>
  );
}
