/**
 * Light on each face of a diffuse box, direct and off all the others, a row of values for each, by wavelength or channel:
 * radiosity, B = ρ (E + F B), solved by sweeps (Goral, Torrance, Greenberg, Battaile 1984).
 */
export function lightOnFaces(
  factors: readonly (readonly number[])[],
  reflectances: readonly ArrayLike<number>[],
  direct: readonly number[],
): Float64Array[] {
  const channels = reflectances[0]?.length ?? 0;
  const on = direct.map((light) => new Float64Array(channels).fill(light));
  for (let channel = 0; channel < channels; channel++) {
    for (let sweep = 0, change = 1; change > 1e-10 && sweep < 2000; sweep++) {
      change = 0;
      for (const [i, row] of factors.entries()) {
        const next = row.reduce(
          (sum, factor, j) => sum + factor * reflectances[j]![channel]! * on[j]![channel]!,
          direct[i]!,
        );
        change = Math.max(change, Math.abs(next - on[i]![channel]!));
        on[i]![channel] = next;
      }
    }
  }
  return on;
}
