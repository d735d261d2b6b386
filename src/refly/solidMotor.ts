/** Vacuum thrust in N at rising times in s since ignition; straight between nodes, none outside. */
type ThrustCurve = readonly (readonly [number, number])[];

/** Vacuum thrust of a solid motor, N, at a time in s since its ignition. */
export function solidThrust_N(curve: ThrustCurve, sinceIgnition_s: number): number {
  if (sinceIgnition_s < (curve[0]?.[0] ?? 0)) return 0;
  for (let i = 1; i < curve.length; i++) {
    const [end, value] = curve[i]!;
    if (sinceIgnition_s > end) continue;
    const [start, from] = curve[i - 1]!;
    return from + ((sinceIgnition_s - start) / (end - start)) * (value - from);
  }
  return 0;
}

/** The curve's next kink after a time since ignition, s; infinite after the last. */
export function nextThrustNode_s(curve: ThrustCurve, sinceIgnition_s: number): number {
  for (const [node_s] of curve) if (node_s > sinceIgnition_s) return node_s;
  return Number.POSITIVE_INFINITY;
}
