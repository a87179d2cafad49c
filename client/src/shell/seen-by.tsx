/** With whose eyes walls are looked at: most people's, eyes without some cones or with weaker ones, or lightness alone. */
import { type ColourMatrix, LIGHTNESS_ALONE } from '@enfilade/colour/colour-matrix';
import { type Eye, eyeMatrixOf } from '@enfilade/colour/vision';
import { useEffect } from 'react';
import { Store, useStore } from '../selection.ts';
import './seen-by.css';

export const EYES = ['usual', 'red-weak', 'green-weak', 'blue-weak', 'grey'] as const;
export type SeenBy = (typeof EYES)[number];

const KIND: Readonly<Partial<Record<SeenBy, Eye['kind']>>> = {
  'red-weak': 'protan',
  'green-weak': 'deutan',
  'blue-weak': 'tritan',
};

/** What each is called in full. */
export const EYE_WORDS: Readonly<Record<SeenBy, string>> = {
  usual: 'as most eyes see',
  'red-weak': 'weak or no long-wave (red) cones: protan',
  'green-weak': 'weak or no middle-wave (green) cones: deutan',
  'blue-weak': 'weak or no short-wave (blue) cones: tritan',
  grey: 'lightness alone, without any hue',
};

/** As chosen by me, for my screen; 1 is without those cones altogether. */
export const seenBy = new Store<{ readonly eye: SeenBy; readonly severity: number }>({ eye: 'usual', severity: 1 });

export function hasSeverity(eye: SeenBy): boolean {
  return KIND[eye] !== undefined;
}

/** Rows of a matrix as an SVG filter takes them: with alpha kept and nothing added. */
export function filterValues(matrix: ColourMatrix): string {
  const rows = [0, 3, 6].map((row) => [matrix[row], matrix[row + 1], matrix[row + 2], 0, 0].join(' '));
  return [...rows, '0 0 0 1 0'].join(' ');
}

/** The filter, and the word on the page that turns it on; wherever colours are judged the stylesheets ask for it. */
export function EyeFilter() {
  const { eye, severity } = useStore(seenBy);
  useEffect(() => {
    if (eye === 'usual') delete document.documentElement.dataset.eye;
    else document.documentElement.dataset.eye = eye;
  }, [eye]);
  if (eye === 'usual') return null;
  const kind = KIND[eye];
  const matrix = kind === undefined ? LIGHTNESS_ALONE : eyeMatrixOf({ kind, severity });
  return (
    <svg className="eye-filter" width={0} height={0} aria-hidden="true">
      <filter id="eye-filter" colorInterpolationFilters="linearRGB">
        <feColorMatrix type="matrix" values={filterValues(matrix)} />
      </filter>
    </svg>
  );
}
