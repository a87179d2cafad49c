/** A wall's light: planned or read there, what each work gets against its limit and its year's budget, what governs them all. */
import { planLight, readLight } from '@enfilade/shared/light-plan';
import { practiceProfileOf } from '@enfilade/shared/practice-limits';
import type { SurfaceId } from '@enfilade/shared/schema';
import { type WallLight as Light, type LitRow, wallLightOf } from '@enfilade/shared/wall-light';
import { useEffect, useMemo } from 'react';
import { choose } from '../selection.ts';
import { CautionMark } from '../shell/marks.tsx';
import { lightNotes } from '../stage/light-notes.ts';
import { useShow } from '../sync/hooks.ts';
import { useRestingRoots } from '../sync/resting-roots.ts';
import { act } from './acting.ts';
import { CaptionFold } from './caption-fold.tsx';
import { dayText } from './day-text.ts';
import { shareText } from './light-block.tsx';
import { luxFrom } from './lux-from.ts';
import { TypedField } from './typed-field.tsx';
import './wall-light.css';

/** ms: a wall's light is read as a whole. */
const REST_MS = 250;

export function WallLight({ surface }: { readonly surface: SurfaceId }) {
  const { judgements } = useShow();
  // biome-ignore format: one list
  const version = useRestingRoots(REST_MS, 'objects', 'pieces', 'places', 'rooms', 'lights', 'limits', 'settings');
  // biome-ignore lint/correctness/useExhaustiveDependencies: the version stands for what the documents hold
  const light = useMemo(() => wallLightOf(judgements, surface), [judgements, surface, version]);
  const { there, governing } = light;
  const brief =
    there === null ? 'none planned' : `${there.lux} lux ${there.from}${governing ? `, ${governing} governs` : ''}`;
  return (
    <CaptionFold name="Light" brief={brief}>
      <LuxFields surface={surface} />
      <Governs light={light} />
      <LitRows light={light} />
      <p className="t1">
        Limits: {practiceProfileOf(judgements.documents).limits.luxR2.source}. The lender’s terms go before.
      </p>
    </CaptionFold>
  );
}

function LuxFields({ surface }: { readonly surface: SurfaceId }) {
  const show = useShow();
  const { documents, judgements, me } = show;
  const light = documents.get('lights', surface);
  const frozen = !show.may('rooms') || show.layerId !== null;
  const shows = judgements.setting('plannedLux');
  const read = light?.read;
  return (
    <>
      <TypedField
        label="Lux planned here"
        text={light?.lux === undefined ? null : String(light.lux)}
        absent={shows > 0 ? `the show’s ${shows}` : 'none'}
        frozen={frozen}
        take={(typed) =>
          luxFrom(typed, (lux) =>
            act(
              show,
              planLight(documents, surface, lux),
              lux === null ? 'lit as the show is' : `${lux} lux planned here`,
            ),
          )
        }
      />
      <TypedField
        label="Lux read by a meter"
        text={read === undefined ? null : String(read.lux)}
        absent="not read"
        frozen={frozen}
        {...(read === undefined ? {} : { hint: `${read.by}, ${dayText(read.on)}; goes before what is planned` })}
        take={(typed) =>
          luxFrom(typed, (lux) => {
            const on = new Date().toISOString().slice(0, 10);
            const taken = lux === null ? null : { lux, by: me.person.name, on };
            return act(
              show,
              readLight(documents, surface, taken),
              lux === null ? 'reading taken away' : `${lux} lux read here`,
            );
          })
        }
      />
    </>
  );
}

function Governs({ light: { governing, allows, days, there } }: { readonly light: Light }) {
  const { judgements } = useShow();
  if (governing === null) return null;
  if (allows === null) {
    return (
      <p>
        {governing === 'R0'
          ? 'No light hurts what is known here.'
          : `${governing} governs. The show’s days are not set.`}
      </p>
    );
  }
  const most = Math.floor(allows.lux);
  const over = there !== null && there.lux > allows.lux;
  return (
    <p className={over ? 'b' : undefined}>
      {governing}, the most sensitive here, governs: over {days} open days of {judgements.setting('hoursPerDay')} h at
      most {most} lux {allows.byDoseLux < allows.lux + 1e-9 ? 'by its year’s dose' : 'at any hour'}.
    </p>
  );
}

/** So many pieces of one record are each told on the wall. */
const SAID_EACH = 3;
/** Too many rows to read at a glance are counted. */
const SHOWN = 8;

function LitRows({ light: { rows, unhurt } }: { readonly light: Light }) {
  const { judgements } = useShow();
  useEffect(() => {
    const notes = new Map(
      rows.flatMap((row) => {
        // Many of one record are said once: the same plate on each would hide what it is of.
        const many = row.pieces.length > SAID_EACH;
        const text = `${many ? `each of ${row.pieces.length}: ` : ''}${noteOf(row)}`;
        const pieces = many ? row.pieces.slice(0, 1) : row.pieces;
        return pieces.map((pieceId) => [pieceId, { text, over: isOver(row) }] as const);
      }),
    );
    lightNotes.set(notes);
    return () => lightNotes.set(null);
  }, [rows]);
  return (
    <>
      <ul className="lit-rows">
        {rows.slice(0, SHOWN).map((row) => {
          const [first] = row.pieces;
          if (first === undefined) return null;
          const title = judgements.objectOf(first)?.title ?? judgements.nameOf(first);
          const name = row.pieces.length > 1 ? `${title}, ${row.pieces.length} pieces` : judgements.nameOf(first);
          return (
            <li key={first}>
              {isOver(row) ? <CautionMark /> : <span />}
              <span>
                <button type="button" onClick={() => choose(row.pieces)}>
                  {name}
                </button>{' '}
                <span className={isOver(row) ? 'b' : undefined}>
                  {row.light.read.lightClass ?? 'class not known'}: {noteOf(row)}
                  {row.light.read.askConservator ? '; ask the conservator' : ''}
                </span>
              </span>
            </li>
          );
        })}
      </ul>
      {rows.length > SHOWN ? <p>{rows.length - SHOWN} more are less in the light.</p> : null}
      {unhurt > 0 ? (
        <p>{unhurt === 1 ? 'One thing' : `${unhurt} things`} here no light hurts, by what the records say.</p>
      ) : null}
    </>
  );
}

function isOver({ light: { budget } }: LitRow): boolean {
  return budget !== null && (budget.over || budget.tooBright);
}

/** '50 of 50 lux, 84 % of a year’s light'. */
function noteOf({ there, light: { budget } }: LitRow): string {
  if (there === null) return 'no light planned';
  if (budget === null) return `${there.lux} lux`;
  return `${there.lux} of ${budget.limits.lux} lux, ${shareText(budget.years)}`;
}
