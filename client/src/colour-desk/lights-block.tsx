/** The gallery's lamp beside one's own studio light: which each is, what this paint and these works do between them. */
import { lampsInWords, lightShiftOf } from '@enfilade/colour/light-words';
import { hexFromLabD65 } from '@enfilade/colour/spaces';
import type { DeskWall, DeskWork } from '@enfilade/shared/colour-desk';
import { PICTURE_CONFIDENCE, paintConfidence } from '@enfilade/shared/paints-under';
import { partingPaintsOf, worksTurned } from '@enfilade/shared/two-lights';
import { useMemo } from 'react';
import { WallThumb } from '../cards/wall-thumb.tsx';
import { useShow } from '../sync/hooks.ts';
import { DeskFold } from './desk-fold.tsx';
import { type DeskLight, useLights } from './desk-light.tsx';
import { LampChoices } from './lamp-choices.tsx';
import type { PaintShown } from './paint-shown.ts';
import { filterOf } from './picture-filters.tsx';
import './lights-block.css';

interface BlockProps {
  readonly wall: DeskWall;
  readonly paint: PaintShown;
  readonly works: readonly DeskWork[];
  readonly version: string;
}

export function LightsBlock({ wall, paint, works, version }: BlockProps) {
  const { gallery, studio } = useLights();
  return (
    <DeskFold
      name="lights"
      heading="Gallery and studio light"
      summary={gallery.lamp === studio.lamp ? 'One and the same.' : lampsInWords(gallery.light, studio.light)}
    >
      <Beside wall={wall} paint={paint} version={version} />
      <Turned wall={wall} paint={paint} works={works} version={version} />
      <Parting version={version} />
      <LampChoices />
      <p className="t1">
        {paint.name}: {paintConfidence(paint.record)} {PICTURE_CONFIDENCE} A screen shows neither light: it shows how an
        eye settled to it sees.
      </p>
    </DeskFold>
  );
}

const COLUMN_PX = 150;
const TALLEST_PX = 96;
const NOTHING_PLACED = new Map<string, never>();

/** The wall twice, each under its light, and the paint in words. */
function Beside({ wall, paint, version }: Omit<BlockProps, 'works'>) {
  const { gallery, studio } = useLights();
  const { words } = lightShiftOf(paint.surface, studio.light, gallery.light);
  const picture = (light: DeskLight, id: 'gallery' | 'studio') => (
    <figure>
      <div style={{ background: hexFromLabD65(light.look(paint)) }}>
        <WallThumb
          key={version}
          surface={wall.surface}
          places={NOTHING_PLACED}
          widthPx={COLUMN_PX}
          heightPx={TALLEST_PX}
          ground="transparent"
          filter={filterOf(light, id)}
        />
      </div>
      <figcaption className="t1">{id === 'gallery' ? 'in the gallery' : 'in my studio'}</figcaption>
    </figure>
  );
  return (
    <>
      <div className="lights-beside">
        {picture(gallery, 'gallery')}
        {picture(studio, 'studio')}
      </div>
      <p className="t1">
        From the studio to the gallery {paint.name} {words}.
      </p>
    </>
  );
}

/** Works on this wall that read otherwise under the one than under the other. */
function Turned({ wall, paint, works, version }: BlockProps) {
  const { gallery, studio, waiting } = useLights();
  // biome-ignore lint/correctness/useExhaustiveDependencies: the version stands for what the judgements say
  const turned = useMemo(() => {
    if (waiting > 0) return [];
    const here = works.filter(({ surface }) => surface === wall.surface);
    const on = (light: DeskLight) => ({ judgements: light.judgements, wall: light.look(paint) });
    return worksTurned(here, on(studio), on(gallery));
  }, [gallery, studio, waiting, works, wall.surface, paint, version]);
  if (turned.length === 0) return <p className="t1">No work here changes its word between them.</p>;
  return (
    <ul className="t1" aria-label="Works that read otherwise in the gallery than in the studio">
      {turned.map(({ work, from, to }) => (
        <li key={work.id}>
          <i className="it">{work.title}</i>: {from} in the studio, {to} in the gallery.
        </li>
      ))}
    </ul>
  );
}

/** More pairs than these are counted. */
const NAMED = 4;

function Parting({ version }: { readonly version: string }) {
  const { documents } = useShow();
  const { gallery, studio } = useLights();
  // biome-ignore lint/correctness/useExhaustiveDependencies: the version stands for the deck
  const { pairs, unjudged } = useMemo(
    () => partingPaintsOf(documents, studio.light, gallery.light),
    [documents, studio.light, gallery.light, version],
  );
  const nameOf = (id: string): string => documents.get('deck', id)?.name ?? 'a paint that is gone';
  const of = unjudged === 0 ? '' : ` Of ${unjudged} paints nothing can be said: their reflectance was not measured.`;
  if (pairs.length === 0) return <p className="t1">No two paints of the deck part between them.{of}</p>;
  return (
    <>
      <ul className="t1" aria-label="Paints that part between the two lights">
        {pairs.slice(0, NAMED).map(({ one, other, apartUnder }) => (
          <li key={`${one} ${other}`}>
            {nameOf(one)} and {nameOf(other)}{' '}
            {apartUnder === 'second'
              ? 'match in the studio, part in the gallery.'
              : 'part in the studio, match in the gallery.'}
          </li>
        ))}
      </ul>
      <p className="t1">
        {pairs.length > NAMED ? `${pairs.length - NAMED} more pairs part.` : ''}
        {of}
      </p>
    </>
  );
}
