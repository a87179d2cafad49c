/** The upright box round a turned one (mm): what gaps, lines and labels are measured to. */
export function outerBoxOf<B extends { widthMm: number; heightMm: number }>(box: B, turnDegrees: number): B {
  const turn = (turnDegrees * Math.PI) / 180;
  const [c, s] = [Math.abs(Math.cos(turn)), Math.abs(Math.sin(turn))];
  return { ...box, widthMm: box.widthMm * c + box.heightMm * s, heightMm: box.widthMm * s + box.heightMm * c };
}
