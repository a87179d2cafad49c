/** The weeks to the opening as a line of days, with what waits standing on its day. */
import type { WaitingLine } from '@enfilade/shared/waiting';
import { useShow } from '../sync/hooks.ts';
import { daysBetween, shortDay } from './waiting-days.ts';

const WIDTH = 1120;
const LINE_Y = 46;
/** Numbers nearer than this stand above one another, px. */
const NUMBER_PX = 22;

export function Weeks({
  lines,
  today,
}: {
  readonly lines: readonly { readonly line: WaitingLine; readonly number: number }[];
  readonly today: string;
}) {
  const { judgements } = useShow();
  const [agreeBy, hangBegins, opens] = (['agreeBy', 'hangBegins', 'opens'] as const).map((key) =>
    judgements.setting(key),
  );
  const days = [agreeBy, hangBegins, opens, ...lines.map(({ line }) => line.byDay)].filter(
    (day): day is string => Boolean(day) && daysBetween(today, day as string) >= 0,
  );
  const last = days.sort().at(-1);
  if (last === undefined || daysBetween(today, last) < 1) return null;
  const span = daysBetween(today, last);
  const x = (day: string): number => 12 + (Math.max(0, daysBetween(today, day)) / span) * (WIDTH - 24);
  const stacks = new Map<number, number>();
  const marks = lines.flatMap(({ line, number }) => {
    if (line.byDay === null) return [];
    const slot = Math.round(x(line.byDay) / NUMBER_PX);
    const height = stacks.get(slot) ?? 0;
    stacks.set(slot, height + 1);
    return [{ number, x: slot * NUMBER_PX, height }];
  });
  const tallest = Math.max(0, ...stacks.values());
  const top = (tallest - 1) * 18;
  const named = [
    { day: today, text: `today, ${shortDay(today, today)}` },
    ...(agreeBy ? [{ day: agreeBy, text: `agreed by ${shortDay(agreeBy, today)}` }] : []),
    ...(hangBegins ? [{ day: hangBegins, text: `hang begins ${shortDay(hangBegins, today)}` }] : []),
    ...(opens ? [{ day: opens, text: `opens ${shortDay(opens, today)}` }] : []),
  ];
  return (
    <section className="weeks" aria-label="The weeks to the opening">
      <h2 className="it">The weeks to the opening</h2>
      <svg
        viewBox={`0 ${-Math.max(0, top)} ${WIDTH} ${88 + Math.max(0, top)}`}
        role="img"
        aria-label={named.map(({ text }) => text).join('; ')}
      >
        <path d={`M12 ${LINE_Y}H${WIDTH - 12}`} stroke="currentColor" strokeWidth={1.25} />
        {Array.from({ length: Math.floor(span / 7) + 1 }, (_, week) => {
          const at = 12 + ((week * 7) / span) * (WIDTH - 24);
          // biome-ignore lint/suspicious/noArrayIndexKey: a week is its index
          return <path key={week} d={`M${at} ${LINE_Y - 5}V${LINE_Y}`} stroke="currentColor" strokeWidth={0.75} />;
        })}
        {hangBegins && opens && hangBegins < opens ? (
          <rect x={x(hangBegins)} y={LINE_Y} width={x(opens) - x(hangBegins)} height={7} fill="currentColor" />
        ) : null}
        {marks.map(({ number, x: at, height }) => (
          <g
            key={number}
            transform={`translate(${Math.min(WIDTH - 12, Math.max(12, at))} ${LINE_Y - 20 - height * 18})`}
          >
            <rect x={-9} y={-9} width={18} height={17} fill="#111" />
            <text y={4} textAnchor="middle" style={{ fill: '#fff', fontWeight: 600, fontSize: 11 }}>
              {number}
            </text>
          </g>
        ))}
        {named.map(({ day, text }, index) => (
          <g key={text}>
            <path
              d={`M${x(day)} ${LINE_Y - 7}V${LINE_Y + 12 + (index % 2) * 14}`}
              stroke="currentColor"
              strokeWidth={1.25}
            />
            <text
              x={x(day)}
              y={LINE_Y + 25 + (index % 2) * 14}
              textAnchor={x(day) > WIDTH - 120 ? 'end' : x(day) < 60 ? 'start' : 'middle'}
            >
              {text}
            </text>
          </g>
        ))}
      </svg>
    </section>
  );
}
