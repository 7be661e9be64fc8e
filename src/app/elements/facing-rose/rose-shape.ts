/** Shapes of the facing rose: degrees clockwise from north on a circle around 0,0, y down. */

export function onCircle(degrees: number, radius: number): [number, number] {
  const angle = (degrees * Math.PI) / 180;
  return [radius * Math.sin(angle), -radius * Math.cos(angle)];
}

/** A wedge from `from` clockwise to `to`; a band over north (from > to) works too; 360° or more gives the whole disc. */
export function bandPath(from: number, to: number, radius: number): string {
  const wide = (((to - from) % 360) + 360) % 360 || (to === from ? 0 : 360);
  if (wide >= 359.5) return `M0 ${-radius} A${radius} ${radius} 0 1 1 -0.01 ${-radius} Z`;
  const [ax, ay] = onCircle(from, radius);
  const [bx, by] = onCircle(from + wide, radius);
  const f = (n: number) => n.toFixed(2);
  return `M0 0 L${f(ax)} ${f(ay)} A${radius} ${radius} 0 ${wide > 180 ? 1 : 0} 1 ${f(bx)} ${f(by)} Z`;
}
