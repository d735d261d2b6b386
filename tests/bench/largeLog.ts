/** A steady climb of twelve columns, about 95 bytes a row; invented. Yields its text in stretches of rows. */
export function* largeLog(rows: number): Generator<string> {
  yield 'time_s,altitude_m,speed_m_s,vertical_speed_m_s,pitch_deg,heading_deg,mass_kg,throttle,latitude_deg,longitude_deg,dynamic_pressure_Pa,acceleration_m_s2\n';
  const burn_s = 400;
  for (let from = 0; from < rows; from += 20_000) {
    const lines: string[] = [];
    for (let i = from; i < Math.min(rows, from + 20_000); i++) {
      const t = (i * 500) / rows;
      const s = Math.min(t, burn_s);
      const speed = 3 * s + 0.02 * s * s;
      const pitch = 90 * Math.exp(-s / 160);
      const climb = speed * Math.sin((pitch * Math.PI) / 180);
      const altitude = 400 * s * (1 - Math.exp(-s / 60)) + 0.5 * Math.max(0, t - burn_s) * climb;
      const cells = [
        t.toFixed(4),
        altitude.toFixed(2),
        speed.toFixed(3),
        climb.toFixed(3),
        pitch.toFixed(4),
        '90.0000',
        (60_000 - 130 * s).toFixed(2),
        t < burn_s ? '1.000' : '0.000',
        '28.50000',
        (-80 + t / 100).toFixed(5),
        (20_000 * Math.exp(-(((t - 70) / 30) ** 2))).toFixed(3),
        (3 + 0.04 * s).toFixed(5),
      ];
      lines.push(cells.join(','));
    }
    yield `${lines.join('\n')}\n`;
  }
}
