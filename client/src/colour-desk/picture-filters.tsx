/** Whole pictures as a lamp shows them: one filter for each light, on linear light, as the matrices are meant. */
import type { ColourMatrix } from '@enfilade/colour/colour-matrix';
import { filterValues } from '../shell/seen-by.tsx';
import { type DeskLight, useLights } from './desk-light.tsx';

export function PictureFilters() {
  const { now, gallery, studio } = useLights();
  return (
    <svg className="desk-filters" width={0} height={0} aria-hidden="true">
      <Filter id="desk-now" matrix={now.matrix} />
      <Filter id="desk-gallery" matrix={gallery.matrix} />
      <Filter id="desk-studio" matrix={studio.matrix} />
    </svg>
  );
}

function Filter({ id, matrix }: { readonly id: string; readonly matrix: ColourMatrix | null }) {
  if (matrix === null) return null;
  return (
    <filter id={id} colorInterpolationFilters="linearRGB">
      <feColorMatrix type="matrix" values={filterValues(matrix)} />
    </filter>
  );
}

/** The CSS filter of pictures under a light; none where they stay as they are. */
export function filterOf(light: DeskLight, id: 'now' | 'gallery' | 'studio'): string | undefined {
  return light.matrix === null ? undefined : `url(#desk-${id})`;
}
