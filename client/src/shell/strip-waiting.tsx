/** While the Waiting page is open: the numbers of its lines, at the wall or floor each leads to. */
import { surfaceParts } from '@enfilade/shared/schema';
import { waitingOf } from '@enfilade/shared/waiting';
import type { WallSide } from '@enfilade/space/room';
import { useShow } from '../sync/hooks.ts';
import { useRestingRoots } from '../sync/resting-roots.ts';
import { wayTo } from '../talk/remark-words.ts';
import { numbersText, surfaceOfLine } from './strip-numbers.ts';
import { boxOf, type StripRoom } from './strip-plan.ts';

/** As the page does, ms. */
const REST_MS = 250;
const HEIGHT_PX = 14;
const DIGIT_PX = 6.4;
/** With the word-spacing of its class. */
const SPACE_PX = 6;

export function StripWaiting({ rooms, pxPerMm }: { readonly rooms: readonly StripRoom[]; readonly pxPerMm: number }) {
  const { judgements } = useShow();
  useRestingRoots(
    REST_MS,
    'vignettes',
    'memberOf',
    'places',
    'objects',
    'pieces',
    'signatures',
    'settings',
    'remarks',
    'paints',
    'deck',
    'samples',
    'sampleWords',
  );
  const bySurface = new Map<string, number[]>();
  for (const [index, line] of waitingOf(judgements).entries()) {
    const surface = surfaceOfLine(line, judgements, (about) => {
      const view = wayTo(judgements, about)?.view;
      return view?.sheet === 'wall' ? view.surface : null;
    });
    if (surface !== null) bySurface.set(surface, [...(bySurface.get(surface) ?? []), index + 1]);
  }
  return rooms.flatMap((at) => {
    const { x, y, w, d } = boxOf(at, pxPerMm);
    return [...bySurface].flatMap(([surface, numbers]) => {
      const parts = surfaceParts(surface);
      if (parts?.roomId !== at.roomId) return [];
      const text = numbersText(numbers);
      const width = [...text].reduce((sum, sign) => sum + (sign === ' ' ? SPACE_PX : DIGIT_PX), 7);
      // On the wall, half outside the plan; a floor's in the room's middle.
      const spots: Partial<Record<WallSide | 'floor' | 'ceiling', [number, number]>> = {
        head: [x + w / 2, y],
        foot: [x + w / 2, y + d],
        left: [x, y + d * 0.36],
        right: [x + w, y + d * 0.36],
        floor: [x + w / 2, y + d * 0.58],
        ceiling: [x + w / 2, y + d * 0.58],
      };
      const [cx, cy] = spots[parts.side as WallSide | 'floor' | 'ceiling'] ?? [x + w / 2, y + d / 2];
      return [
        <g key={surface} transform={`translate(${cx} ${cy})`}>
          <rect x={-width / 2} y={-HEIGHT_PX / 2} width={width} height={HEIGHT_PX} fill="#111" stroke="#f6f6f6" />
          <text y={3.8} textAnchor="middle" className="strip-number">
            {text}
          </text>
        </g>,
      ];
    });
  });
}
