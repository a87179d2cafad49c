/** The hanging schedule of a wall as a table: for those who listen, and for a tablet on the ladder. */
import { wallScheduleOf } from '@enfilade/shared/hanging-schedule';
import type { SurfaceId } from '@enfilade/shared/schema';
import { lengthText, sizeText } from '@enfilade/space/lengths';
import { usePreferences } from '../preferences.ts';
import { useShow } from '../sync/hooks.ts';

export function ScheduleTable({ surface }: { readonly surface: SurfaceId }) {
  const { judgements } = useShow();
  const { unit } = usePreferences();
  const schedule = wallScheduleOf(judgements, surface);
  if (schedule === null || schedule.rows.length === 0) return <p className="cap">Nothing hangs on this wall.</p>;
  return (
    <table className="schedule-table">
      <caption className="spoken">
        Hanging schedule, {schedule.roomName}, {schedule.wallName}, {unit === 'cm' ? 'centimetres' : 'inches'}
      </caption>
      <thead>
        <tr>
          <th scope="col">no.</th>
          <th scope="col">work</th>
          <th scope="col" className="r">
            size, {unit}
          </th>
          <th scope="col" className="r">
            hook from laser line
          </th>
          <th scope="col" className="r">
            hook from floor below
          </th>
          <th scope="col" className="r">
            along from left corner
          </th>
          <th scope="col" className="r">
            weight
          </th>
        </tr>
      </thead>
      <tbody>
        {schedule.rows.map(({ number, pieceId, name, objectNumber, size, hooks, weightKg }) => (
          <tr key={pieceId}>
            <td className="b">{number}</td>
            <td>
              <span className="cap">{name}</span> {objectNumber}
            </td>
            <td className={size.known ? 'r' : 'r unk'}>
              {size.known ? sizeText(size.heightMm, size.widthMm, size.depthMm || null, unit) : 'not known'}
            </td>
            {hooks.known ? (
              <>
                <td className="r b">
                  {hooks.fromLaserMm < 0 ? 'down' : 'up'} {lengthText(Math.abs(hooks.fromLaserMm), unit)}
                </td>
                <td className="r">
                  {hooks.points.map(({ fromFloorMm }) => lengthText(fromFloorMm, unit)).join('; ') ||
                    'spacing not known'}
                </td>
                <td className="r b">{hooks.points.map(({ xMm }) => lengthText(xMm, unit)).join('; ')}</td>
              </>
            ) : (
              <td className="r" colSpan={3}>
                {hooks.missing}
              </td>
            )}
            <td className="r">{weightKg === null ? 'not weighed' : `${weightKg} kg`}</td>
          </tr>
        ))}
      </tbody>
    </table>
  );
}
