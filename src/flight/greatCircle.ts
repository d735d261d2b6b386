/** A point of a great circle: the sine of its latitude, and the course's parts to the north and east times its cosine. */
export interface CirclePoint {
  readonly sine: number;
  readonly north: number;
  readonly east: number;
}

/** The great circle that leaves a site along its launch azimuth, by the arc flown, rad (spherical trigonometry). */
export function greatCircle(site: {
  readonly latitude_rad: number;
  readonly launchAzimuth_rad: number;
}): (arc: number) => CirclePoint {
  const [sin0, cos0] = [Math.sin(site.latitude_rad), Math.cos(site.latitude_rad)];
  const [sinA, cosA] = [Math.sin(site.launchAzimuth_rad), Math.cos(site.launchAzimuth_rad)];
  return (arc) => {
    const [sin, cos] = [Math.sin(arc), Math.cos(arc)];
    const sine = Math.max(-1, Math.min(1, sin0 * cos + cos0 * sin * cosA));
    return { sine, north: cos0 * cos * cosA - sin0 * sin, east: sinA * cos0 };
  };
}
