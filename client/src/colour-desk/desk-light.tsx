/** Which lamp the desk is seen under: daylight, the gallery's (the show's), or one's own studio light (this browser's). */
import type { ColourMatrix } from '@enfilade/colour/colour-matrix';
import type { LabD65 } from '@enfilade/colour/lab';
import { lightMatrixOf } from '@enfilade/colour/light-matrix';
import type { Light } from '@enfilade/colour/lights';
import type { ShowDocuments } from '@enfilade/shared/documents';
import { Judgements } from '@enfilade/shared/judgements';
import { type Lamp, lampFrom, lampLightOf } from '@enfilade/shared/lamps';
import { colourUnder, paintUnder } from '@enfilade/shared/paints-under';
import { DEFAULT_SETTINGS, type PaintId } from '@enfilade/shared/schema';
import { JudgementsUnder, judgementsUnder } from '@enfilade/shared/under-lamps';
import { createContext, type ReactNode, useContext, useMemo, useSyncExternalStore } from 'react';
import { usePreferences } from '../preferences.ts';
import { Store, useStore } from '../selection.ts';
import { useHang, useShow } from '../sync/hooks.ts';
import { useColoursReady } from './colours-ready.ts';

export type SeenUnder = 'daylight' | 'gallery' | 'studio';

/** As chosen at the head of the desk; my own eyes only. */
export const seenUnder = new Store<SeenUnder>('daylight');

const DAYLIGHT: Lamp = 'D65';

/** A light as the desk needs it: what is said under it, and what things look like. */
export interface DeskLight {
  readonly lamp: Lamp;
  readonly light: Light;
  /** Of the show as seen under it. */
  readonly judgements: Judgements;
  /** What a whole picture looks like under it; null where it stays as it is. */
  readonly matrix: ColourMatrix | null;
  /** What a paint looks like under it: by its record where it is of the deck, else by its colour alone. */
  readonly look: (paint: { readonly id: PaintId | null; readonly lab: LabD65 }) => LabD65;
  /** The show with something laid over it, as seen under this light. */
  readonly judgementsOf: (laid: ShowDocuments) => Judgements;
}

export function useGalleryLamp(): Lamp {
  const { documents } = useHang();
  const stored = useSyncExternalStore(
    (tell) => documents.subscribe('settings', tell, 'galleryLamp'),
    () => documents.get('settings', 'galleryLamp'),
  );
  return useMemo(() => lampFrom(stored) ?? DEFAULT_SETTINGS.galleryLamp, [stored]);
}

export function useStudioLamp(): Lamp {
  const { studioLamp } = usePreferences();
  return useMemo(() => lampFrom(studioLamp) ?? DAYLIGHT, [studioLamp]);
}

/** The show under a lamp. */
function useLight(lamp: Lamp): DeskLight {
  const { documents, judgements, pictures } = useShow();
  return useMemo(() => {
    const light = lampLightOf(lamp);
    if (lamp === DAYLIGHT) {
      const judgementsOf = (laid: ShowDocuments): Judgements => new Judgements(laid, pictures);
      return { lamp, light, judgements, matrix: null, look: ({ lab }) => lab, judgementsOf };
    }
    return {
      lamp,
      light,
      judgements: judgementsUnder(documents, pictures, light),
      matrix: lightMatrixOf(light),
      look: ({ id, lab }) => {
        const record = id === null ? undefined : documents.get('deck', id);
        return record === undefined ? colourUnder(lab, light) : paintUnder(record, light);
      },
      judgementsOf: (laid) => new JudgementsUnder(laid, pictures, light),
    };
  }, [documents, judgements, pictures, lamp]);
}

interface Lights {
  /** Under which the desk is seen now: daylight until the colours of its works are worked out. */
  readonly now: DeskLight;
  readonly gallery: DeskLight;
  readonly studio: DeskLight;
  /** Colours still to be worked out before another lamp than daylight can be shown. */
  readonly waiting: number;
}

const LightsContext = createContext<Lights | null>(null);

export function DeskLights({ children }: { readonly children: ReactNode }) {
  const under = useStore(seenUnder);
  const waiting = useColoursReady();
  const daylight = useLight(DAYLIGHT);
  const gallery = useLight(useGalleryLamp());
  const studio = useLight(useStudioLamp());
  const wanted = under === 'gallery' ? gallery : under === 'studio' ? studio : daylight;
  const now = waiting > 0 ? daylight : wanted;
  const lights = useMemo(() => ({ now, gallery, studio, waiting }), [now, gallery, studio, waiting]);
  return <LightsContext value={lights}>{children}</LightsContext>;
}

export function useLights(): Lights {
  const lights = useContext(LightsContext);
  if (lights === null) throw new Error('useLights outside the colour desk');
  return lights;
}

/** What the desk is seen under. */
export function useDeskLight(): DeskLight {
  return useLights().now;
}
