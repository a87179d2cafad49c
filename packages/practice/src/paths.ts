/** Whether a way is wide, level and roomy enough; limits from the profile. Local code decides. */
import { above, within } from './bounds.ts';
import { DEFAULT_PROFILE, limitOf, type PracticeProfile } from './practice-profile.ts';

/** Inches turned to millimetres may miss their own limit by the last bits of binary arithmetic. */
const HAIR_MM = 1e-6;

/**
 * What fails along a path of stretches in order (mm): too narrow anywhere, a pinch too long, pinches too near each other;
 * `index` is the stretch, `shortMm` what is missing. Neighbouring narrow stretches count as one pinch. RangeError on a width
 * below 0 or a length not above 0. Source: 2010 ADA Standards, 403.5.1, as read.
 */
export function pathFailuresOf(
  stretches: readonly { readonly widthMm: number; readonly lengthMm: number }[],
  profile: PracticeProfile = DEFAULT_PROFILE,
): readonly {
  readonly index: number;
  readonly what: 'too narrow' | 'narrow too long' | 'narrow again too soon';
  readonly shortMm: number;
}[] {
  const [path, pinch] = [limitOf(profile, 'pathMm'), limitOf(profile, 'pinchMm')];
  const failures: {
    index: number;
    what: 'too narrow' | 'narrow too long' | 'narrow again too soon';
    shortMm: number;
  }[] = [];
  let narrowMm = 0;
  let sinceMm = Number.POSITIVE_INFINITY;
  for (const [index, { widthMm, lengthMm }] of stretches.entries()) {
    within('widthMm', widthMm, 0, 1e6);
    above('lengthMm', lengthMm, 0, 1e9);
    if (widthMm >= path - HAIR_MM) {
      sinceMm = narrowMm > 0 ? lengthMm : sinceMm + lengthMm;
      narrowMm = 0;
      continue;
    }
    const again = narrowMm === 0 && sinceMm < limitOf(profile, 'betweenPinchesMm') - HAIR_MM;
    narrowMm += lengthMm;
    if (widthMm < pinch - HAIR_MM) failures.push({ index, what: 'too narrow', shortMm: pinch - widthMm });
    else if (narrowMm > limitOf(profile, 'pinchLengthMm') + HAIR_MM) {
      failures.push({ index, what: 'narrow too long', shortMm: path - widthMm });
    } else if (again) failures.push({ index, what: 'narrow again too soon', shortMm: path - widthMm });
  }
  return failures;
}

/** Whether a wheelchair turns in a clear rectangle (mm), by the circle alone. RangeError below 0. Source: 2010 ADA Standards, 304.3. */
export function turnsIn(
  clear: { readonly widthMm: number; readonly depthMm: number },
  profile: PracticeProfile = DEFAULT_PROFILE,
): boolean {
  const least = Math.min(within('widthMm', clear.widthMm, 0), within('depthMm', clear.depthMm, 0));
  return least >= limitOf(profile, 'turningMm') - HAIR_MM;
}

/** Slope of a floor along a way (rise / run) and whether it is too steep. RangeError on no run. Source: 2010 ADA Standards, 402.2. */
export function slopeOf(
  way: { readonly fromMm: number; readonly toMm: number; readonly runMm: number },
  profile: PracticeProfile = DEFAULT_PROFILE,
): { readonly share: number; readonly tooSteep: boolean } {
  const rise = Math.abs(within('toMm', way.toMm, -1e6, 1e6) - within('fromMm', way.fromMm, -1e6, 1e6));
  const share = rise / above('runMm', way.runMm, 0);
  return { share, tooSteep: share > limitOf(profile, 'slopeShare') + 1e-9 };
}
